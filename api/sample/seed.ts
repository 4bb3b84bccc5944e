import type { offer } from '../../db/schema/materials.ts';
import type { MaterialRow } from '../library/read-materials.ts';
import { cropChoices } from './crop-choices.ts';
import type { SampleFacts } from './crop-facts.ts';

type OfferRow = typeof offer.$inferInsert;

const PACKETS: readonly (readonly [seeds: number, factor: number])[] = [
  [200, 1],
  [1000, 0.62],
  [5000, 0.4],
];
/** Sets and tubers are bought by the piece, in nets. */
const SETS_IN_A_NET = 100;
const SET_PRICE_MINOR = 1900;

/** Seed (or sets) of every crop the invented farm grows, counted by the seed, and what it costs. Invented. */
export function sampleSeed(
  facts: ReadonlyMap<string, SampleFacts>,
  pricedDate: string,
): { readonly materials: MaterialRow[]; readonly offers: OfferRow[] } {
  const crops = [...new Map(cropChoices.map((choice) => [choice.cropId, choice])).values()];
  const materials = crops.map((choice): MaterialRow => {
    const name = facts.get(choice.cropId)?.name ?? choice.cropId;
    return {
      id: `seed-${choice.cropId}`,
      name: `${choice.method === 'set' ? 'Sets' : 'Seed'}, ${name.toLowerCase()}`,
      kind: 'seed',
      baseUnit: 'count',
      cropId: choice.cropId,
      germinationShare: 0.88,
      organicUse: 'allowed',
      source: 'Invented for the sample farm',
    };
  });
  const offers = crops.flatMap((choice): OfferRow[] => {
    const row = (packageAmount: number, name: string, price_minor: number): OfferRow => ({
      id: `offer-seed-${choice.cropId}-${packageAmount}`,
      supplierId: 'supplier-seed',
      materialId: `seed-${choice.cropId}`,
      name,
      packageAmount,
      price_minor,
      packageWeight_kg: 0.02,
      pricedDate,
    });
    if (choice.method === 'set') return [row(SETS_IN_A_NET, `Net of ${SETS_IN_A_NET}`, SET_PRICE_MINOR)];
    const packet_minor = choice.method === 'transplant' ? 420 : 300;
    return PACKETS.map(([seeds, factor]) =>
      row(seeds, `Packet of ${seeds}`, Math.round(((packet_minor * seeds) / 200) * factor)),
    );
  });
  return { materials, offers };
}
