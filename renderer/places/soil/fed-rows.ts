import type { FarmBlend } from '../../../planner/fertility/blend-answer.ts';
import { type Column, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';

/** A bed's doses in one line, and how each nutrient that counts stands after them. */
export type FedRow = {
  readonly bedId: string;
  readonly code: string;
  readonly doses: string;
  readonly bringsN_kg: number;
  readonly bringsP2O5_kg: number;
  readonly bringsK2O_kg: number;
  readonly standing: string;
};

const names: Readonly<Record<string, string>> = { P2O5: 'P₂O₅', K2O: 'K₂O' };

export function fedRows(blend: FarmBlend, codes: ReadonlyMap<string, string>, print: (kg: number) => string): readonly FedRow[] {
  const materials = new Map(blend.materials.map((each) => [each.materialId, each.name]));
  return blend.beds
    .map((bed): FedRow => {
      const off = Object.entries(bed.standing).filter(([, standing]) => standing !== 'met');
      return {
        bedId: bed.bedId,
        code: codes.get(bed.bedId) ?? bed.bedId,
        doses: bed.doses.map((dose) => `${materials.get(dose.materialId) ?? ''} ${print(dose.dose_kg)}`).join(', '),
        bringsN_kg: bed.brings.N,
        bringsP2O5_kg: bed.brings.P2O5,
        bringsK2O_kg: bed.brings.K2O,
        standing:
          off.length === 0
            ? 'met'
            : off.map(([name, standing]) => `${names[name] ?? name} ${standing === 'under' ? 'short' : 'over'}`).join(', '),
      };
    })
    .sort((a, b) => a.code.localeCompare(b.code, 'en', { numeric: true }));
}

export const fedColumns: readonly Column<FedRow>[] = [
  text('code', say('Bed'), { width: 84 }),
  text('doses', say('Doses'), { width: 460 }),
  quantity('bringsN_kg', 'N', { width: 84, total: 'sum', digits: 2 }),
  quantity('bringsP2O5_kg', 'P₂O₅', { width: 84, total: 'sum', digits: 2 }),
  quantity('bringsK2O_kg', 'K₂O', { width: 84, total: 'sum', digits: 2 }),
  text('standing', say('Needs'), { width: 160 }),
];
