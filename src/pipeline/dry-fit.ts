import { Memo } from '../base/memo.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import type { Ring } from '../geom/ring.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { DryFit, SeamFit } from '../model/dry-fit.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { Patch } from '../model/patch.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import { dryFitOf, joinedSeams, type JoinedSeam, type SeamRun } from '../steps/dryfit/dry-fit.ts';
import type { FitSide } from '../steps/dryfit/fit-side.ts';
import { measureBent } from '../steps/dryfit/measure-seam.ts';
import { bentSides, type BentSide } from '../steps/dryfit/placed-edge.ts';
import { seamEnds, type SeamEnd } from '../steps/dryfit/seam-ends.ts';
import { sharedCorners } from '../steps/dryfit/shared-corners.ts';
import { hingedEnds, type HingeShapes } from '../steps/foam/hinge-shapes.ts';
import type { PartBends } from '../steps/foam/part-bends.ts';
import { triangleBeside } from '../steps/foam/piece-surface.ts';
import { smoothTilts } from '../steps/foam/side-tilts.ts';
import type { CutSculpt } from './outcome.ts';

/** What pieces are put together from. */
export interface DryFitJob {
  readonly cut: Pick<CutSculpt, 'mesh' | 'shells' | 'chains' | 'patches'>;
  readonly bends: PartBends;
  /** One per patch: how a grooved piece stands on its hinges. */
  readonly hinges: readonly (HingeShapes | null)[];
  readonly pieces: readonly FoamPiece[];
  readonly seams: readonly FoamSeam[];
  /** Stretch beyond which the foam takes no more, per cent. */
  readonly tooMuchPct: number;
}

/** What both sides of a seam are bent from. */
type BendSources = Omit<DryFitJob, 'pieces' | 'seams'>;

/** A seam as it was measured, and how its ends stand, with all it was measured from. */
interface Measured {
  readonly mesh: Mesh;
  readonly shells: readonly [ShellLayer, ShellLayer];
  readonly patches: readonly [Patch, Patch];
  readonly hinges: readonly [HingeShapes | null, HingeShapes | null];
  readonly joined: JoinedSeam;
  readonly tooMuchPct: number;
  readonly fit: SeamFit;
  readonly ends: readonly SeamEnd[];
}

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/** Dry fits of a pipeline. A seam is measured anew only when one of the two pieces beside it is cut otherwise or bent otherwise. */
export class DryFits {
  #measured: ReadonlyMap<string, Measured> = new Map();
  readonly #fits = new Memo<unknown[], DryFit>(KEPT);
  #count = 0;

  /** How many seams have been measured so far. */
  get measuredCount(): number {
    return this.#count;
  }

  /** @throws Cancelled when the work was called off; what was measured by then is measured again the next time. */
  async of(job: DryFitJob, work: Work): Promise<DryFit> {
    const key = [job.cut.mesh, job.cut.shells, job.pieces, job.seams, job.tooMuchPct];
    const known = this.#fits.get(key);
    if (known !== undefined) return known;
    const measured = new Map<string, Measured>();
    const joined = joinedSeams(job.pieces, job.seams);
    for (const [i, seam] of joined.entries()) {
      await shareOfWork(work, i / joined.length, 1).pause(0, 'putting the pieces together');
      const before = this.#measured.get(seam.seam.id);
      const isAsBefore = before !== undefined && isSame(before, job, seam);
      measured.set(seam.seam.id, isAsBefore ? { ...before, joined: seam } : this.#measure(job, seam));
    }
    this.#measured = measured;
    return this.#fits.set(
      key,
      dryFitOf(
        [...measured.values()].map(({ fit }) => fit),
        sharedCorners([...measured.values()].flatMap(({ ends }) => ends)),
      ),
    );
  }

  #measure(job: DryFitJob, joined: JoinedSeam): Measured {
    this.#count += 1;
    const [a, b] = joined.sides;
    const bent = bentSeam(job, joined);
    return {
      mesh: job.cut.mesh,
      shells: [job.cut.shells[a.piece.patch], job.cut.shells[b.piece.patch]],
      hinges: [job.hinges[a.piece.patch], job.hinges[b.piece.patch]],
      patches: [job.cut.patches[a.piece.patch], job.cut.patches[b.piece.patch]],
      joined,
      tooMuchPct: job.tooMuchPct,
      fit: measureBent(joined.seam, bent),
      ends: seamEnds(joined.seam, bent),
    };
  }
}

/** Both sides of a seam bent as they are put together. */
export const bentSeam = (job: BendSources, { sides: [a, b] }: JoinedSeam): readonly [BentSide, BentSide] =>
  bentSides([sideOf(job, a), sideOf(job, b)], job.tooMuchPct / 100);

function sideOf({ cut, bends, hinges }: BendSources, { piece, edge }: SeamRun): FitSide {
  const chain = cut.chains.find(({ id }) => id === edge.seam);
  if (chain === undefined) throw new Error(`sideOf: no seam ${edge.seam}`);
  const { surface, panels, choice } = bends.patches[piece.patch];
  const side = chain.sides[edge.side];
  const { neutralPositions, neutralFraction } = cut.shells[piece.patch];
  const shapes = hinges[piece.patch];
  return {
    piece,
    edge,
    patch: cut.patches[piece.patch],
    neutralPositions,
    hingedEnds: shapes && hingedEnds(bends.patches[piece.patch], shapes, side, edge.side),
    neutralFraction,
    tiltRad: choice.style !== 'grooved' ? smoothTilts(cut.mesh, surface, panels, side, edge.side) : null,
    panelBeside: Int32Array.from(chain.foldRad, (_, i) => panels.panelOf[triangleBeside(surface, side, edge.side, i)]),
  };
}

function isSame(before: Measured, job: DryFitJob, joined: JoinedSeam): boolean {
  const { cut, tooMuchPct } = job;
  return (
    before.mesh === cut.mesh &&
    before.tooMuchPct === tooMuchPct &&
    before.joined.seam.kind === joined.seam.kind &&
    before.joined.seam.letter === joined.seam.letter &&
    before.joined.seam.standSide === joined.seam.standSide &&
    joined.sides.every(
      (run, i) =>
        before.patches[i] === cut.patches[run.piece.patch] &&
        before.shells[i] === cut.shells[run.piece.patch] &&
        before.hinges[i] === job.hinges[run.piece.patch] &&
        isCutAlike(before.joined.sides[i], run),
    )
  );
}

/** Pieces are made anew whenever one of them changes, so that they are compared by what is cut. */
function isCutAlike(a: SeamRun, b: SeamRun): boolean {
  const [p, q] = [a.piece, b.piece];
  const marksOf = ({ piece, edge }: SeamRun): Ring =>
    Float64Array.from(
      piece.marks.filter(({ seam, side }) => seam === edge.seam && side === edge.side).map((mark) => mark.stationMm),
    );
  return (
    p.id === q.id &&
    p.bendStyle === q.bendStyle &&
    p.tracedSide === q.tracedSide &&
    a.edge.ring === b.edge.ring &&
    a.edge.from === b.edge.from &&
    a.edge.to === b.edge.to &&
    a.edge.allowanceMm === b.edge.allowanceMm &&
    areSame([p.neutralOutline, ...p.neutralHoles], [q.neutralOutline, ...q.neutralHoles]) &&
    areSame([p.outline, ...p.holes], [q.outline, ...q.holes]) &&
    areSame([p.otherOutline, ...p.otherHoles], [q.otherOutline, ...q.otherHoles]) &&
    areSame([marksOf(a)], [marksOf(b)])
  );
}

const areSame = (a: readonly Ring[], b: readonly Ring[]): boolean =>
  a.length === b.length &&
  a.every((ring, i) => ring === b[i] || (ring.length === b[i].length && ring.every((x, j) => x === b[i][j])));
