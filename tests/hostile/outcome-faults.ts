import { checkFoams } from '../../src/model/foams.ts';
import { isWhole, shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { pdfOf, reportOf } from '../../src/pipeline/write-files.ts';
import { cutFaults, thrown } from './cut-faults.ts';
import { paperFaults } from './paper-faults.ts';
import { pieceFaults } from './piece-faults.ts';
import { problemFaults, toldFaults } from './told-faults.ts';

/**
 * All that is wrong with what a run made, held against the promise of every record: the mesh, lines drawn on it, patches, flat pieces, pieces of foam,
 * seams, sheets, pages, dry fit, report, and what is told.
 * @returns one line a fault; none for a sound run.
 */
export function outcomeFaults(outcome: Outcome): string[] {
  const { sculpts, stopped, pieces, findings, project, paper } = outcome;
  if (stopped === null && (pieces?.length ?? 0) === 0) return ['neither pieces nor a reason'];
  return [
    ...thrown('foams', () => void checkFoams(project.foams)),
    ...toldFaults(outcome),
    ...sculpts.flatMap((own) => cutFaults(own, findings)),
    ...pieceFaults(outcome),
    ...paperFaults(outcome),
    ...(stopped === null && paper !== null ? thrown('report', () => void reportOf(outcome)) : []),
  ];
}

/** What is slow to make is looked at too: the work of the shop with its own checks, and the finished PDF, read back. */
export async function fileFaults(outcome: Outcome, font: Uint8Array): Promise<string[]> {
  if (outcome.stopped !== null || outcome.paper === null) return [];
  const faults = thrown('shop', () => {
    if (isWhole(outcome)) reportOf(outcome, [], runAtOnce(shopPlanSteps(outcome)));
  });
  const pdf = await pdfOf(outcome, { font, date: '2026-01-01' });
  return pdf.ok ? faults : [...faults, `pdf: ${pdf.problem.text}`, ...problemFaults(pdf.problem)];
}
