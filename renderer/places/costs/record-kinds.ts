/** The logs that records regimes ask for, as a grower says them. */
export const recordKinds = [
  { value: 'cleaning', text: 'Cleaning' },
  { value: 'training', text: 'Training' },
  { value: 'water-inspection', text: 'Water system inspected' },
  { value: 'water-assessment', text: 'Yearly water assessment' },
  { value: 'wash-water', text: 'Wash water reading' },
  { value: 'illness', text: 'Illness' },
  { value: 'visitors', text: 'Visitors' },
  { value: 'animals', text: 'Animals in the crop' },
  { value: 'flood', text: 'Flood' },
  { value: 'equipment', text: 'Shared tools' },
  { value: 'review', text: 'Review' },
] as const;
