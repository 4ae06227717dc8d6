import { weighed, type Verdict } from '../../base/verdict.ts';
import { allCut, type Bench } from '../bench-state.ts';
import { toldFindings } from './told-findings.ts';

/** What all findings together say of the job on the bench. */
export const verdictOf = (bench: Bench): Verdict =>
  weighed(toldFindings(bench), bench.paper !== null && allCut(bench).length > 0);
