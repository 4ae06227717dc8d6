import type { Vec2 } from '../../geom/vec.ts';
import type { ArtFillRule, ArtPath, ArtSegment, ArtStroke } from '../../model/artwork.ts';
import { reversedPath } from './segments.ts';

/** A line of a piece with what it is drawn with. */
export interface PieceLine {
  readonly shape: string;
  /** Lines of one shape have one number. */
  readonly shapeNumber: number;
  readonly path: ArtPath;
  readonly fill: ArtFillRule | null;
  readonly stroke: ArtStroke | null;
}

/** Ends that were joined over a gap. */
export interface JoinedEnds {
  readonly at: Vec2;
  readonly gapMm: number;
  readonly shapes: readonly [string, string];
}

/** Two ends this near are one place: what is left of rounding through transforms, mm. */
export const SAME_PLACE_MM = 1e-6;

interface End {
  readonly line: number;
  readonly isLast: boolean;
  readonly at: Vec2;
}

/**
 * Joins open lines where their ends meet, so that an outline drawn in parts becomes one. Ends at one place are always joined; ends with a gap up to
 * `withinMm` only where that is above 0, by a straight part over the gap. The nearest ends come first and each end is joined once.
 * Filled lines join only with their own shape's.
 * @returns the lines, the closed ones among them closed, and each gap that was bridged.
 */
export function joinEnds(
  lines: readonly PieceLine[],
  withinMm: number,
): { readonly lines: readonly PieceLine[]; readonly joined: readonly JoinedEnds[] } {
  const open = lines.filter(({ path }) => !path.isClosed);
  const reach = Math.max(SAME_PLACE_MM, withinMm);
  const partner = new Map<string, End>();
  const joined: JoinedEnds[] = [];
  for (const { a, b, gap } of nearEnds(open, reach)) {
    if (partner.has(keyOf(a)) || partner.has(keyOf(b))) continue;
    partner.set(keyOf(a), b);
    partner.set(keyOf(b), a);
    if (gap > SAME_PLACE_MM) joined.push({ at: a.at, gapMm: gap, shapes: [open[a.line].shape, open[b.line].shape] });
  }
  const isUsed = new Set<number>();
  const chains: PieceLine[] = [];
  const follow = (first: number): void => {
    // Back to where the chain begins, or once round.
    let [at, isLast] = [first, false];
    for (let i = 0; i <= open.length; i += 1) {
      const before = partner.get(`${at} ${String(isLast)}`);
      if (before === undefined) break;
      [at, isLast] = [before.line, !before.isLast];
      if (at === first && !isLast) break;
    }
    const segments: ArtSegment[] = [];
    let isClosed = false;
    const start = { line: at, isLast };
    for (;;) {
      isUsed.add(at);
      const path = isLast ? reversedPath(open[at].path) : open[at].path;
      append(segments, path.segments);
      const next = partner.get(`${at} ${String(!isLast)}`);
      if (next === undefined) break;
      if (next.line === start.line && next.isLast === start.isLast) {
        isClosed = true;
        break;
      }
      if (isUsed.has(next.line)) break;
      [at, isLast] = [next.line, next.isLast];
    }
    if (isClosed) append(segments, [], segments[0].from);
    chains.push({ ...open[start.line], path: { segments, isClosed } });
  };
  for (let i = 0; i < open.length; i += 1) if (!isUsed.has(i)) follow(i);
  return { lines: [...lines.filter(({ path }) => path.isClosed), ...chains], joined };
}

const keyOf = ({ line, isLast }: End): string => `${line} ${String(isLast)}`;

/** Puts segments behind others; over a gap a straight part, over what is left of rounding none. */
function append(segments: ArtSegment[], more: readonly ArtSegment[], end = more[0]?.from): void {
  const last = segments.at(-1);
  if (last !== undefined) {
    const gap = Math.hypot(end.x - last.to.x, end.y - last.to.y);
    if (gap > SAME_PLACE_MM) segments.push({ kind: 'line', from: last.to, to: end });
    else segments[segments.length - 1] = { ...last, to: end };
  }
  for (const segment of more) segments.push(segment);
}

/** Pairs of ends no farther apart than `reach`, the nearest first. */
function nearEnds(open: readonly PieceLine[], reach: number): { a: End; b: End; gap: number }[] {
  const ends = open.flatMap(({ path }, line): End[] => [
    { line, isLast: false, at: path.segments[0].from },
    { line, isLast: true, at: path.segments[path.segments.length - 1].to },
  ]);
  const cells = new Map<string, number[]>();
  const pairs: { a: End; b: End; gap: number }[] = [];
  for (const [i, b] of ends.entries()) {
    const [column, row] = [Math.floor(b.at.x / reach), Math.floor(b.at.y / reach)];
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        // A knot where very many ends meet is joined from its first few.
        for (const j of (cells.get(`${column + dx} ${row + dy}`) ?? []).slice(0, 64)) {
          const a = ends[j];
          const gap = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);
          if (gap <= reach && mayJoin(open[a.line], open[b.line]) && !isTiny(open, a, b, gap))
            pairs.push({ a, b, gap });
        }
      }
    }
    const key = `${column} ${row}`;
    const list = cells.get(key);
    if (list === undefined) cells.set(key, [i]);
    else list.push(i);
  }
  return pairs.sort((p, q) => p.gap - q.gap || p.a.line - q.a.line || p.b.line - q.b.line);
}

function mayJoin(a: PieceLine, b: PieceLine): boolean {
  return a.shapeNumber === b.shapeNumber || (a.fill === null && b.fill === null);
}

/** A single straight part is never closed on itself. */
const isTiny = (open: readonly PieceLine[], a: End, b: End, gap: number): boolean =>
  a.line === b.line &&
  gap > SAME_PLACE_MM &&
  open[a.line].path.segments.every(({ kind }) => kind === 'line') &&
  open[a.line].path.segments.length < 2;
