import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ beds: 4, years: 0 });
});
afterAll(() => t.end());

const head = 'supplier,material,package,holds,price,minimum,lead days,weight,priced\n';
const soil = 'Tidewrack Soil Yard (invented)';

describe('a supplier’s price list', () => {
  test('reads packages in any unit of the material’s kind, new ones and known ones', async () => {
    const csv = `${head}${soil},Feather meal,"Feather meal, sack",25 kg,41.50,,3,25.5 kg,2026-11-20\n${soil},"Compost, yard trimmings","Yard compost, cubic yard loose",1 yd3,44\n`;
    const look = await t.api.suppliers.lookIntoOffers({ csv });
    expect(look.faults).toEqual([]);
    expect(look.rows[0]).toMatchObject({ packageAmount: 25, price_minor: 4150, present: null, lead_days: 3 });
    expect(look.rows[1]?.packageAmount).toBeCloseTo(764.555, 3);
    expect(look.rows[1]?.present?.price_minor).toBe(3900);
    expect(await t.api.suppliers.importOffers({ csv })).toEqual({ added: 1, repriced: 1 });
    const offers = await t.api.suppliers.offers();
    const compost = offers.find((offer) => offer.name === 'Yard compost, cubic yard loose');
    expect(compost?.price_minor).toBe(4400);
    expect((await t.api.suppliers.offer({ offerId: compost?.id ?? '' })).prices.map((each) => each.price_minor)).toEqual([3900]);
    await t.api.undo.undo();
    expect((await t.api.suppliers.offers()).find((offer) => offer.id === compost?.id)?.price_minor).toBe(3900);
  });
  test.each([
    ['an empty package', `${soil},Feather meal,Sack,0 kg,10`, 'holds', /more than nothing/],
    ['a price with a comma', `${soil},Feather meal,Sack,5 kg,"1,234"`, 'price', /comma may mean either/],
    ['an unknown unit', `${soil},Feather meal,Sack,3 parsecs,10`, 'holds', /parsecs/],
    ['a unit that measures something else', `${soil},Feather meal,Sack,3 gal,10`, 'holds', /something else/],
    ['an unknown supplier', `Nobody,Feather meal,Sack,5 kg,10`, 'supplier', /no supplier "Nobody"/],
    ['an unknown material', `${soil},Stardust,Sack,5 kg,10`, 'material', /no material "Stardust"/],
    [
      'the same package twice',
      `${soil},Feather meal,Sack,5 kg,10\n${soil},Feather meal,sack,5 kg,11`,
      'package',
      /stands in line/,
    ],
    ['a date that is none', `${soil},Feather meal,Sack,5 kg,10,,,,yesterday`, 'priced', /not a calendar date/],
  ])('%s is named by line and column, and nothing is written', async (_, row, column, message) => {
    const before = JSON.stringify(await t.api.suppliers.offers());
    const { faults } = await t.api.suppliers.lookIntoOffers({ csv: head + row });
    expect(faults.map((fault) => fault.column)).toContain(column);
    expect(faults.find((fault) => fault.column === column)?.message).toMatch(message);
    await expect(t.api.suppliers.importOffers({ csv: head + row })).rejects.toThrow(/Line/);
    expect(JSON.stringify(await t.api.suppliers.offers())).toBe(before);
  });
  test('a file without its columns says which are missing', async () => {
    const { faults } = await t.api.suppliers.lookIntoOffers({ csv: 'supplier,price\na,1\n' });
    expect(faults[0]?.message).toContain('missing: material, package, holds');
  });
});
