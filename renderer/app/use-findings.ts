import { useMemo } from 'react';
import { api } from '../client/api.ts';
import { useReader } from '../client/reader.tsx';
import { useRead } from '../client/use-read.ts';
import { setLook, useLook } from '../look/theme.ts';
import { settingGroups } from '../places/farm/setting-groups.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import { addressOf, go, NO_FARM } from './address.ts';
import { keysOf } from './commands.ts';
import type { Finding } from './find.ts';
import { tabKeyOf, tabsOf } from './place-tabs.ts';
import { places } from './places.ts';
import { useUndo } from './use-undo.ts';

const kindNames = {
  bed: say('Bed'),
  crop: say('Crop'),
  planting: say('Planting'),
  material: say('Material'),
  design: say('Design'),
  supplier: say('Supplier'),
  offer: say('Offer'),
  season: say('Season'),
  'water-line': say('Water line'),
  'soil-test': say('Soil test'),
  heap: say('Compost heap'),
} as const;

const addresses = {
  bed: (id: string) => go('beds', { bed: id }),
  crop: (id: string) => go('library', { tab: 'crops', crop: id }),
  planting: (id: string) => go('season', { planting: id }),
  material: (id: string) => go('library', { tab: 'materials', material: id }),
  design: (id: string) => go('library', { tab: 'designs', design: id }),
  supplier: (id: string) => go('library', { tab: 'suppliers', supplier: id }),
  offer: (id: string) => go('library', { tab: 'offers', offer: id }),
  season: (id: string) => go('season', { season: id }),
  'water-line': (id: string) => go('water', { tab: 'line', line: id }),
  'soil-test': (id: string) => go('soil', { test: id }),
  heap: (id: string) => go('soil', { tab: 'compost', heap: id }),
} as const;

/** All that can be found: places and their tabs, actions, settings, the farm's own things by name, needs, and the help. */
export function useFindings(): readonly Finding[] {
  const names = useRead(api.find.names, undefined);
  const needs = useRead(api.find.needs, undefined);
  const undo = useUndo();
  const look = useLook();
  const reader = useReader();
  return useMemo(() => {
    const pages = places.map(
      (place): Finding => ({
        id: `place ${place.name}`,
        kind: say('Place'),
        title: place.title,
        detail: '',
        keys: keysOf(place.name),
        go: () => go(place.name),
      }),
    );
    const parts = places.flatMap(({ name, title: of }) =>
      tabsOf[name].map(
        (tab): Finding => ({
          id: `tab ${name} ${tab.name}`,
          kind: say('Page'),
          title: tab.title,
          detail: `${of}: ${tab.what}`,
          go: () => go(name, { [tabKeyOf(name)]: tab.name }),
        }),
      ),
    );
    const actions: Finding[] = [
      ...(undo.undoName === null
        ? []
        : [action(say('Undo: {undoName}', { undoName: undo.undoName }), keysOf('undo'), () => void undo.undo())]),
      ...(undo.redoName === null
        ? []
        : [action(say('Redo: {redoName}', { redoName: undo.redoName }), keysOf('redo'), () => void undo.redo())]),
      action(say('Print this page'), keysOf('print'), () => window.print()),
      action(say('Light look'), undefined, () => setLook({ ...look, theme: 'light' })),
      action(say('Dark look'), undefined, () => setLook({ ...look, theme: 'dark' })),
      action(look.contrast === 'high' ? say('Normal contrast') : say('High contrast'), undefined, () =>
        setLook({ ...look, contrast: look.contrast === 'high' ? 'normal' : 'high' }),
      ),
      action(
        say('Open another farm in a second window'),
        undefined,
        () => void window.open(addressOf('week', { farm: NO_FARM })),
      ),
      action(say('Save a copy of the farm'), undefined, () => go('farm', { tab: 'files' })),
      action(say('New farm'), undefined, () => go('farm', { tab: 'new' })),
    ];
    const things =
      names.state === 'ready'
        ? names.data.map(
            (each): Finding => ({
              id: `${each.kind} ${each.id}`,
              kind: kindNames[each.kind],
              title: each.name,
              detail: [each.detail, each.date === null ? '' : reader.date(each.date)].filter((part) => part !== '').join(', '),
              go: () => addresses[each.kind](each.id),
            }),
          )
        : [];
    const needed =
      needs.state === 'ready'
        ? needs.data.map(
            ({ key, seasonId, name, reason }): Finding => ({
              id: `need ${key}`,
              kind: say('Need'),
              title: name,
              detail: sayKnown(reason),
              go: () => go('orders', { tab: 'needs', season: seasonId, need: key }),
            }),
          )
        : [];
    const help = places.flatMap((place) =>
      place.help.computes.map(
        (each): Finding => ({
          id: `help ${place.name} ${each.name}`,
          kind: say('Help'),
          title: each.name,
          detail: `${place.title}: ${each.how}`,
          go: () => go(place.name, { help: 'yes' }),
        }),
      ),
    );
    return [...pages, ...parts, ...actions, ...settings, ...things, ...needed, ...help];
  }, [names, needs, undo.undoName, undo.redoName, undo.undo, undo.redo, look, reader]);
}

const settings: readonly Finding[] = Object.entries(settingGroups).flatMap(([group, { title, holds }]) =>
  holds.map((name) => ({
    id: `setting ${group} ${name}`,
    kind: say('Setting'),
    title: name,
    detail: title,
    go: () => go('farm', { tab: 'settings', group }),
  })),
);

const action = (title: string, keys: string | undefined, does: () => void): Finding => ({
  id: `do ${title}`,
  kind: say('Action'),
  title,
  detail: '',
  ...(keys === undefined ? {} : { keys }),
  go: does,
});
