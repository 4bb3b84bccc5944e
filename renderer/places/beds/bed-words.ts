import { say } from '../../words/say.ts';

/** The trade's words for what the farm file keeps in short. */
export const kindChoices = [
  { value: 'in-ground', text: say('In the ground') },
  { value: 'framed', text: say('Framed') },
  { value: 'bag', text: say('Fabric bag') },
  { value: 'trough', text: say('Trough') },
  { value: 'mound', text: say('Mound') },
] as const;

export const outlineChoices = [
  { value: 'rectangle', text: say('Rectangle') },
  { value: 'round', text: say('Round') },
  { value: 'oval', text: say('Oval trough (stadium)') },
  { value: 'hexagon', text: say('Hexagon') },
  { value: 'polygon', text: say('Free polygon') },
  { value: 'half-ellipsoid', text: say('Mound, half-ellipsoid') },
  { value: 'ridge', text: say('Mound, ridge with sloped sides') },
] as const;

export const wateringChoices = [
  { value: 'top', text: say('From the top') },
  { value: 'drip', text: say('Drip') },
  { value: 'basin', text: say('Bag standing in a basin') },
  { value: 'reservoir', text: say('Built-in reservoir') },
] as const;

export const sunChoices = [
  { value: 'full', text: say('Full sun') },
  { value: 'light-shade', text: say('Light shade') },
  { value: 'shade', text: say('Shade') },
] as const;

export const placeChoices = [
  { value: 'ground', text: say('Ground') },
  { value: 'deck', text: say('Deck') },
  { value: 'balcony', text: say('Balcony') },
  { value: 'roof', text: say('Roof') },
] as const;

export const amountChoices = [
  { value: 'depth', text: say('Depth') },
  { value: 'share', text: say('Share of depth') },
  { value: 'volume', text: say('Volume, settled') },
  { value: 'rest', text: say('The rest') },
] as const;

export const textOf = <Value extends string>(
  choices: readonly { readonly value: Value; readonly text: string }[],
  value: Value,
): string => choices.find((choice) => choice.value === value)?.text ?? value;
