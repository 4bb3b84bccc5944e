/** The trade's words for what the farm file keeps in short. */
export const kindChoices = [
  { value: 'in-ground', text: 'In the ground' },
  { value: 'framed', text: 'Framed' },
  { value: 'bag', text: 'Fabric bag' },
  { value: 'trough', text: 'Trough' },
  { value: 'mound', text: 'Mound' },
] as const;

export const outlineChoices = [
  { value: 'rectangle', text: 'Rectangle' },
  { value: 'round', text: 'Round' },
  { value: 'oval', text: 'Oval trough (stadium)' },
  { value: 'hexagon', text: 'Hexagon' },
  { value: 'polygon', text: 'Free polygon' },
  { value: 'half-ellipsoid', text: 'Mound, half-ellipsoid' },
  { value: 'ridge', text: 'Mound, ridge with sloped sides' },
] as const;

export const wateringChoices = [
  { value: 'top', text: 'From the top' },
  { value: 'drip', text: 'Drip' },
  { value: 'basin', text: 'Bag standing in a basin' },
  { value: 'reservoir', text: 'Built-in reservoir' },
] as const;

export const sunChoices = [
  { value: 'full', text: 'Full sun' },
  { value: 'light-shade', text: 'Light shade' },
  { value: 'shade', text: 'Shade' },
] as const;

export const placeChoices = [
  { value: 'ground', text: 'Ground' },
  { value: 'deck', text: 'Deck' },
  { value: 'balcony', text: 'Balcony' },
  { value: 'roof', text: 'Roof' },
] as const;

export const amountChoices = [
  { value: 'depth', text: 'Depth' },
  { value: 'share', text: 'Share of depth' },
  { value: 'volume', text: 'Volume, settled' },
  { value: 'rest', text: 'The rest' },
] as const;

export const textOf = <Value extends string>(
  choices: readonly { readonly value: Value; readonly text: string }[],
  value: Value,
): string => choices.find((choice) => choice.value === value)?.text ?? value;
