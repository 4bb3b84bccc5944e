import type { Registry } from '../registry.ts';
import { budgets } from './costs/budgets.ts';
import { buying } from './costs/buying.ts';
import { capital } from './costs/capital.ts';
import { ledger } from './costs/ledger.ts';
import { produce } from './costs/produce.ts';
import { returns } from './costs/returns.ts';
import { weatherLines } from './costs/weather-lines.ts';

export const costs: Registry = {
  ...capital,
  ...budgets,
  ...returns,
  ...produce,
  ...ledger,
  ...buying,
  ...weatherLines,
};
