import type { PartId, PieceId, SeamId } from '../base/ids.ts';
import type { BevelRange } from './foam-piece.ts';
import type { Glue } from './glues.ts';
import type { JoinKind } from './seams.ts';
import type { SteepFigures } from './steep-join.ts';

/**
 * In which order the pieces are glued. Contact adhesive grabs at once and cannot slide, so that every seam has the place where it is touched
 * first and the way it is rolled shut from there.
 */
export interface GluingPlan {
  readonly glue: Glue;
  readonly steps: readonly GluingStep[];
  readonly batches: readonly GluingBatch[];
  /** Seams whose inside no hand reaches when their turn comes, in no order that was found: they are pressed from outside. */
  readonly outside: readonly SeamId[];
}

/**
 * join: two bodies become one. close: a body is joined to itself. lay: pieces are glued flat on what is there already.
 */
export type GluingWork = 'join' | 'close' | 'lay';

/** Whose pieces are glued, where a prop is made of several sculpts. */
export interface GluedSculpt {
  readonly part: PartId;
  readonly name: string;
}

/** Pieces that hang together: one piece, or a unit that was glued before. */
export interface GluedBody {
  /** Lowest number first. */
  readonly pieces: readonly PieceId[];
  /** I, II, III …: which unit it is; left out for a single piece. */
  readonly unit?: number;
}

export interface GluingStep {
  /** 1, 2, 3 … */
  readonly number: number;
  readonly work: GluingWork;
  /** Left out where the prop is one sculpt. */
  readonly sculpt?: GluedSculpt;
  /** Which sheet of the wall its pieces are of, 1 the outermost; 0 for what is laid on the wall. */
  readonly sheet: number;
  /** What is picked up and put to the other; where a body is closed, that body. */
  readonly adds: GluedBody;
  /** What it is put to; left out where a body is closed, and where the first piece of a sheet is laid. */
  readonly onto?: GluedBody;
  /** What comes of it. */
  readonly makes: GluedBody;
  readonly runs: readonly GluingRun[];
  /** Area that is glued flat to the sheet below, mm²; for `lay` alone. */
  readonly laidMm2?: number;
  readonly warm: readonly WarmWork[];
  /** Ids of the cautions this step needs and no other. */
  readonly cautions: readonly string[];
  /** Number of the batch it is in. */
  readonly batch: number;
}

/** A seam, or a stretch of one, that is rolled shut in one go. */
export interface GluingRun {
  readonly seam: SeamId;
  readonly letter: string;
  readonly kind: JoinKind;
  /** Of side 0 and side 1; twice the same where a piece meets itself. */
  readonly pieces: readonly [PieceId, PieceId];
  /** Along the seam from its start, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  /** First and last match mark on the stretch; null where it has none. */
  readonly marks: { readonly first: number; readonly last: number } | null;
  /** Of each side, degrees from square. */
  readonly bevelDeg: readonly [BevelRange, BevelRange];
  readonly steep?: SteepFigures;
  readonly touch: FirstTouch;
  /** Where it is rolled from the first touch: along the seam, against it, or both ways. */
  readonly roll: 'ahead' | 'back' | 'both';
  /** inside: a hand presses it from within. outside: none reaches it any more. */
  readonly reach: 'inside' | 'outside';
}

/** Where the two edges are put together first. */
export interface FirstTouch {
  /** corner: where a seam before it ends. mark: at a match mark. end: at its own end. middle: half-way, where it has no mark. */
  readonly at: 'corner' | 'mark' | 'end' | 'middle';
  /** Number of the match mark, for `mark`. */
  readonly mark?: number;
  /** Seam whose end makes the corner, for `corner`; empty where it has no letter. */
  readonly beside?: string;
  /** From the seam's start, mm. */
  readonly stationMm: number;
  /** On the sculpt, mm. */
  readonly point: readonly [number, number, number];
  /** Way of the seam there, along it, of length 1. */
  readonly along: readonly [number, number, number];
}

/** What is warmed before it goes together. */
export interface WarmWork {
  readonly piece: PieceId;
  /** bend: it is rolled that tightly. form: the foam must be pulled or gathered that much. open: its scored lines open when warmed. */
  readonly why: 'bend' | 'form' | 'open';
  /** Radius in mm for `bend`, per cent for `form`; 0 for `open`. */
  readonly figure: number;
  /** Where on the piece, for example `near the top`; empty where it is all of it. */
  readonly place: string;
}

/** Steps that are brushed together and joined before the glue has gone off. */
export interface GluingBatch {
  readonly number: number;
  /** As in its steps: a batch is of one sculpt. */
  readonly sculpt?: GluedSculpt;
  readonly steps: readonly number[];
  readonly seamMm: number;
  /** From the first stroke of the brush: until all edges are brushed, until the first may be joined, until the last is. Minutes. */
  readonly brushedMin: number;
  readonly joinFromMin: number;
  readonly joinedMin: number;
}

/** @throws Error on a broken plan: a seam twice, a stretch that runs backwards, a batch out of order. */
export function checkGluingPlan({ steps, batches }: Pick<GluingPlan, 'steps' | 'batches'>): void {
  const ends = new Map<SeamId, number>();
  steps.forEach(({ number, runs, batch, work, onto, laidMm2, sculpt }, i) => {
    if (number !== i + 1) throw new Error(`gluing: step ${number} stands at place ${i + 1}`);
    if (work === 'join' && onto === undefined) throw new Error(`gluing: step ${number} joins nothing`);
    if ((work === 'lay') !== (laidMm2 !== undefined)) throw new Error(`gluing: step ${number} lays nothing`);
    if (!(batches[batch - 1]?.steps.includes(number) ?? false)) throw new Error(`gluing: step ${number} in no batch`);
    if (batches[batch - 1].sculpt?.part !== sculpt?.part)
      throw new Error(`gluing: step ${number} in a batch of another`);
    for (const { seam, fromMm, toMm, touch } of runs) {
      if (fromMm !== (ends.get(seam) ?? 0) || !(toMm > fromMm)) throw new Error(`gluing: seam ${seam} out of order`);
      if (!(touch.stationMm >= fromMm && touch.stationMm <= toMm)) throw new Error(`gluing: ${seam} touched elsewhere`);
      ends.set(seam, toMm);
    }
  });
  batches.forEach(({ number, brushedMin, joinFromMin, joinedMin }, i) => {
    if (number !== i + 1) throw new Error(`gluing: batch ${number} stands at place ${i + 1}`);
    if (!(brushedMin >= 0 && joinFromMin >= brushedMin && joinedMin >= joinFromMin))
      throw new Error(`gluing: batch ${number} is joined before it is brushed`);
  });
}
