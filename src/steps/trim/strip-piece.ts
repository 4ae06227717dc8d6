import { chainSweep } from '../../geom/outline.ts';
import { isFlatEnough } from './strip-words.ts';
import type { PlainDraft, PlainLine } from '../../model/plain-piece.ts';
import type { StripFacts, TrimEnd, TrimWish } from '../../model/trim.ts';
import type { TrimSection } from './profile.ts';
import { onStrip, stripOutline, type OutlineEnd } from './strip-outline.ts';
import type { StretchEnd, StripStretch } from './strip-stretches.ts';

/** Length of a match mark in from the edge, mm, at most a quarter of the width. */
export const MARK_MM = 5;

/** Half a mitre leans no farther than this, radians: beyond it would be longer than it is wide by far. */
const MOST_LEAN = 1.2;

function outlineEnd(kind: StretchEnd, wish: TrimEnd): OutlineEnd {
  const plain = { straightMm: kind.straightMm, leanRad: 0, pointMm: 0 };
  const lean = (turn: number): number => Math.max(-MOST_LEAN, Math.min(MOST_LEAN, -turn / 2));
  if (kind.kind === 'corner') return { ...plain, leanRad: lean(kind.turnRad) };
  if (kind.kind === 'joint' || wish.kind === 'square') return plain;
  if (wish.kind === 'pointed') return { ...plain, pointMm: wish.lengthMm };
  return { ...plain, leanRad: lean((wish.turnDeg * Math.PI) / 180) };
}

/** The flat piece of a strip. @param marksAt ways along the line followed at which it has match marks. */
export function stripPiece(
  stretch: StripStretch,
  sides: { readonly leftMm: number; readonly rightMm: number },
  section: TrimSection,
  wish: Omit<TrimWish, 'along'>,
  facts: StripFacts,
  name: string,
  marksAt: readonly number[],
  notes: readonly string[],
): PlainDraft {
  const { centre, fromMm, toMm } = stretch;
  const outline = stripOutline(centre, fromMm, toMm, {
    ...sides,
    start: outlineEnd(stretch.before, wish.start),
    end: outlineEnd(stretch.after, wish.end),
    leftBevelDeg: section.leftBevelDeg,
    rightBevelDeg: section.rightBevelDeg,
  });
  const tick = Math.min(MARK_MM, (sides.leftMm + sides.rightMm) / 4);
  const mark = (way: number, from: number, to: number): PlainLine => {
    const [a, b] = [onStrip(centre, fromMm, toMm, way, from), onStrip(centre, fromMm, toMm, way, to)];
    return { role: 'mark', points: Float64Array.from([a.x, a.y, b.x, b.y]), closed: false };
  };
  const lines = marksAt.flatMap((way) => [
    mark(way, sides.leftMm, sides.leftMm - tick),
    mark(way, -sides.rightMm, -sides.rightMm + tick),
  ]);
  return {
    key: facts.key,
    name,
    quantity: 1,
    thicknessMm: wish.thicknessMm,
    drawnAt: isFlatEnough(facts) ? 1 : wish.neutralFraction,
    outline,
    holes: [],
    bend: isFlatEnough(facts) ? { kind: 'flat' } : { kind: 'rolled', leastRadiusMm: facts.leastBendRadiusMm },
    lines,
    notes,
    areaMm2: chainSweep(outline.flatMap(({ segments }) => segments)),
  };
}
