import { say } from '../../words/say.ts';

/** The groups of the farm's settings, with what stands in each, so that the finding box knows them. */
export const settingGroups = {
  farm: { title: say('Farm'), holds: [say('Name'), say('Address and contact')] },
  place: {
    title: say('Place'),
    holds: [
      say('Latitude'),
      say('Longitude'),
      say('Height above the sea'),
      say('North on the site drawing'),
      say('Near a coast'),
    ],
  },
  units: {
    title: say('Units and language'),
    holds: [say('Units'), say('Numbers and dates as in'), say('Language of the program'), say('Currency')],
  },
  frost: { title: say('Frost'), holds: [say('Last frost, early'), say('First frost, early')] },
  money: {
    title: say('Money'),
    holds: [
      say('Wage for an hour'),
      say('Interest a year'),
      say('Electricity'),
      say('Water'),
      say('Parts are written off by'),
      say('Overheads are shared by'),
    ],
  },
  records: {
    title: say('Records'),
    holds: [say('Records kept'), say('Only inputs allowed for organic use'), say('Trays are filled with')],
  },
  measures: {
    title: say('Measures and loads'),
    holds: [say('Bucket'), say('Barrow'), say('Can'), say('Vehicle holds'), say('Vehicle carries')],
  },
} as const;

export type SettingGroup = keyof typeof settingGroups;
