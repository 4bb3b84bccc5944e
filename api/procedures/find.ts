import { namesOfFarm } from '../../db/repositories/names.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import { needsOfSeason } from '../orders/needs-of-season.ts';
import { nothing, read } from '../procedure.ts';

export const find = {
  names: read({ input: nothing, run: ({ db }) => namesOfFarm(db) }),
  /** The needs of the season planned last, which is the one that Orders opens with. */
  needs: read({
    input: nothing,
    run({ db, today }) {
      const season = seasonsOfFarm(db).at(-1);
      if (season === undefined) return [];
      const facts = materialFacts(db);
      return needsOfSeason(db, season.id, today).needs.map((need) => ({
        key: need.key,
        seasonId: season.id,
        name: facts.get(need.materialId)?.name ?? '',
        reason: need.reason,
      }));
    },
  }),
};
