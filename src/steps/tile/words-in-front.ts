import { growTurnedBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Drawing, Stroke } from '../../model/template.ts';
import { turnedWordsBox } from './words-box.ts';

/** White round words that stand before lines, mm. */
const WHITE_MM = 0.4;

/** The same drawing with its lines broken off where words stand before them. Filled shapes stay whole. */
export function wordsInFront({ strokes, words }: Drawing): Drawing {
  const boxes = words.map((line) => growTurnedBox(turnedWordsBox(line), WHITE_MM));
  return { strokes: strokes.flatMap((stroke) => brokenAt(stroke, boxes)), words };
}

function brokenAt(stroke: Stroke, boxes: readonly TurnedBox[]): readonly Stroke[] {
  if (stroke.filled === true) return [stroke];
  const { points, closed } = stroke;
  const count = points.length / 2;
  const runs: number[][] = [];
  let isBroken = false;
  for (let i = 0; i < (closed ? count : count - 1); i += 1) {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]];
    const at = (t: number): readonly number[] => [ax + t * (bx - ax), ay + t * (by - ay)];
    const seen = seenSpans(ax, ay, bx, by, boxes);
    if (seen.length !== 1 || seen[0][0] > 0 || seen[0][1] < 1) isBroken = true;
    for (const [from, to] of seen) {
      const last = runs.at(-1);
      const goesOn = from === 0 && last?.at(-2) === ax && last.at(-1) === ay;
      if (goesOn) last.push(...at(to));
      else runs.push([...at(from), ...at(to)]);
    }
  }
  return isBroken ? runs.map((run) => ({ ...stroke, points: Float64Array.from(run), closed: false })) : [stroke];
}

/** Shares of a straight part that no box covers, from its beginning to its end. */
function seenSpans(ax: number, ay: number, bx: number, by: number, boxes: readonly TurnedBox[]) {
  let spans: readonly (readonly [number, number])[] = [[0, 1]];
  for (const box of boxes) {
    const hidden = spanInBox(ax, ay, bx, by, box);
    if (hidden === null) continue;
    spans = spans.flatMap(([from, to]) =>
      [[from, Math.min(to, hidden[0])] as const, [Math.max(from, hidden[1]), to] as const].filter(
        ([low, high]) => high > low,
      ),
    );
  }
  return spans;
}

/** The share of a straight part inside a box (Liang and Barsky's clipping, ACM TOG 3(1), 1984, in the box's axes); null where none is. */
function spanInBox(ax: number, ay: number, bx: number, by: number, box: TurnedBox): readonly [number, number] | null {
  const [c, s] = [Math.cos(box.angleRad), Math.sin(box.angleRad)];
  const [ox, oy] = [ax - box.x, ay - box.y];
  const [dx, dy] = [bx - ax, by - ay];
  let [from, to] = [0, 1];
  for (const [start, step, half] of [
    [c * ox + s * oy, c * dx + s * dy, box.halfWidth],
    [c * oy - s * ox, c * dy - s * dx, box.halfHeight],
  ]) {
    if (step === 0) {
      if (Math.abs(start) > half) return null;
      continue;
    }
    const [t0, t1] = [(-half - start) / step, (half - start) / step].sort((p, q) => p - q);
    from = Math.max(from, t0);
    to = Math.min(to, t1);
  }
  return from < to ? [from, to] : null;
}
