import { grownRegions, coveredRegions, type Region } from '../../geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import { cornersOf } from '../../geom/turned-box.ts';
import type { Drawing, Stroke } from '../../model/template.ts';
import { turnedWordsBox } from './words-box.ts';

/** Half the width that a line takes, mm: its ink, and white on both sides. */
const LINE_MM = 0.4;

/** Round all that is drawn, one outline for each part that hangs together, largest first, counter-clockwise, without holes, mm. */
export function drawnOutlines({ strokes, words }: Drawing): readonly Ring[] {
  const rings = [
    ...strokes.flatMap(takenBy),
    ...words.map((line) => Float64Array.from(cornersOf(turnedWordsBox(line)).flatMap(({ x, y }) => [x, y]))),
  ];
  const all = coveredRegions(rings.map(counterClockwise)).map(({ outer }) => outer);
  // What lies in the hole of another is taken with it.
  return coveredRegions(all).map(({ outer }: Region) => outer);
}

/** The same as one outline: parts are joined to the largest by thin bridges. */
export function drawnOutline(drawing: Drawing): Ring {
  let parts = drawnOutlines(drawing);
  while (parts.length > 1) {
    const [largest, ...others] = parts;
    parts = coveredRegions([largest, ...others, ...others.map((part) => bridge(largest, part))]).map(
      ({ outer }) => outer,
    );
  }
  return parts[0];
}

/** Every straight part of an open line as a thin strip; a closed one as what it encloses, which is cut out whole. */
function takenBy({ points, closed, filled }: Stroke): readonly Ring[] {
  if (points.length < 4) return [];
  if ((closed || filled === true) && points.length >= 6) return [points];
  const strips: Ring[] = [];
  for (let i = 0; i + 3 < points.length; i += 2) {
    const strip = stripAlong(points[i], points[i + 1], points[i + 2], points[i + 3]);
    if (strip !== null) strips.push(strip);
  }
  return strips;
}

function stripAlong(ax: number, ay: number, bx: number, by: number): Ring | null {
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return null;
  const [ux, uy] = [((bx - ax) / length) * LINE_MM, ((by - ay) / length) * LINE_MM];
  const [sx, sy, tx, ty] = [ax - ux, ay - uy, bx + ux, by + uy];
  return Float64Array.of(sx + uy, sy - ux, tx + uy, ty - ux, tx - uy, ty + ux, sx - uy, sy + ux);
}

/** A strip between the nearest corners of two outlines. */
function bridge(a: Ring, b: Ring): Ring {
  let [best, from, to] = [Infinity, 0, 0];
  for (let i = 0; i < a.length; i += 2) {
    for (let j = 0; j < b.length; j += 2) {
      const away = Math.hypot(a[i] - b[j], a[i + 1] - b[j + 1]);
      if (away < best) [best, from, to] = [away, i, j];
    }
  }
  const strip = stripAlong(a[from], a[from + 1], b[to], b[to + 1]);
  // Parts that touch in a corner hang together once they are a little larger.
  return strip ?? grownRegions([b], LINE_MM)[0].outer;
}

function counterClockwise(ring: Ring): Ring {
  if (ringArea(ring) >= 0) return ring;
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    turned[i] = ring[ring.length - 2 - i];
    turned[i + 1] = ring[ring.length - 1 - i];
  }
  return turned;
}
