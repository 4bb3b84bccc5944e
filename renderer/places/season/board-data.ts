import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';

export type BoardData = OutputOf<typeof api.plantings.board>;
export type BoardRow = BoardData['rows'][number];
export type Choices = OutputOf<typeof api.plantings.choices>;
export type CropChoice = Choices['crops'][number];
export type PlantingSheetData = OutputOf<typeof api.plantings.one>;
