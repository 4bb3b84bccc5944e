import { say } from '../../words/say.ts';
import type { DoseRow } from './soil-types.ts';

export type DoseCard = { readonly bedId: string; readonly code: string; readonly doses: readonly DoseRow[] };

/** Doses bed by bed, in the order they are given. */
export function cardsOf(doses: readonly DoseRow[]): readonly DoseCard[] {
  return [...Map.groupBy(doses, (dose) => dose.bedId)]
    .map(([bedId, own]) => ({
      bedId,
      code: own[0]?.code ?? '',
      doses: [...own].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.material < b.material ? -1 : 1)),
    }))
    .sort((a, b) => a.code.localeCompare(b.code, 'en', { numeric: true }));
}

const quarterSigns: Readonly<Record<string, string>> = { '0.25': '¼', '0.5': '½', '0.75': '¾' };

/** Scoops and spoons as read aloud: `2½ scoops + 1 spoon`. */
export function measureText(dose: Pick<DoseRow, 'measure'>): string {
  const { measure } = dose;
  if (measure === null) return say('weigh it: no density known');
  const whole = Math.floor(measure.scoops + 1e-9);
  const part = quarterSigns[String(Math.round((measure.scoops - whole) * 100) / 100)] ?? '';
  const scoops =
    whole === 0 && part === '' ? '' : `${whole === 0 ? '' : whole}${part} ${measure.scoops > 1 ? 'scoops' : 'scoop'}`;
  const spoons = counted(measure.spoons, 'spoon');
  const teaspoons = counted(measure.teaspoons, 'teaspoon');
  return [scoops, spoons, teaspoons].filter((text) => text !== '').join(' + ') || say('less than a quarter teaspoon');
}

function counted(count: number, word: string): string {
  if (count === 0) return '';
  const whole = Math.floor(count);
  const half = count > whole ? '½' : '';
  return `${whole === 0 ? '' : whole}${half} ${word}${count > 1 ? 's' : ''}`;
}
