import { DatabaseSync } from 'node:sqlite';
import type { Page } from '@playwright/test';
import { placeNames } from '../../renderer/app/place-names.ts';
import { expect, test } from './program.ts';

type System = 'us' | 'metric';

/** Signs of units that only readers of the other system use. */
const foreign: Readonly<Record<System, string>> = {
  us: 'm|cm|mm|km|m²|cm²|m³|ha|L|mL|kg|g|kPa|bar|°C|hectares?|lit(?:re|er)s?|met(?:re|er)s?|kilograms?|grams?|centimet(?:re|er)s?',
  metric:
    'ft|in|mi|ft²|in²|ft³|yd³|acres?|gal|qt|fl oz|cups?|tbsp|tsp|lb|oz|psi|°F|feet|foot|inch(?:es)?|gallons?|pounds?|ounces?',
};

/** A unit after a number, alone as the head of a column or axis, in brackets, or after "per". */
const unitOfOthers = (system: System): RegExp =>
  new RegExp(`(?:\\d ?|^|\\()(?:${foreign[system]})(?=$|[\\s),.;:–/-])(?! [a-z])|/(?:${foreign[system]})(?=$|[\\s),.;])`, 'u');

/** A calendar date as files write it, and a month and day without their names. */
const fileDate = /(?<![\w-])\d{4}-\d{2}-\d{2}(?![\w-])|^\d{2}-\d{2}$/;

/** Every text that a reader sees or hears. Cautions give both units in one sentence, and so do the names of label sheets. */
const textsOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    const texts = new Set();
    const apart = 'script, style, .farm-name, .caution, option[value^="a4-"], option[value^="letter-"], [data-both-units]';
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node !== null; node = walk.nextNode())
      if (node.parentElement.closest(apart) === null) texts.add(node.textContent.trim());
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder]'))
      for (const name of ['aria-label', 'title', 'placeholder']) texts.add((element.getAttribute(name) ?? '').trim());
    return [...texts];
  })()`);

async function readIn(page: Page, origin: string, system: System): Promise<void> {
  await page.goto(`${origin}/farm`);
  await page.getByLabel('Units', { exact: true }).selectOption(system);
  const save = page.getByRole('button', { name: 'Save settings' });
  if (await save.isEnabled()) {
    await save.click();
    await expect(page.getByText('Nothing changed.')).toBeVisible();
  }
}

/** What the farm's keeper named: a bag of 40 lb stays one for every reader. Longest first. */
function namesIn(farmFile: string): readonly string[] {
  const farm = new DatabaseSync(farmFile, { readOnly: true });
  const names = ['material', 'offer', 'design', 'supplier'].flatMap((table) =>
    farm
      .prepare(`SELECT name FROM ${table}`)
      .all()
      .map((row) => String(row['name'])),
  );
  farm.close();
  return names.filter((name) => /\d/.test(name)).toSorted((a, b) => b.length - a.length);
}

/** Texts that hold a unit of both for a reason: the field's own examples, the choice of units, units of a laboratory's sheet. */
const bothUnits: readonly RegExp[] = [
  /^US customary: feet, gallons, pounds$|^Metric: metres, litres, kilograms$/,
  /^Every field takes either: 3 ft 6 in, 90 cm, 40 gal\.$/,
  /^A tray is 10 by 20 in \(25 by 51 cm\)/,
  /\bmg\/(?:L|kg)\b|\bmeq\/100 g\b|\bdS\/m\b/,
  /“half-inch” is sold from 0\.50 to 0\.62 in \(12\.7 to 15\.7 mm\)/,
  /mesh of 1\/16 in \(1\.6 mm\)/,
  /^1 (?:cup \(237 mL|litre \(0\.264 gal)\)$/,
  /131 to 170 °F \(55 to 77 °C\)/,
  // the words of a source
  /table of materials: N dry basis, C:N, moisture, lb\/gal/,
];

/** What an outlet orders and a picker counts keeps the unit in which it was entered. */
const asEntered = /^(?:season 3|harvest \d): (?:kg|Again: .* kg)$/;

for (const system of ['us', 'metric'] as const)
  test(`a reader of ${system} units meets no others, and no date as files write it, in any view`, async ({
    page,
    host,
    sampleFarm,
  }) => {
    test.setTimeout(400_000);
    const names = namesIn(sampleFarm);
    expect(names.length).toBeGreaterThan(20);
    await readIn(page, host.origin, system);
    const other = unitOfOthers(system);
    const found: string[] = [];
    let looked = 0;
    const look = async (view: string): Promise<void> => {
      await page.waitForLoadState('networkidle');
      for (const text of await textsOn(page)) {
        looked += 1;
        const own = names.reduce((left, name) => left.replaceAll(name, 'a name'), text);
        if ((other.test(own) && !bothUnits.some((each) => each.test(own))) || fileDate.test(own)) {
          const at = `${view}: ${text}`;
          if (!asEntered.test(at) && !text.endsWith('.bedwright')) found.push(at);
        }
      }
    };
    for (const place of placeNames) {
      await page.goto(`${host.origin}/${place}${place === 'beds' ? '?bed=bed-a-1' : ''}`);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      const tabs = page.locator('.page [role=tab]');
      for (let at = 0; at < Math.max(1, await tabs.count()); at += 1) {
        if ((await tabs.count()) > 0) await tabs.nth(at).click();
        await look(`${place} ${at + 1}`);
      }
    }
    expect(looked).toBeGreaterThan(2000);
    expect([...new Set(found)]).toEqual([]);
  });
