import { addDays, type IsoDate } from '../../planner/calendar.ts';
import type { CropNeeds, Plan, PlanBed, PlanPlanting, PlanRules, PlanSpan } from '../../planner/season/plan.ts';

export const day = (text: string): IsoDate => text as IsoDate;

export const aCrop = (change: Partial<CropNeeds> = {}): CropNeeds => ({
  cropId: 'carrot',
  cropName: 'Carrot',
  family: 'Apiaceae',
  soilDepth_m: 0.2,
  needsTrellis: false,
  bearsShade: false,
  hardiness: 'half-hardy',
  ...change,
});

export const aPlanBed = (change: Partial<PlanBed> = {}): PlanBed => ({
  id: 'bed-1',
  code: 'A-1',
  blockId: 'block-a',
  area_m2: 3,
  soilDepth_m: 0.4,
  sun: 'full',
  hasTrellis: false,
  isCovered: false,
  built: null,
  retired: null,
  lastYearOf: {},
  ...change,
});

export const aSpan = (change: Partial<PlanSpan> = {}): PlanSpan => ({
  bedId: 'bed-1',
  fromShare: 0,
  toShare: 1,
  plants: 100,
  mostPlants: 120,
  ...change,
});

export function aPlanting(change: Partial<PlanPlanting> = {}): PlanPlanting {
  const inBed = change.inBed ?? day('2027-05-10');
  return {
    id: 'p1',
    crop: aCrop(),
    raised: false,
    sow: inBed,
    inBed,
    firstHarvest: addDays(inBed, 70),
    lastHarvest: addDays(inBed, 98),
    free: addDays(inBed, 101),
    spans: [aSpan()],
    ...change,
  };
}

export const someRules = (change: Partial<PlanRules> = {}): PlanRules => ({
  start: day('2027-01-01'),
  end: day('2028-01-01'),
  lastFrost: day('2027-04-10'),
  firstFrost: day('2027-11-05'),
  firstHardFrost: day('2027-11-25'),
  gapYears: {},
  mayRepeatCrop: false,
  ...change,
});

export const aPlan = (change: Partial<Plan> = {}): Plan => ({
  beds: [aPlanBed()],
  plantings: [aPlanting()],
  rules: someRules(),
  ...change,
});
