import { say } from '../../words/say.ts';

/** Words of the trade for what the program keeps in codes. */
export const methodChoices = [
  { value: 'mehlich-3', text: say('Mehlich-3') },
  { value: 'bray-1', text: say('Bray P-1') },
  { value: 'olsen', text: say('Olsen') },
  { value: 'morgan', text: say('Modified Morgan') },
  { value: 'ammonium-acetate', text: say('Ammonium acetate') },
  { value: 'saturated-paste', text: say('Saturated paste (media)') },
] as const;

export const kindChoices = [
  { value: 'soil', text: say('Soil') },
  { value: 'media', text: say('Container medium') },
] as const;

export const bufferChoices = [
  { value: '', text: say('No buffer reading') },
  { value: 'sikora', text: say('Sikora') },
  { value: 'smp', text: say('SMP') },
  { value: 'mehlich', text: say('Mehlich') },
] as const;

export const textureChoices = [
  { value: '', text: say('Not known') },
  { value: 'sand', text: say('Sand') },
  { value: 'sandy-loam', text: say('Sandy loam') },
  { value: 'loam', text: say('Loam') },
  { value: 'clay-loam', text: say('Clay loam') },
  { value: 'clay', text: say('Clay') },
] as const;

export const unitChoices = [
  { value: 'ppm', text: 'ppm' },
  { value: 'mg/kg', text: 'mg/kg' },
  { value: 'lb/acre', text: 'lb/acre' },
  { value: 'kg/ha', text: 'kg/ha' },
  { value: 'meq/100g', text: 'meq/100 g' },
  { value: 'mg/L', text: 'mg/L' },
  { value: '%', text: '%' },
] as const;

const classWords: Readonly<Record<string, string>> = {
  'very-low': say('very low'),
  low: 'low',
  medium: 'medium',
  high: 'high',
  'very-high': say('very high'),
};
export const classText = (name: string): string => classWords[name] ?? name;

export const classChoices = Object.entries(classWords).map(([value, text]) => ({ value, text }));

/** What a class says of the next dressing: low ones ask, high ones warn. */
export const toneOfClass = (name: string): 'good' | 'guard' | 'stop' =>
  name === 'very-high' || name === 'very-low' ? 'stop' : name === 'medium' || name === 'high' ? 'good' : 'guard';

export const actChoices = [
  { value: 'none', text: say('Nothing') },
  { value: 'lime', text: say('Lime') },
  { value: 'sulfur', text: say('Sulfur') },
] as const;

export const heapMethodChoices = [
  { value: 'turned-windrow', text: say('Turned windrow or heap') },
  { value: 'static-aerated', text: say('Static, aerated') },
  { value: 'in-vessel', text: say('In a vessel or bin') },
  { value: 'cold', text: say('Cold heap') },
  { value: 'bought', text: say('Bought') },
] as const;

export const partWords: Readonly<Record<string, string>> = {
  'organic-matter': say('Organic matter'),
  'earlier-dressings': say('Earlier dressings'),
  'top-ups': say('Top-ups'),
  legumes: say('Legumes'),
  'this-season': say('Given and planned'),
  water: say('Water'),
};

export const nutrientChoices = [
  { value: 'N', text: say('Nitrogen (N)') },
  { value: 'P2O5', text: say('Phosphate (P₂O₅)') },
  { value: 'K2O', text: say('Potash (K₂O)') },
] as const;
export type MainNutrient = (typeof nutrientChoices)[number]['value'];
