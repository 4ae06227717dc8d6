import type { Ring } from './ring.ts';
import type { Vec2 } from './vec.ts';

/**
 * Longest corner, in offsets: a tip sharper than about 14 degrees is cut off square instead of running out into a spike.
 * The same bound as that of a vertex moved by its planes, so flat and solid corners are blunted alike.
 */
export const LONGEST_MITER = 8;

/**
 * Corners that turn by less than this get a step instead where they would slide along an edge by more than its length, or by more than so
 * many offsets, radians: where bent pieces meet, lines nearly in one are not known well enough to tell where they cross. On the helm's brow
 * in 6 mm such a corner slid 5.3 mm, with 0.2 mm between the lines.
 */
const SHALLOW_CORNER_RAD = Math.PI / 6;
const LONGEST_SLIDE = 4;

/** Offsets of two neighbours that differ by less than this are one, mm: what is left of rounding, far under the grid of 0.1 µm. */
const SAME_OFFSET_MM = 1e-9;

/** Distances outward from each edge of a ring at its two ends, mm; negative is inward. Edge `i` runs from point `i` to the next. */
export interface EdgeOffsets {
  readonly atStart: Float64Array;
  readonly atEnd: Float64Array;
}

export interface OffsetRing {
  /** May cross itself where the offset is larger than the ring has room for. */
  readonly ring: Ring;
  /** For each edge of the source the points of `ring` it begins and ends with. Between the end of one edge and the start of the next there may be a step. */
  readonly startOf: Uint32Array;
  readonly endOf: Uint32Array;
  /** Direction outward at each point of `ring`, the sum of the normals of the edges that meet there. */
  readonly outward: Float64Array;
}

/**
 * Moves every edge of a ring by its own distance and lets neighbours meet again:
 *
 *        -------+  <- the two moved lines meet here: n1 . v = o1 and n2 . v = o2
 *      o1|     /
 *     ---P    / o2          v = m (n1 + n2) / (1 + c) + d (n1 - n2) / (1 - c)
 *         \  /              m, d half sum and half difference of o1 and o2, c = n1 . n2
 *
 * Where nothing is moved the corner is the source's own to the last bit. Where the lines do not meet within {@link LONGEST_MITER}
 * (spikes, and a change of offset along a straight line) the two moved edge ends are joined straight.
 * @param given  points that stand at a corner instead of where its edges meet, by place on the ring: at least one each.
 * @param ring outer rings counter-clockwise, holes clockwise: outward is to the right of the way in both. At least two points.
 */
export function offsetRing(
  ring: Ring,
  offsets: EdgeOffsets,
  given: ReadonlyMap<number, readonly Vec2[]> = new Map(),
): OffsetRing {
  const count = ring.length / 2;
  const { normals, lengths } = edgeNormals(ring);
  const points: number[] = [];
  const outward: number[] = [];
  const startOf = new Uint32Array(count);
  const endOf = new Uint32Array(count);
  for (let i = 0; i < count; i += 1) {
    const before = (i + count - 1) % count;
    const [x, y] = [ring[2 * i], ring[2 * i + 1]];
    const n1 = { x: normals[2 * before], y: normals[2 * before + 1] };
    const n2 = { x: normals[2 * i], y: normals[2 * i + 1] };
    const [o1, o2] = [offsets.atEnd[before], offsets.atStart[i]];
    const known = given.get(i);
    const corner = known === undefined ? cornerMove(n1, n2, o1, o2, lengths[before], lengths[i]) : null;
    endOf[before] = points.length / 2;
    if (known !== undefined) {
      for (const point of known) {
        points.push(point.x, point.y);
        outward.push(n1.x + n2.x, n1.y + n2.y);
      }
      startOf[i] = points.length / 2 - 1;
    } else if (corner === null) {
      points.push(x + o1 * n1.x, y + o1 * n1.y);
      outward.push(n1.x, n1.y);
      startOf[i] = points.length / 2;
      points.push(x + o2 * n2.x, y + o2 * n2.y);
      outward.push(n2.x, n2.y);
    } else {
      startOf[i] = points.length / 2;
      points.push(x + corner.x, y + corner.y);
      outward.push(n1.x + n2.x, n1.y + n2.y);
    }
  }
  return { ring: Float64Array.from(points), startOf, endOf, outward: Float64Array.from(outward) };
}

/** Outward normal of each edge, length 1; an edge without length takes the normal of the one before it. */
export function edgeNormals(ring: Ring): { normals: Float64Array; lengths: Float64Array } {
  const count = ring.length / 2;
  const normals = new Float64Array(2 * count);
  const lengths = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const [dx, dy] = [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
    const length = Math.hypot(dx, dy);
    lengths[i] = length;
    if (length > 0) {
      normals[2 * i] = dy / length;
      normals[2 * i + 1] = -dx / length;
    }
  }
  for (let k = 0; k < 2 * count; k += 1) {
    const i = k % count;
    const before = (i + count - 1) % count;
    if (lengths[i] > 0) continue;
    normals[2 * i] = normals[2 * before];
    normals[2 * i + 1] = normals[2 * before + 1];
  }
  return { normals, lengths };
}

interface Direction {
  readonly x: number;
  readonly y: number;
}

function cornerMove(
  n1: Direction,
  n2: Direction,
  o1: number,
  o2: number,
  length1: number,
  length2: number,
): Direction | null {
  if (o1 === 0 && o2 === 0) return { x: 0, y: 0 };
  const c = n1.x * n2.x + n1.y * n2.y;
  const mean = (o1 + o2) / 2;
  const half = Math.abs(o1 - o2) < SAME_OFFSET_MM ? 0 : (o1 - o2) / 2;
  const s = n1.x * n2.y - n1.y * n2.x;
  // 1 + c and 1 - c by way of the sine where they would cancel.
  const along = c > 0 ? mean / (1 + c) : (mean * (1 - c)) / (s * s);
  const across = half === 0 ? 0 : c > 0 ? (half * (1 + c)) / (s * s) : half / (1 - c);
  const move = {
    x: along * (n1.x + n2.x) + across * (n1.x - n2.x),
    y: along * (n1.y + n2.y) + across * (n1.y - n2.y),
  };
  const reach = Math.hypot(move.x, move.y);
  if (!(reach <= LONGEST_MITER * Math.max(Math.abs(o1), Math.abs(o2)))) return null;
  if (half !== 0 && Math.abs(Math.atan2(s, c)) < SHALLOW_CORNER_RAD) {
    const slide1 = Math.abs(n1.x * move.y - n1.y * move.x);
    const slide2 = Math.abs(n2.x * move.y - n2.y * move.x);
    const longest = LONGEST_SLIDE * Math.max(Math.abs(o1), Math.abs(o2));
    if (slide1 > Math.min(length1, longest) || slide2 > Math.min(length2, longest)) return null;
  }
  return move;
}
