import { scale2, sub2, type Vec2 } from '../../geom/vec.ts';
import type { ArtPath, ArtSegment } from '../../model/artwork.ts';
import { arcBetween } from '../../geom/outline.ts';
import { circleRadius, onEllipse } from './segments.ts';

/** A symmetry of an outline: turns into itself `fold` times round a centre, mirrors itself in an axis through it, or both. */
export interface Symmetry {
  readonly centre: Vec2;
  /** Times it comes into itself in a whole turn; 1 where it does not. */
  readonly fold: number;
  /** Direction of a mirror axis through the centre, radians, 0 to pi; null where it has none. */
  readonly axisRad: number | null;
  /** How far a place of the outline is moved at most to make it so, mm. */
  readonly deviationMm: number;
}

/** `path`: exactly symmetric; as it was where nothing is found within the limit. `nearest`: what is nearest to one then. */
export type Symmetrised =
  | { readonly path: ArtPath; readonly made: Symmetry }
  | { readonly path: ArtPath; readonly made: null; readonly nearest: Symmetry | null };

/** Fewest and most parts of an outline that is looked at. */
const FEWEST_PARTS = 2;
const MOST_PARTS = 2000;
/** What is nearer than this is exact already, mm. */
const EXACT_MM = 1e-9;
/** A symmetry that is farther off than this share of the outline's size is none. */
const FARTHEST_SHARE = 0.1;

/** Corners and handles of a closed line in their order: what a symmetry maps onto each other. */
interface Points {
  readonly kinds: readonly ArtSegment['kind'][];
  /** For each part its beginning and then its handles, or the middle of its arc. */
  readonly parts: readonly (readonly Vec2[])[];
}

/**
 * Makes a closed outline exactly symmetric where it nearly is. Its parts are held against themselves, so many on (turned) or in the other direction (mirrored);
 * the centre is the mean of all corners and handles and the axis the one of least squares (for points in pairs: K. S. Arun, T. S. Huang and S. D. Blostein,
 * "Least-squares fitting of two 3-D point sets", 1987), and points that belong together become their mean. Of turns the one with the most repeats counts.
 * A curve moves by no more than its handles. Lines with arcs of ellipses stay as they are.
 * @param limitMm  farthest that a place may be moved, > 0.
 */
export function symmetrise(path: ArtPath, limitMm: number): Symmetrised {
  const count = path.segments.length;
  const given = path.isClosed && count >= FEWEST_PARTS && count <= MOST_PARTS ? pointsOf(path) : null;
  if (given === null) return { path, made: null, nearest: null };
  const centre = meanOf(given.parts.flat());
  const [turns, mirrors] = [turned(given, centre), mirrored(given, centre)];
  const turn = turns.filter((one) => one.off <= limitMm).sort((a, b) => b.fold - a.fold || a.off - b.off)[0] ?? null;
  const first = turn === null ? given : turn.points;
  // Of what turns, the mirror is looked for again: the mean of two such is one too.
  const mirror =
    (turn === null ? mirrors : mirrored(first, centre))
      .map((one) => ({ ...one, off: farthest(given, one.points) }))
      .filter((one) => one.off <= limitMm)
      .sort((a, b) => a.off - b.off)[0] ?? null;
  const points = mirror?.points ?? turn?.points;
  if (points === undefined) {
    const near = [...turns, ...mirrors].sort((a, b) => a.off - b.off)[0];
    const size = Math.max(...given.parts.flat().map((p) => length(sub2(p, centre))));
    const isNear = near !== undefined && near.off <= FARTHEST_SHARE * size;
    return { path, made: null, nearest: isNear ? symmetryOf(centre, near) : null };
  }
  const deviationMm = farthest(given, points);
  const made = { centre, fold: turn?.fold ?? 1, axisRad: mirror?.axisRad ?? null, deviationMm };
  return { path: deviationMm <= EXACT_MM ? path : pathOf(points), made };
}

interface Candidate {
  readonly points: Points;
  readonly fold: number;
  readonly axisRad: number | null;
  readonly off: number;
}

const symmetryOf = (centre: Vec2, { fold, axisRad, off }: Candidate): Symmetry => ({
  centre,
  fold,
  axisRad,
  deviationMm: off,
});

const plus = (a: Vec2, b: Vec2): Vec2 => ({ x: a.x + b.x, y: a.y + b.y });

const length = ({ x, y }: Vec2): number => Math.hypot(x, y);

const meanOf = (points: readonly Vec2[]): Vec2 =>
  scale2(
    points.reduce((sum, p) => plus(sum, p), { x: 0, y: 0 }),
    1 / points.length,
  );

/** Every number of repeats that the parts allow. */
function turned({ kinds, parts }: Points, centre: Vec2): Candidate[] {
  const n = parts.length;
  const found: Candidate[] = [];
  for (let fold = 2; fold <= n; fold += 1) {
    const shift = n / fold;
    if (!Number.isInteger(shift) || !kinds.every((kind, i) => kind === kinds[(i + shift) % n])) continue;
    let [dot, cross] = [0, 0];
    parts.forEach((own, i) => {
      own.forEach((p, k) => {
        const [a, b] = [sub2(p, centre), sub2(parts[(i + shift) % n][k], centre)];
        dot += a.x * b.x + a.y * b.y;
        cross += a.x * b.y - a.y * b.x;
      });
    });
    const steps = Math.round((Math.atan2(cross, dot) * fold) / (2 * Math.PI));
    if (commonDivisor(Math.abs(steps), fold) !== 1) continue;
    const by = (times: number, p: Vec2): Vec2 => {
      const angle = (2 * Math.PI * ((((times * steps) % fold) + fold) % fold)) / fold;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      return { x: c * p.x - s * p.y, y: s * p.x + c * p.y };
    };
    const means = parts
      .slice(0, shift)
      .map((own, i) =>
        own.map((_, k) =>
          meanOf(Array.from({ length: fold }, (__, m) => by(-m, sub2(parts[i + m * shift][k], centre)))),
        ),
      );
    const points = {
      kinds,
      parts: parts.map((own, i) => own.map((_, k) => plus(centre, by(Math.floor(i / shift), means[i % shift][k])))),
    };
    found.push({ points, fold, axisRad: null, off: farthest({ kinds, parts }, points) });
  }
  return found;
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Every way in which the parts can run back over themselves. */
function mirrored({ kinds, parts }: Points, centre: Vec2): Candidate[] {
  const n = parts.length;
  const found: Candidate[] = [];
  for (let first = 0; first < n; first += 1) {
    const other = (i: number): number => (first - i + 2 * n) % n;
    if (!kinds.every((kind, i) => kind === kinds[other(i)])) continue;
    // A part's beginning lies where the other one ends; its handles in the other's order.
    const twin = (i: number, k: number): Vec2 => {
      if (k === 0) return parts[(other(i) + 1) % n][0];
      const there = parts[other(i)];
      return there[there.length - k];
    };
    let [x, y] = [0, 0];
    parts.forEach((own, i) => {
      own.forEach((p, k) => {
        const [a, b] = [sub2(p, centre), sub2(twin(i, k), centre)];
        x += a.x * b.x - a.y * b.y;
        y += a.x * b.y + a.y * b.x;
      });
    });
    const size = Math.hypot(x, y);
    if (size === 0) continue;
    const [c, s] = [x / size, y / size];
    const points = {
      kinds,
      parts: parts.map((own, i) =>
        own.map((p, k) => {
          const q = sub2(twin(i, k), centre);
          const image = plus(centre, { x: c * q.x + s * q.y, y: s * q.x - c * q.y });
          return scale2(plus(p, image), 0.5);
        }),
      ),
    };
    const axis = Math.atan2(s, c) / 2;
    const axisRad = axis < 0 ? axis + Math.PI : axis;
    found.push({ points, fold: 1, axisRad, off: farthest({ kinds, parts }, points) });
  }
  return found;
}

/** How far two lines of the same parts are apart at most: a curve moves by a mean of what its handles do. */
const farthest = (a: Points, b: Points): number =>
  a.parts.reduce(
    (most, own, i) => own.reduce((worst, p, k) => Math.max(worst, length(sub2(p, b.parts[i][k]))), most),
    0,
  );

/** Null where a part is an arc of an ellipse. */
function pointsOf({ segments }: ArtPath): Points | null {
  const parts: Vec2[][] = [];
  for (const one of segments) {
    if (one.kind === 'line') parts.push([one.from]);
    else if (one.kind === 'cubic') parts.push([one.from, ...one.handles]);
    else {
      if (circleRadius(one) === null || Math.abs(one.turn) > MOST_TURN) return null;
      parts.push([one.from, onEllipse(one, one.start + one.turn / 2)]);
    }
  }
  return { kinds: segments.map(({ kind }) => kind), parts };
}

/** An arc that goes on so far is not told by its ends and its middle, radians. */
const MOST_TURN = 6;

function pathOf({ kinds, parts }: Points): ArtPath {
  const segments = parts.map((own, i): ArtSegment => {
    const [from, a, b] = own as [Vec2, Vec2, Vec2];
    const to = parts[(i + 1) % parts.length][0];
    if (kinds[i] === 'line') return { kind: 'line', from, to };
    if (kinds[i] === 'cubic') return { kind: 'cubic', from, handles: [a, b], to };
    return throughMiddle(from, a, to);
  });
  return { segments, isClosed: true };
}

/** The arc through three places: it turns by four times the angle between the chord and the way to its middle. */
function throughMiddle(from: Vec2, middle: Vec2, to: Vec2): ArtSegment {
  const [chord, half] = [sub2(to, from), sub2(middle, from)];
  const cross = half.x * chord.y - half.y * chord.x;
  const turn = 4 * Math.atan2(cross, half.x * chord.x + half.y * chord.y);
  if (turn === 0) return { kind: 'line', from, to };
  const { centre, radius } = arcBetween(from, to, turn);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  return { kind: 'arc', from, to, centre, u: { x: radius, y: 0 }, v: { x: 0, y: radius }, start, turn };
}
