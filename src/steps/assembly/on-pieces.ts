import type { Weights } from '../../mesh/lines/mesh-point.ts';
import type { Patch } from '../../model/patch.ts';
import type { SurfaceTrace } from '../../model/trace.ts';

/** A piece as far as lines are laid on it: its patch, and where each of the patch's vertices lies flat, x y, mm. */
export interface FlatGround {
  readonly patch: Pick<Patch, 'meshTriangles' | 'triangles' | 'loops'>;
  readonly uv: Float64Array;
}

/** Where a point of a flat line lies on the piece. */
export interface FlatPlace {
  /** Of the patch. */
  readonly triangle: number;
  readonly weights: Weights;
}

/** What of a trace lies on one piece. */
export interface FlatTrace {
  /** Number of the piece, and of the trace. */
  readonly piece: number;
  readonly trace: number;
  /** A ring within the piece; else it runs from border to border. */
  readonly closed: boolean;
  /** x y per point in the piece's frame, mm. */
  readonly points: Float64Array;
  readonly places: readonly FlatPlace[];
  /** The trace's point each of these is. */
  readonly of: Uint32Array;
}

/** A part of a piece that falls away under holes that reach its border: its own border, then a stretch of the piece's, and so on round. */
export interface FlatNotch {
  readonly piece: number;
  /** Counter-clockwise, x y, mm. */
  readonly ring: Float64Array;
  /** Which of `traces` bound it, in order. */
  readonly traces: readonly number[];
}

export interface TracesOnPieces {
  readonly traces: readonly FlatTrace[];
  /** Where lines run from border to border of a piece, what of it lies on their left. */
  readonly notches: readonly FlatNotch[];
}

/** A run of stretches of a trace on one piece (-1: on none); a ring closes within it. */
interface Run {
  readonly piece: number;
  readonly isRing: boolean;
  readonly stretches: number[];
}

/**
 * Lines on a surface as they lie on its flat pieces: parted where they cross a seam, whole where they do not. Each point keeps its weights in its
 * triangle, so that it comes back to the surface exactly where it was.
 * @param traces  of a surface with the triangles the patches were cut from. Stretches in a triangle that belongs to no piece are left out.
 */
export function tracesOnPieces(traces: readonly SurfaceTrace[], pieces: readonly FlatGround[]): TracesOnPieces {
  const owner = ownersOf(pieces);
  const found: FlatTrace[] = [];
  traces.forEach((trace, number) => {
    for (const run of runsOf(trace, owner, pieces))
      if (run.piece >= 0) found.push(flatTrace(trace, number, run, pieces[run.piece], owner));
  });
  return { traces: found, notches: notchesOf(found, pieces) };
}

/** For each triangle of the mesh its piece (-1: none) and its number there. */
interface Owners {
  readonly piece: Int32Array;
  readonly local: Uint32Array;
}

function ownersOf(pieces: readonly FlatGround[]): Owners {
  const most = pieces.reduce((all, { patch }) => patch.meshTriangles.reduce((a, t) => Math.max(a, t + 1), all), 0);
  const piece = new Int32Array(most).fill(-1);
  const local = new Uint32Array(most);
  pieces.forEach(({ patch }, p) => {
    patch.meshTriangles.forEach((t, i) => {
      piece[t] = p;
      local[t] = i;
    });
  });
  return { piece, local };
}

/** Stretches in a row on one piece, parted where the line crosses a seam: also where both sides of the seam belong to the same piece. */
function runsOf(trace: SurfaceTrace, owner: Owners, pieces: readonly FlatGround[]): Run[] {
  const count = trace.triangles.length;
  const pieceOf = (i: number): number => owner.piece[trace.triangles[i]] ?? -1;
  const isJoined = (i: number, j: number): boolean => {
    const piece = pieceOf(i);
    if (piece !== pieceOf(j)) return false;
    if (piece < 0) return true;
    const { patch } = pieces[piece];
    // The same corners of the patch, not only of the mesh: else a seam runs between.
    const [here, there] = [i, j].map((k) => owner.local[trace.triangles[k]]);
    return namesOf(patch, here, trace.ends[i][1]) === namesOf(patch, there, trace.ends[j][0]);
  };
  const runs: Run[] = [];
  for (let i = 0; i < count; i += 1) {
    if (runs.length > 0 && isJoined(i - 1, i)) runs[runs.length - 1].stretches.push(i);
    else runs.push({ piece: pieceOf(i), isRing: false, stretches: [i] });
  }
  if (!trace.closed || count === 0 || !isJoined(count - 1, 0)) return runs;
  if (runs.length === 1) return [{ ...runs[0], isRing: true }];
  const [first, last] = [runs[0], runs[runs.length - 1]];
  return [{ ...first, stretches: [...last.stretches, ...first.stretches] }, ...runs.slice(1, -1)];
}

/** The corners of the patch that have a share in a place, as one word. */
const namesOf = ({ triangles }: FlatGround['patch'], t: number, weights: Weights): string =>
  [0, 1, 2]
    .filter((k) => weights[k] > 0)
    .map((k) => triangles[3 * t + k])
    .sort((a, b) => a - b)
    .join(' ');

function flatTrace(trace: SurfaceTrace, number: number, run: Run, ground: FlatGround, owner: Owners): FlatTrace {
  const { stretches, isRing, piece } = run;
  const count = trace.points.length;
  const ends = stretches.map((i): [number, 0 | 1] => [i, 0]);
  if (!isRing) ends.push([stretches[stretches.length - 1], 1]);
  const places = ends.map(([i, end]): FlatPlace => ({
    triangle: owner.local[trace.triangles[i]],
    weights: trace.ends[i][end],
  }));
  return {
    piece,
    trace: number,
    closed: isRing,
    points: Float64Array.from(places.flatMap((place) => flatPlace(ground, place))),
    places,
    of: Uint32Array.from(ends, ([i, end]) => (i + end) % count),
  };
}

/** Where a place of a patch lies flat, x y, mm. */
export function flatPlace({ patch, uv }: FlatGround, { triangle, weights }: FlatPlace): [number, number] {
  const at = (axis: number): number =>
    weights.reduce((sum, weight, k) => sum + weight * uv[2 * patch.triangles[3 * triangle + k] + axis], 0);
  return [at(0), at(1)];
}

/** A place on the border of a patch: number of the loop, number of the edge in it and share of the way along that edge, added. */
interface BorderPlace {
  readonly loop: number;
  readonly at: number;
}

/**
 * What falls away of each piece: from the end of a line on along the border, the piece on the left, to where the next line begins, and so on until it
 * closes (K. Weiler and P. Atherton, "Hidden surface removal using polygon area sorting", 1977).
 */
function notchesOf(traces: readonly FlatTrace[], pieces: readonly FlatGround[]): FlatNotch[] {
  const notches: FlatNotch[] = [];
  pieces.forEach((ground, piece) => {
    const lines = traces.flatMap((trace, number) => {
      if (trace.piece !== piece || trace.closed) return [];
      const [from, to] = [trace.places[0], trace.places[trace.places.length - 1]].map((one) =>
        borderPlace(ground, one),
      );
      return from === null || to === null ? [] : [{ number, trace, from, to }];
    });
    const isUsed = new Set<number>();
    for (const first of lines) {
      if (isUsed.has(first.number)) continue;
      const ring: number[] = [];
      const bounds: number[] = [];
      let line = first;
      do {
        isUsed.add(line.number);
        bounds.push(line.number);
        for (const value of line.trace.points) ring.push(value);
        const { loop, at } = line.to;
        const length = ground.patch.loops[loop].length;
        const wayTo = (place: BorderPlace): number => (place.at - at + length) % length;
        const ahead = lines.filter(({ from }) => from.loop === loop);
        if (ahead.length === 0) break;
        const next = ahead.reduce((a, b) => (wayTo(b.from) < wayTo(a.from) ? b : a));
        const vertices = ground.patch.loops[loop];
        for (let step = Math.floor(at) + 1; step < at + wayTo(next.from); step += 1) {
          const v = vertices[step % length];
          ring.push(ground.uv[2 * v], ground.uv[2 * v + 1]);
        }
        line = next;
      } while (!isUsed.has(line.number));
      if (line === first) notches.push({ piece, ring: Float64Array.from(ring), traces: bounds });
    }
  });
  return notches;
}

/** Where on the border a place of a patch lies; null where it does not. */
function borderPlace({ patch }: FlatGround, { triangle, weights }: FlatPlace): BorderPlace | null {
  for (const [loop, vertices] of patch.loops.entries()) {
    for (let i = 0; i < vertices.length; i += 1) {
      const next = vertices[(i + 1) % vertices.length];
      for (let k = 0; k < 3; k += 1) {
        const l = (k + 1) % 3;
        if (weights[k] === 1 && patch.triangles[3 * triangle + k] === vertices[i]) return { loop, at: i };
        if (weights[(k + 2) % 3] > 0 || weights[k] === 0 || weights[l] === 0) continue;
        if (patch.triangles[3 * triangle + k] !== vertices[i] || patch.triangles[3 * triangle + l] !== next) continue;
        return { loop, at: i + weights[l] };
      }
    }
  }
  return null;
}
