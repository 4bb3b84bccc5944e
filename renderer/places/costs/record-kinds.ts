import { say } from '../../words/say.ts';

/** The logs that records regimes ask for, as a grower says them. */
export const recordKinds = [
  { value: 'cleaning', text: say('Cleaning') },
  { value: 'training', text: say('Training') },
  { value: 'water-inspection', text: say('Water system inspected') },
  { value: 'water-assessment', text: say('Yearly water assessment') },
  { value: 'wash-water', text: say('Wash water reading') },
  { value: 'illness', text: say('Illness') },
  { value: 'visitors', text: say('Visitors') },
  { value: 'animals', text: say('Animals in the crop') },
  { value: 'flood', text: say('Flood') },
  { value: 'equipment', text: say('Shared tools') },
  { value: 'review', text: say('Review') },
] as const;
