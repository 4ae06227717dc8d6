import type { PieceId } from '../../base/ids.ts';
import type { BendLimits } from '../../model/bend-check.ts';
import type { FoamPiece, FoamSeam } from '../../model/foam-piece.ts';
import type { StretchLimits } from '../../model/foam-stock.ts';
import type { Glue } from '../../model/glues.ts';
import type { GluedBody, GluedSculpt, GluingPlan, GluingRun, GluingStep } from '../../model/gluing.ts';
import type { SeamChain } from '../../model/seams.ts';
import { firstTouch, type MarkAt } from './first-touch.ts';
import { inBatches } from './in-batches.ts';
import { longestStretchMm, stretchesOf } from './glue-batches.ts';
import type { NetRun, NetStep } from './gluing-steps.ts';
import type { SeamNet } from './seam-net.ts';
import { Units } from './units.ts';
import { warmWork } from './warm-work.ts';

/** One sheet of foam ready to be glued. */
export interface SheetToGlue {
  /** Left out where the prop is one sculpt. */
  readonly sculpt?: GluedSculpt;
  /** 1 the outermost; 0 for one that is laid on the wall. */
  readonly sheet: number;
  readonly net: SeamNet;
  readonly chains: readonly SeamChain[];
  /** x y z per vertex of its mesh, mm. */
  readonly positions: ArrayLike<number>;
  readonly steps: readonly NetStep[];
  readonly pieces: readonly FoamPiece[];
  readonly seams: readonly FoamSeam[];
  /** Of the foam of each piece. */
  readonly limitsOf: (piece: FoamPiece) => WarmLimits;
}

export interface WarmLimits {
  readonly stretch: StretchLimits;
  readonly bend: BendLimits;
}

/** What is warmed needs these cautions, whatever else it needs. */
const WARM_CAUTIONS: readonly string[] = ['heat', 'pvc', 'glue-then-heat'];

/**
 * The steps of all sheets in a row, each with its seams, the first touch of each and what else belongs beside it, in batches that the glue stays
 * open for.
 * @param sheets the one that is glued first, first.
 */
export function gluingPlan(sheets: readonly SheetToGlue[], glue: Glue): GluingPlan {
  const plain: PlainStep[] = [];
  let [units, most] = [0, 0];
  for (const [i, sheet] of sheets.entries()) {
    // Units of one sculpt are called otherwise than those of the one before.
    if (i > 0 && sheet.sculpt?.part !== sheets[i - 1].sculpt?.part) units = most;
    for (const step of stepsOfSheet(sheet, glue, units)) {
      plain.push(step);
      most = Math.max(most, step.makes.unit ?? 0);
    }
  }
  const outside = new Set(
    plain.flatMap(({ runs }) => runs.flatMap(({ reach, seam }) => (reach === 'outside' ? [seam] : []))),
  );
  return { glue, ...inBatches(plain, glue), outside: [...outside] };
}

/** A step that has no number yet. */
export type PlainStep = Omit<GluingStep, 'number' | 'batch'>;

/** @param unitsBefore  of other sculpts. */
function stepsOfSheet(job: SheetToGlue, glue: Glue, unitsBefore: number): readonly PlainStep[] {
  const pieceOf = new Map(job.pieces.map((piece) => [piece.patch, piece]));
  const pieceAt = (patch: number): FoamPiece => {
    const piece = pieceOf.get(patch);
    if (piece === undefined) throw new Error(`gluingPlan: no piece of patch ${patch}`);
    return piece;
  };
  const numbers = new Map(job.pieces.map(({ id, number }) => [id, number]));
  const idsOf = (patches: readonly number[]): readonly PieceId[] =>
    patches.map((patch) => pieceAt(patch).id).sort((a, b) => (numbers.get(a) ?? 0) - (numbers.get(b) ?? 0));
  const units = new Units(unitsBefore);
  const warmed = new Set<PieceId>();
  return job.steps.map((step): PlainStep => {
    const adds = units.bodyOf(idsOf(step.adds));
    const onto = units.bodyOf(idsOf(step.onto));
    const makes: GluedBody = step.work === 'close' ? adds : units.join(adds, onto, idsOf([...step.adds, ...step.onto]));
    const fresh = [...adds.pieces, ...onto.pieces].filter((id) => !warmed.has(id));
    const warm = fresh.flatMap((id) => {
      warmed.add(id);
      const piece = job.pieces.find((one) => one.id === id);
      return piece === undefined ? [] : warmWork(piece, job.limitsOf(piece));
    });
    return {
      work: step.work,
      ...(job.sculpt === undefined ? {} : { sculpt: job.sculpt }),
      sheet: job.sheet,
      adds,
      ...(onto.pieces.length === 0 ? {} : { onto }),
      makes,
      runs: step.runs.flatMap((run) => runsOf(job, run, glue)),
      ...(step.work === 'lay' ? { laidMm2: step.adds.reduce((sum, p) => sum + pieceAt(p).surfaceAreaMm2, 0) } : {}),
      warm,
      cautions: [...glue.cautions, ...(warm.length > 0 ? WARM_CAUTIONS : [])],
    };
  });
}

/** A seam in stretches that can be joined before the glue goes off. */
function runsOf({ net, chains, positions, pieces, seams }: SheetToGlue, run: NetRun, glue: Glue): readonly GluingRun[] {
  const chain = chains[run.chain];
  const seam = seams.find(({ id }) => id === chain.id);
  if (seam === undefined || seam.kind === 'open') throw new Error(`gluingPlan: no seam ${chain.id}`);
  const { kind } = seam;
  const { lengthMm } = net.chains[run.chain];
  const marks = marksOf(pieces, seam, lengthMm);
  const [first = seam.bevelDeg, second = seam.bevelDeg] = seam.sideBevelDeg ?? [];
  const [one, other = one] = seam.pieces;
  const stretches = stretchesOf(
    lengthMm,
    marks.map(({ stationMm }) => stationMm),
    longestStretchMm(glue),
  );
  return stretches.map(([fromMm, toMm]): GluingRun => {
    const own = marks.filter(({ stationMm }) => stationMm >= fromMm && stationMm <= toMm);
    const letterOf = (index: number): string => chains[index].letter;
    return {
      seam: seam.id,
      letter: seam.letter,
      kind,
      pieces: [one, other],
      fromMm,
      toMm,
      marks: own.length === 0 ? null : { first: own[0].index, last: own[own.length - 1].index },
      bevelDeg: [first, second],
      ...(seam.steep === undefined ? {} : { steep: seam.steep }),
      ...firstTouch({ run, chain, fromMm, toMm, lengthMm, marks: own, letterOf, positions }),
      reach: run.outside ? 'outside' : 'inside',
    };
  });
}

/** The match marks of a seam in its direction, as shares of its length on the sculpt. */
function marksOf(pieces: readonly FoamPiece[], seam: FoamSeam, lengthMm: number): readonly MarkAt[] {
  const [sideMm] = seam.lengthMm;
  const own = pieces.flatMap(({ marks }) => marks.filter(({ seam: id, side }) => id === seam.id && side === 0));
  return own
    .map(({ index, stationMm }) => ({ index, stationMm: Math.min(lengthMm, (stationMm / sideMm) * lengthMm) }))
    .sort((a, b) => a.stationMm - b.stationMm || a.index - b.index);
}
