/**
 * Full names of the sources behind the crop library's figures, by the key that stands beside each figure.
 * A key marked `~m` was given from memory and not read again; `~p` is common practice without a source.
 */
const names: Readonly<Record<string, string>> = {
  ARMITAGE: 'Armitage and Laushman 2003, Specialty Cut Flowers, 2nd ed.',
  CFR_201_31: 'US Code of Federal Regulations, 7 CFR 201.31, Germination standards for vegetable seeds in interstate commerce',
  CFR_201_46: 'US Code of Federal Regulations, 7 CFR 201.46 Table 1, approximate number of seeds per gram',
  CSU_720: 'Colorado State University Extension, GardenNotes 720 Vegetable Planting Guide',
  CSU_720T: 'Colorado State University Extension, GardenNotes 720, table as reprinted',
  CSU_BLOCK: 'Colorado State University Extension, Vegetable Garden Planting Guide, block spacing list',
  FAO56: 'Allen, Pereira, Raes and Smith 1998, FAO Irrigation and Drainage Paper 56, Tables 11, 12, 22',
  HARR_TBL: 'Harrington, the full table of germination and days, as reprinted',
  IFAS_SOIL: 'UF/IFAS, soil temperatures for germination',
  KNOTT: "Knott's Handbook for Vegetable Growers",
  KNOTT_TEMP: "Knott's Handbook for Vegetable Growers 1997, approximate monthly temperatures for best growth, as reprinted",
  KSU_MF1079: 'Kansas State University MF-1079, Zinnias',
  KSU_MG: 'Kansas State Master Gardeners, intensive spacing list',
  NCSU_STRAW: 'North Carolina State University, strawberry plasticulture guide',
  NC_AG236: 'Sanders, Kirk and Van Den Brink 1980, Growing Degree Days in North Carolina, AG-236',
  NDSU_H912: 'North Dakota State University Extension, H-912 Vegetable Maturity Dates, Yields and Storage (2010)',
  NDSU_SNAP: 'North Dakota State University course page on snapdragon',
  NEVMG_T15: 'New England Vegetable Management Guide, Table 15 Approximate Yields',
  OKSTATE_6004: 'Oklahoma State University, HLA-6004 Oklahoma Garden Planning Guide',
  OSU_DD: 'Andrews, Noordijk and Coop 2016, Oregon State University Extension, Scheduling Vegetables with Degree-Day Models',
  OSU_HARR: 'Harrington, Soil Temperature Conditions for Vegetable Seed Germination, Oregon State University Extension',
  SARE_MCCP: 'Clark (ed.) 2007, Managing Cover Crops Profitably, 3rd ed., SARE Handbook 9',
  SLOAN_2008:
    'Sloan and Harkness 2008, Evaluation of zinnia cultivars for field grown cut flower production, J. Applied Horticulture 10(1)',
  SVPE: 'Sustainable Vegetable Production Education, planting table (a teaching handout)',
  TAMU_E502: 'Texas A&M E-502, average crop per 100 ft of row',
  TEAGASC_SUN: 'Teagasc (Ireland), advisory article on cut sunflowers',
  TXMG_HERB: 'Texas Master Gardeners (Wood County), Culinary Herbs for East Texas',
  UA_MG: 'University of Arizona Master Gardener Manual, Intensive Gardening Methods, spacing table',
  UCANR_HERB: 'UC Master Gardeners of Alameda County, Guide to Growing Herbs',
  UCMG_ROOT: 'UC Master Gardener handout Vegetable Root Depth, 2011',
  UC_3382: 'California Master Gardener Handbook (UC ANR 3382), Table 5.2, as reprinted',
  UDEL_GDD: 'University of Delaware Cooperative Extension, Weekly Crop Update 2025, Warm Temperatures are Moving Crops Along',
  UDEL_TRANS: 'University of Delaware Cooperative Extension, Times and Temperatures for Vegetable Transplant Production',
  UF_ENH885: 'UF/IFAS cut flower guide, sunflower',
  UF_ENHFL05: 'UF/IFAS cut flower guide, zinnia',
  UF_SUCC: 'UF/IFAS, Succession Planting of Vegetables',
  UGA_B577: 'University of Georgia Bulletin 577, Home Gardening',
  UGA_C963: 'University of Georgia Circular 963, Vegetable Gardening in Georgia, planting chart',
  UMAINE: 'University of Maine Cooperative Extension, Planting Chart for the Home Vegetable Garden',
  UMD_CONT: 'University of Maryland Extension, Types of Containers',
  UMD_SUN: 'University of Maryland Extension, Container Gardening',
  USDA_SR27: 'USDA National Nutrient Database for Standard Reference, release 27 (2014)',
  USSL_MAAS90: 'US Salinity Laboratory (USDA-ARS), Relative salt tolerance of herbaceous crops, Maas 1990',
  USU_CUT: 'Utah State University Extension, cut flower production in Utah',
  USU_TRANS: 'Utah State University Extension, Grow Your Own Transplants',
  UT_R68_8: 'Utah Administrative Code R68-8-9',
  VA_5_390_110: 'Virginia Administrative Code 2VAC5-390-110, flower seed minimum germination',
  WV_61_09: 'West Virginia Code of State Rules 61-09 appendix 1, agricultural seed',
};

export type SourceMark = 'seen' | 'memory' | 'practice';

/** How sure a source is, by the mark after its key. */
export function markOfSource(key: string): SourceMark {
  if (key.endsWith('~p') || key.startsWith('PRACTICE')) return 'practice';
  return key.endsWith('~m') ? 'memory' : 'seen';
}

/** The source in full, with the word for how it was come by. A key that is in no list is shown as it stands. */
export function printedSource(key: string): string {
  const mark = markOfSource(key);
  if (mark === 'practice') return 'common practice, no source';
  const name = names[key.replace(/~m$/, '')] ?? key;
  return mark === 'memory' ? `${name} (from memory, not read again)` : name;
}

/** Every key that has a full name. */
export const knownSourceKeys: readonly string[] = Object.keys(names);
