import { Cancelled, type Work } from '../base/work.ts';
import type { Project } from '../project/project.ts';
import type { EarlyOutcome } from './outcome.ts';
import { Pipeline } from './pipeline.ts';
import type { Proposal } from './propose/proposal.ts';
import type { Source } from './sculpt-stage.ts';
import type { SeamGround } from './seam-ground.ts';

/** A proposed piece that goes beyond a limit once it is made. */
export interface BeyondWhenMade {
  /** Index of the piece in the proposal. */
  readonly piece: number;
  /** 99th percentile by area, per cent; null where it cannot be made at all. */
  readonly stretch99: number | null;
  readonly squash99: number | null;
}

/**
 * Makes the templates along proposed seams and tells the pieces that hold in the proposal but not when made: what is folded along grooves is
 * laid flat on its hinges, which lie elsewhere in the foam than the surface seams are sought on.
 */
export async function beyondWhenMade(
  project: Project,
  sources: ReadonlyMap<string, Source>,
  { surface, limits }: Pick<SeamGround, 'surface' | 'limits'>,
  proposal: Proposal,
  work: Work,
): Promise<readonly BeyondWhenMade[]> {
  const pipeline = new Pipeline();
  for (const [hash, source] of sources) pipeline.putSource(hash, source);
  const seams = surface.marksOf(proposal.seams.isSeam);
  const parts = project.parts.map((part) => ({ ...part, seams }));
  const laid = await laidFlat(pipeline, { ...project, parts }, work);
  const made = new Map(laid?.cut.patches.map(({ meshTriangles }, i) => [meshTriangles[0], laid.flats[i]]));
  return proposal.perPiece.flatMap(({ patch, isFeasible }, piece): BeyondWhenMade[] => {
    const flat = made.get(patch.meshTriangles[0]);
    if (!isFeasible || flat === undefined) return [];
    if (flat === null) return [{ piece, stretch99: null, squash99: null }];
    const [stretch99, squash99] = [flat.stretchPct.p99, flat.squashPct.p99];
    return stretch99 <= limits.stretchPct && squash99 <= limits.squashPct ? [] : [{ piece, stretch99, squash99 }];
  });
}

/** Runs the chain until all pieces lie flat, and calls it off there: foam, sheets and paper are not asked for. Null where none can lie flat. */
async function laidFlat(pipeline: Pipeline, project: Project, work: Work): Promise<EarlyOutcome | null> {
  const laid: EarlyOutcome[] = [];
  const untilFlat: Work = {
    pause: (done, text) => {
      if (laid.length > 0) throw new Cancelled();
      return work.pause(done, text);
    },
  };
  const onEarly = (early: EarlyOutcome): void => {
    if (early.isFinal.every(Boolean)) laid.push(early);
  };
  try {
    await pipeline.run(project, untilFlat, { onEarly });
  } catch (error) {
    if (!(error instanceof Cancelled) || laid.length === 0) throw error;
  }
  return laid.at(0) ?? null;
}
