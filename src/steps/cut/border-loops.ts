import { nextHalfedge, prevHalfedge } from '../../mesh/topology.ts';

/** What the borders of a patch are read from. */
export interface BorderGround {
  /** Triangles of the mesh that the patch is made of. */
  readonly list: readonly number[];
  /** Half-edge of the mesh across each one, -1 at the border of a patch. */
  readonly joined: Int32Array;
  /** Local vertex in the patch, per half-edge of the mesh. */
  readonly localOfHalfedge: Uint32Array;
  /** Vertex of the mesh, per local vertex. */
  readonly meshVertices: Uint32Array;
  /** The surface that is measured, x y z per vertex of the mesh, mm. */
  readonly positions: Float64Array;
}

interface Border {
  readonly loop: Uint32Array;
  readonly lengthMm: number;
}

/** Borders whose turns differ by less than this may either be the outer one, and the longest of them is, radians [shop judgement]. */
const SAME_TURN_RAD = 1;

/**
 * Borders of a patch as loops of local vertices with the patch on their left: the outer one, then the others, longest first; equal lengths by
 * lowest vertex. The outer one is that which turns most to the left: laid flat it goes once round, and a hole once the other way. Its length tells
 * nothing, for a slit that winds about inside a piece may be longer than all its edge.
 */
export function borderLoops(ground: BorderGround): Uint32Array[] {
  const borders = bordersOf(ground).sort((a, b) => b.lengthMm - a.lengthMm || a.loop[0] - b.loop[0]);
  if (borders.length > 1) {
    const turns = turnsOf(borders, ground);
    const most = Math.max(...turns);
    const outer = turns.findIndex((turn) => turn > most - SAME_TURN_RAD);
    borders.unshift(...borders.splice(Math.max(0, outer), 1));
  }
  return borders.map(({ loop }) => loop);
}

function bordersOf({ list, joined, localOfHalfedge, meshVertices, positions }: BorderGround): Border[] {
  const leaving = new Map<number, number>();
  for (const t of list) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      if (joined[h] < 0) leaving.set(localOfHalfedge[h], localOfHalfedge[nextHalfedge(h)]);
    }
  }
  const borders: Border[] = [];
  for (const start of [...leaving.keys()].sort((a, b) => a - b)) {
    if (!leaving.has(start)) continue;
    const loop: number[] = [];
    let lengthMm = 0;
    for (let v: number | undefined = start; v !== undefined;) {
      const next = leaving.get(v);
      if (next === undefined) break;
      leaving.delete(v);
      loop.push(v);
      lengthMm += Math.hypot(...between(positions, meshVertices[v], meshVertices[next]));
      v = next;
    }
    borders.push({ loop: Uint32Array.from(loop), lengthMm });
  }
  return borders;
}

/** How far each border turns to the left on its way round, as the patch's own angles tell, radians. */
function turnsOf(borders: readonly Border[], { list, localOfHalfedge, positions, ...ground }: BorderGround): number[] {
  const borderOf = new Map<number, number>();
  borders.forEach(({ loop }, i) => {
    for (const v of loop) borderOf.set(v, i);
  });
  const turns = borders.map(({ loop }) => loop.length * Math.PI);
  for (const t of list) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const border = borderOf.get(localOfHalfedge[h]);
      if (border === undefined) continue;
      const [at, next, before] = [h, nextHalfedge(h), prevHalfedge(h)].map(
        (corner) => ground.meshVertices[localOfHalfedge[corner]],
      );
      turns[border] -= angleBetween(between(positions, at, next), between(positions, at, before));
    }
  }
  return turns;
}

type Way = readonly [number, number, number];

const between = (positions: Float64Array, v: number, w: number): Way => [
  positions[3 * w] - positions[3 * v],
  positions[3 * w + 1] - positions[3 * v + 1],
  positions[3 * w + 2] - positions[3 * v + 2],
];

function angleBetween([ax, ay, az]: Way, [bx, by, bz]: Way): number {
  const across = Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
  return Math.atan2(across, ax * bx + ay * by + az * bz);
}
