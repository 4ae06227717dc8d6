import type { PieceId, SeamId } from '../../base/ids.ts';
import type { LooseReason } from '../../model/finish.ts';
import type { GluedBody, GluingStep } from '../../model/gluing.ts';
import type { PaintSkin } from './paint-skin.ts';

/** A piece or unit that is painted before it is glued on. */
export interface LooseBody {
  readonly body: GluedBody;
  /** Number of the step of gluing it comes before. */
  readonly beforeStep: number;
  /** Number of the last step that works on it before; left out for a single piece that is not closed. */
  readonly afterStep?: number;
  readonly why: LooseReason;
}

/** What decides whether a body is painted before it is glued on. */
export interface LooseJob {
  readonly skin: PaintSkin;
  /** Of each piece of the skin. */
  readonly ids: readonly PieceId[];
  readonly steps: readonly GluingStep[];
  /** Seams that are filled with clay: it covers both sides, so that neither can be painted before. */
  readonly filled: ReadonlySet<SeamId>;
  /** Pieces whose face no brush reaches when all is glued. */
  readonly shutIn: ReadonlySet<PieceId>;
}

/**
 * What is painted before it is glued on: the largest bodies the gluing comes by that have one colour all over, and beyond every seam to
 * another body another one, so that the seam is the border and nothing has to match across it; and pieces no brush reaches later. Seams of the body
 * itself that are shut later have one colour on both sides, put on in one go.
 * @returns in the order of the steps they come before; no piece is in two.
 */
export function looseBodies(job: LooseJob): readonly LooseBody[] {
  const taken = new Set<PieceId>();
  const found: LooseBody[] = [];
  const take = (body: GluedBody, beforeStep: number, why: LooseReason): void => {
    if (body.pieces.some((id) => taken.has(id))) return;
    for (const id of body.pieces) taken.add(id);
    const own = job.steps.findLast(
      ({ number, makes }) => number < beforeStep && makes.pieces.every((id) => body.pieces.includes(id)),
    );
    found.push({ body, beforeStep, ...(own === undefined ? {} : { afterStep: own.number }), why });
  };
  for (const { number, work, adds, onto } of job.steps) {
    if (work === 'close') continue;
    for (const body of [adds, ...(onto === undefined ? [] : [onto])])
      for (const piece of body.pieces)
        if (body.pieces.length === 1 && job.shutIn.has(piece)) take(body, number, 'shut-in');
  }
  // From the last step back, so that what is found first is the largest.
  for (const { number, work, adds, onto } of job.steps.toReversed()) {
    if (work === 'close') continue;
    for (const body of [adds, ...(work === 'join' && onto !== undefined ? [onto] : [])])
      if (isApart(job, body)) take(body, number, 'apart');
  }
  return found.sort((a, b) => a.beforeStep - b.beforeStep || (a.body.pieces[0] < b.body.pieces[0] ? -1 : 1));
}

function isApart({ skin, ids, filled }: LooseJob, { pieces }: GluedBody): boolean {
  const own = new Set(pieces);
  const isIn = (t: number): boolean => own.has(ids[skin.pieceOf[t]]);
  let colour: number | null = null;
  for (let t = 0; t < skin.areaMm2.length; t += 1) {
    if (!isIn(t)) continue;
    colour ??= skin.colourOf[t];
    if (skin.colourOf[t] !== colour) return false;
  }
  if (colour === null || colour < 0) return false;
  let hasBorder = false;
  for (const { a, b, joint } of skin.edges) {
    if (isIn(a) === isIn(b)) continue;
    if (skin.colourOf[isIn(a) ? b : a] === colour || (joint !== null && joint !== 'laid' && filled.has(joint)))
      return false;
    hasBorder = true;
  }
  return hasBorder;
}
