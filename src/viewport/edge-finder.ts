import { distanceToSegment } from '../geom/distance-to-segment.ts';
import type { Matrix4 } from 'three';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';
import type { SculptIndex } from './sculpt-index.ts';

/** A point of the picture, CSS px from its upper left corner. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

/** Triangles looked at round the pointer at most: where more crowd there, edges are under a pixel long. */
const MOST_TRIANGLES = 400;

/** Takes points of the scene to CSS px. */
export class Projection {
  readonly #m: readonly number[];
  readonly #width: number;
  readonly #height: number;

  /** @param clipFromScene projection times view. */
  constructor(clipFromScene: Matrix4, widthPx: number, heightPx: number) {
    this.#m = clipFromScene.elements;
    this.#width = widthPx;
    this.#height = heightPx;
  }

  /** Where point `i` of packed xyz is seen; null behind the eye. */
  at(points: ArrayLike<number>, i: number): ScreenPoint | null {
    const m = this.#m;
    const [x, y, z] = [points[3 * i], points[3 * i + 1], points[3 * i + 2]];
    const w = m[3] * x + m[7] * y + m[11] * z + m[15];
    if (w <= 0) return null;
    return {
      x: ((m[0] * x + m[4] * y + m[8] * z + m[12]) / w + 1) * 0.5 * this.#width,
      y: (1 - (m[1] * x + m[5] * y + m[9] * z + m[13]) / w) * 0.5 * this.#height,
    };
  }
}

/**
 * The edge nearest to the pointer on the screen, searched outwards from the triangle under it over triangles that face the same way.
 * @param corners    packed xyz per corner as drawn.
 * @param isAllowed  which edges of the topology count.
 * @param isReached  which triangles may be walked over: those of the same piece when pieces are apart.
 * @returns null when none comes within `reachPx`.
 */
export function nearestEdge(
  pointer: ScreenPoint,
  triangle: number,
  corners: ArrayLike<number>,
  triangles: Uint32Array,
  index: SculptIndex,
  projection: Projection,
  reachPx: number,
  isAllowed: (edge: number) => boolean,
  isReached: (triangle: number) => boolean,
): { edge: number; halfedge: number } | null {
  const queue = [triangle];
  const isQueued = new Set(queue);
  let found: { edge: number; halfedge: number } | null = null;
  let nearest = reachPx;
  let facing = 0;
  for (let i = 0; i < queue.length && i < MOST_TRIANGLES; i += 1) {
    const c = 3 * queue[i];
    const seen = [projection.at(corners, c), projection.at(corners, c + 1), projection.at(corners, c + 2)];
    const [p, q, r] = seen;
    if (p === null || q === null || r === null) continue;
    const turn = Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
    if (i === 0) facing = turn;
    else if (turn !== facing) continue;
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [seen[k], seen[(k + 1) % 3]];
      if (a === null || b === null) continue;
      const away = distanceToSegment(pointer.x, pointer.y, a.x, a.y, b.x, b.y);
      if (away >= reachPx) continue;
      const edge = index.edgeOfHalfedge[c + k];
      if (edge >= 0 && away < nearest && isAllowed(edge)) {
        nearest = away;
        found = { edge, halfedge: c + k };
      }
      for (const v of [triangles[c + k], triangles[cornerAfter(c + k)]]) {
        for (let j = index.around.starts[v]; j < index.around.starts[v + 1]; j += 1) {
          const t = Math.floor(index.around.corners[j] / 3);
          if (isQueued.has(t) || !isReached(t)) continue;
          isQueued.add(t);
          queue.push(t);
        }
      }
    }
  }
  return found;
}
