import { QUIET_WORK } from '../../src/base/work.ts';
import { HomeCrew } from '../../src/pipeline/flatten-crew.ts';
import { outcomeOf } from '../../src/pipeline/outcome-of.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Run } from '../../src/pipeline/run.ts';
import { SculptChain } from '../../src/pipeline/sculpt-chain.ts';
import type { Source } from '../../src/pipeline/sculpt-stage.ts';
import { tellOf } from '../../src/pipeline/told-of-sculpt.ts';
import type { Project } from '../../src/project/project.ts';

/**
 * The chain of a project of one sculpt, from its file to templates and dry fit, by the same steps in the same order as the pipeline, without what
 * takes most of the time: where pieces lie on sheets and pages. What the outcome says of those is null.
 */
export async function runToPieces(project: Project, sources: ReadonlyMap<string, Source>): Promise<Outcome> {
  const run = new Run(project, { date: '2026-01-01' });
  const chain = new SculptChain(new HomeCrew(), sources);
  for (const own of run.sculpts) {
    await chain.flatten(own, QUIET_WORK);
    await chain.makeFoam(own, 1, QUIET_WORK);
    tellOf(run, own);
    await chain.draw(own, QUIET_WORK);
    run.pieces = own.pieces;
    run.seams = own.seams;
    await chain.finish(own, QUIET_WORK);
    await chain.close(own, QUIET_WORK);
    tellOf(run, own);
  }
  return outcomeOf(
    run,
    run.sculpts.map((own) => chain.outcome(own)),
  );
}
