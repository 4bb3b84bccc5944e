import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const farmHelp: PlaceHelp = {
  what: say('The farm itself: its place, units, currency, records, and the file it is kept in with its backups.'),
  steps: [
    say('Set the place and the units first.'),
    say('Save a copy before large work.'),
    say('Look into a backup before you go back to it: it shows what would be lost. The farm as it stands is backed up first.'),
  ],
  computes: [
    {
      name: say('Backups'),
      how: say("A dated copy once a day and before every change of the file's form."),
      source: say('Files beside the farm file.'),
    },
  ],
  cautions: ['estimate-limits'],
};
