import { say } from '../../../words/say.ts';

export const aims = [
  { value: 'most-margin', text: say('Most margin') },
  { value: 'fewest-beds', text: say('Fewest bed-weeks') },
  { value: 'fewest-hours', text: say('Fewest hours') },
  { value: 'steady', text: say('Steady weekly harvest') },
] as const;
export type Aim = (typeof aims)[number]['value'];

export const weights = [
  { value: 'a-little', text: say('a little') },
  { value: 'clearly', text: say('clearly') },
  { value: 'above-all', text: say('above all') },
] as const;
export type Weight = (typeof weights)[number]['value'];

export const efforts = [
  { value: 'quick', text: say('Quick: a few seconds') },
  { value: 'good', text: say('Good: about ten seconds') },
  { value: 'thorough', text: say('Thorough: a minute or more') },
] as const;
export type Effort = (typeof efforts)[number]['value'];

/** What a goal does, in plain words. */
export function goalSays(aim: Aim, weight: Weight): string {
  switch (aim) {
    case 'most-margin':
      return say('Income less seed, wages, overtime and what missed orders cost.');
    case 'fewest-beds':
      if (weight === 'above-all') return say('Meets the standing orders with the least bed, and sells nothing beside.');
      return weight === 'clearly'
        ? say(
            'Margin, but each bed-week counts as a cost of three tenths of what a bed-week sells for, so that beds rest where little is earned.',
          )
        : say(
            'Margin, but each bed-week counts as a cost of a tenth of what a bed-week sells for, so that beds rest where little is earned.',
          );
    case 'fewest-hours':
      if (weight === 'above-all') return say('Meets the standing orders with the fewest hours, and sells nothing beside.');
      return weight === 'clearly'
        ? say('Margin, with each hour counted as three wages.')
        : say('Margin, with each hour counted as one and a half wages.');
    case 'steady':
      if (weight === 'above-all') return say('Margin, but each unit that a week’s harvest jumps costs the crop’s whole price.');
      return weight === 'clearly'
        ? say('Margin, but each unit that a week’s harvest jumps costs three tenths of the crop’s price.')
        : say('Margin, but each unit that a week’s harvest jumps costs a tenth of the crop’s price.');
  }
}

/** A kept goal (`aim weight`) as it is shown. */
export function goalTitle(goal: string): string {
  const [aim = '', weight = ''] = goal.split(' ');
  const title = aims.find(({ value }) => value === aim)?.text ?? goal;
  const how = weights.find(({ value }) => value === weight)?.text;
  return aim === 'most-margin' || how === undefined ? title : `${title}, ${how}`;
}
