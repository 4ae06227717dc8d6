import { sculptAtWork } from '../project/at-work.ts';
import type { Outcome, SculptOutcome } from './outcome.ts';
import type { Run } from './run.ts';

/** What a run came to. @param sculpts  what each sculpt came to, in the order of the project. */
export function outcomeOf(run: Run, sculpts: readonly SculptOutcome[]): Outcome {
  const {
    project,
    pieces,
    seams,
    strips,
    plain,
    assembly,
    templates,
    turned,
    sheets,
    paper,
    findings,
    stopped,
    madeNew,
  } = run;
  const part = sculptAtWork(project);
  const atWork = sculpts.find((own) => own.part === part);
  const [seen] = atWork?.layers ?? [];
  return {
    project,
    sculpts,
    part,
    sculpt: atWork?.sculpt ?? null,
    drawn: atWork?.drawn ?? null,
    layers: atWork?.layers ?? [],
    raised: atWork?.raised ?? [],
    cut: seen?.cut ?? null,
    flats: seen?.flats ?? null,
    pieces,
    seams,
    strips,
    plain,
    assembly,
    templates,
    turned,
    sheets,
    paper,
    areasInClay: atWork?.areasInClay ?? [],
    bodyFit: atWork?.bodyFit ?? null,
    mirror: atWork?.mirror ?? null,
    dryFit: atWork?.dryFit ?? null,
    springing: atWork?.springing ?? null,
    findings,
    stopped: atWork?.stopped ?? stopped,
    madeNew,
  };
}
