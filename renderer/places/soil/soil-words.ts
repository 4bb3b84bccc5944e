/** Words of the trade for what the program keeps in codes. */
export const methodChoices = [
  { value: 'mehlich-3', text: 'Mehlich-3' },
  { value: 'bray-1', text: 'Bray P-1' },
  { value: 'olsen', text: 'Olsen' },
  { value: 'morgan', text: 'Modified Morgan' },
  { value: 'ammonium-acetate', text: 'Ammonium acetate' },
  { value: 'saturated-paste', text: 'Saturated paste (media)' },
] as const;

export const kindChoices = [
  { value: 'soil', text: 'Soil' },
  { value: 'media', text: 'Container medium' },
] as const;

export const bufferChoices = [
  { value: '', text: 'No buffer reading' },
  { value: 'sikora', text: 'Sikora' },
  { value: 'smp', text: 'SMP' },
  { value: 'mehlich', text: 'Mehlich' },
] as const;

export const textureChoices = [
  { value: '', text: 'Not known' },
  { value: 'sand', text: 'Sand' },
  { value: 'sandy-loam', text: 'Sandy loam' },
  { value: 'loam', text: 'Loam' },
  { value: 'clay-loam', text: 'Clay loam' },
  { value: 'clay', text: 'Clay' },
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
  'very-low': 'very low',
  low: 'low',
  medium: 'medium',
  high: 'high',
  'very-high': 'very high',
};
export const classText = (name: string): string => classWords[name] ?? name;

export const classChoices = Object.entries(classWords).map(([value, text]) => ({ value, text }));

/** What a class says of the next dressing: low ones ask, high ones warn. */
export const toneOfClass = (name: string): 'good' | 'guard' | 'stop' =>
  name === 'very-high' || name === 'very-low' ? 'stop' : name === 'medium' || name === 'high' ? 'good' : 'guard';

export const actChoices = [
  { value: 'none', text: 'Nothing' },
  { value: 'lime', text: 'Lime' },
  { value: 'sulfur', text: 'Sulfur' },
] as const;

export const heapMethodChoices = [
  { value: 'turned-windrow', text: 'Turned windrow or heap' },
  { value: 'static-aerated', text: 'Static, aerated' },
  { value: 'in-vessel', text: 'In a vessel or bin' },
  { value: 'cold', text: 'Cold heap' },
  { value: 'bought', text: 'Bought' },
] as const;

export const partWords: Readonly<Record<string, string>> = {
  'organic-matter': 'Organic matter',
  'earlier-dressings': 'Earlier dressings',
  'top-ups': 'Top-ups',
  legumes: 'Legumes',
  'this-season': 'Given and planned',
  water: 'Water',
};

export const nutrientChoices = [
  { value: 'N', text: 'Nitrogen (N)' },
  { value: 'P2O5', text: 'Phosphate (P₂O₅)' },
  { value: 'K2O', text: 'Potash (K₂O)' },
] as const;
export type MainNutrient = (typeof nutrientChoices)[number]['value'];
