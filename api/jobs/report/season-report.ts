import { type ReportData, type ReportFile, writeReport } from '../../report/make-report.ts';
import { loadMilpSolver } from '../milp/highs.ts';
import type { JobVoice } from '../runners.ts';

/** The files of the season report; Stop takes the cheapest list found so far. */
export async function run(data: ReportData, voice: JobVoice): Promise<readonly ReportFile[]> {
  const solve = await loadMilpSolver();
  voice.progress({ share: null, text: 'Looking for the cheapest list' });
  return writeReport(data, solve, { shouldStop: voice.shouldStop });
}
