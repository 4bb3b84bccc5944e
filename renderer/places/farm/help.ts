import type { PlaceHelp } from '../../app/place-help.ts';

export const farmHelp: PlaceHelp = {
  what: 'The farm itself: its place, units, currency, records, and the file it is kept in with its backups.',
  steps: [
    'Set the place and the units first.',
    'Save a copy before large work.',
    'Restore a backup: it opens beside the farm and replaces nothing until you say so.',
  ],
  computes: [
    {
      name: 'Backups',
      how: "A dated copy once a day and before every change of the file's form.",
      source: 'Files beside the farm file.',
    },
  ],
  cautions: ['estimate-limits'],
};
