import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { helpOf } from '../../../renderer/app/help.ts';
import { placeNames } from '../../../renderer/app/place-names.ts';
import { type PlaceTab, tabsOf } from '../../../renderer/app/place-tabs.ts';
import { settingGroups } from '../../../renderer/places/farm/setting-groups.ts';

const cautions = JSON.parse(readFileSync(new URL('../../../resources/cautions.json', import.meta.url), 'utf8')) as
  | readonly { readonly id: string }[]
  | { readonly cautions: readonly { readonly id: string }[] };
const cautionIds = new Set(('cautions' in cautions ? cautions.cautions : cautions).map(({ id }) => id));

describe.each(placeNames)('the help of %s', (name) => {
  const help = helpOf[name];
  test('says what the place is for and how to go about it', () => {
    expect(help.what.length).toBeGreaterThan(40);
    expect(help.steps.length).toBeGreaterThan(1);
  });
  test('names what is computed there, how, and from which source', () => {
    expect(help.computes.length).toBeGreaterThan(0);
    for (const { name: figure, how, source } of help.computes) {
      expect(figure).not.toBe('');
      expect(how.length, figure).toBeGreaterThan(15);
      expect(source.length, figure).toBeGreaterThan(3);
    }
  });
  test('says what each tab shows', () => {
    const tabs: readonly PlaceTab[] = tabsOf[name];
    for (const { what, title } of tabs) expect(what.length, title).toBeGreaterThan(15);
    expect(new Set(tabs.map(({ what }) => what)).size).toBe(tabs.length);
  });
  test('shows cautions that there are', () => {
    for (const id of help.cautions) expect(cautionIds.has(id), id).toBe(true);
  });
});

test('each setting that can be found is a field of its group', () => {
  const source = readFileSync(new URL('../../../renderer/places/farm/setting-fields.tsx', import.meta.url), 'utf8');
  const drawn = new Map(
    source
      .split('<Group name="')
      .slice(1)
      .map((part) => [part.slice(0, part.indexOf('"')), part]),
  );
  expect([...drawn.keys()].sort()).toEqual(Object.keys(settingGroups).sort());
  for (const [group, { holds }] of Object.entries(settingGroups))
    for (const name of holds) expect(drawn.get(group), `${group}: ${name}`).toContain(`say('${name}')`);
});
