import { readFileSync } from 'node:fs';
import type { PlantingOption, SeasonInstance, SeasonPlan } from '../../planner/season/optimise/instance.ts';

/** The file's own words, as its `rules` explain them. */
type FileCrop = {
  name: string;
  family: number;
  depth: number;
  sun: number;
  trellis: number;
  kinds: string;
  yieldPerM2: number;
  contractPrice: number;
  penalty: number;
  costPerM2: number;
  plantHours: number;
  careHours: number;
  harvestHours: number;
  shelf: number;
  kc: number;
  steady: number;
  overhead: number;
  starts: { week: number; occ: number; first: number; yield: number }[];
  demand: { week: number; contract: number; tiers: [number, number][] }[];
};
type FileBed = {
  id: string;
  block: number;
  pos: number;
  kind: string;
  area: number;
  depth: number;
  sun: number;
  trellis: number;
  zone: number;
  split: number;
  history: number[][];
  fixed: { from: number; to: number; family: number }[];
};
type FileInstance = {
  name: string;
  T: number;
  families: { name: string; years: number; inSeason: 'once' | 'notBackToBack' | 'free' }[];
  et: number[];
  beds: FileBed[];
  crops: FileCrop[];
  wage: number;
  overtimePremium: number;
  overtimeMax: number;
  labourCap: number[];
  waterCap: number[];
  maxCrops: number;
};
export type PublishedSeason = {
  instance: FileInstance;
  bestKnown: number;
  provenUpperBound: number;
  groups: number;
  units: number;
  /** Given for the smallest season only. */
  plan?: [string, number, [number, number][]][];
};

/** Money of the file is in whole units; here it is in hundredths. */
const MINOR = 100;

export function publishedSeasons(): PublishedSeason[] {
  const text = readFileSync(new URL('../reference/optimiser.instances.json', import.meta.url), 'utf8');
  return JSON.parse(text).season.instances as PublishedSeason[];
}

function optionOf(file: FileInstance, crop: FileCrop, start: FileCrop['starts'][number]): PlantingOption {
  const length = start.occ - start.first;
  const raw = Array.from({ length }, (_, k) => (length <= 2 ? 1 : k === 0 ? 0.6 : k === length - 1 ? 0.7 : 1));
  const sum = raw.reduce((total, weight) => total + weight, 0);
  const weeks = Array.from({ length: start.occ }, (_, k) => k);
  const harvest = weeks.map((k) => (k < start.first ? 0 : (crop.yieldPerM2 * start.yield * (raw[k - start.first] ?? 0)) / sum));
  const stage = (k: number) =>
    k < 0.3 * start.first
      ? 0.6
      : k < 0.6 * start.first
        ? 0.6 + ((crop.kc - 0.6) * (k - 0.3 * start.first)) / (0.3 * start.first)
        : crop.kc;
  return {
    startWeek: start.week,
    harvest_per_m2: harvest,
    labour_h_per_m2: weeks.map((k) => crop.careHours + (k === 0 ? crop.plantHours : 0) + crop.harvestHours * (harvest[k] ?? 0)),
    water_L_per_m2: weeks.map((k) => (file.et[start.week + k] ?? 0) * stage(k)),
    bench_m2_per_m2: [],
    cost_minor_per_m2: crop.costPerM2 * MINOR,
  };
}

/** A season of the file as the planner takes it. */
export function seasonOf({ instance: file }: PublishedSeason): SeasonInstance {
  const rule = { once: 'once', notBackToBack: 'not-back-to-back', free: 'free' } as const;
  return {
    weeks: file.T,
    families: file.families.map(({ name, inSeason }) => ({ name, inSeason: rule[inSeason] })),
    units: file.beds.flatMap((bed) =>
      (bed.split === 1 ? [0, 1] : [0]).map((part) => ({
        id: `${bed.id}/${part}`,
        bedId: bed.id,
        block: bed.block,
        position: bed.pos,
        part,
        area_m2: bed.split === 1 ? bed.area / 2 : bed.area,
        zone: bed.zone,
        cropsFit: file.crops.flatMap((crop, c) =>
          crop.kinds.includes(bed.kind) &&
          crop.depth <= bed.depth &&
          crop.sun <= bed.sun &&
          (crop.trellis === 0 || bed.trellis === 1)
            ? [c]
            : [],
        ),
        barredFamilies: file.families.flatMap((family, f) =>
          bed.history.some((grown, k) => grown.includes(f) && k + 1 < family.years) ? [f] : [],
        ),
        fixed: bed.fixed.map((span) => ({ fromWeek: span.from, toWeek: span.to, family: span.family < 0 ? null : span.family })),
        seasonsSince: Object.fromEntries(
          file.families.flatMap((_, f) => {
            const ago = bed.history.findIndex((grown) => grown.includes(f));
            return ago < 0 ? [] : [[f, ago + 1]];
          }),
        ),
      })),
    ),
    crops: file.crops.map((crop) => ({
      name: crop.name,
      family: crop.family,
      shelf_weeks: crop.shelf,
      overhead_minor: crop.overhead * MINOR,
      steadiness_minor: crop.steady * MINOR,
      options: crop.starts.map((start) => optionOf(file, crop, start)),
      demand: crop.demand.map((week) => ({
        week: week.week,
        contract: week.contract,
        contractPrice_minor: crop.contractPrice * MINOR,
        penalty_minor: crop.penalty * MINOR,
        tiers: week.tiers.map(([cap, price]) => ({ cap, price_minor: price * MINOR })),
      })),
    })),
    wage_minor_per_h: file.wage * MINOR,
    labourCap_h: file.labourCap,
    overtimeMost_h: file.overtimeMax,
    overtimePremium_minor_per_h: file.overtimePremium * MINOR,
    waterCap_L: file.waterCap.map((cap) => Array.from({ length: file.T }, () => cap)),
    benchCap_m2: Array.from({ length: file.T }, () => Infinity),
    mostCrops: file.maxCrops,
    standing: null,
  };
}

/** The file's best known plan in the planner's terms. */
export function knownPlan(season: PublishedSeason): SeasonPlan {
  const at = new Map((season.plan ?? []).map(([bed, half, plantings]) => [`${bed}/${half}`, plantings]));
  return seasonOf(season).units.map((unit) =>
    (at.get(unit.id) ?? []).map(([crop, week]) => ({
      crop,
      option: season.instance.crops[crop]?.starts.findIndex((start) => start.week === week) ?? -1,
    })),
  );
}
