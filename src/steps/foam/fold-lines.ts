import { DisjointSets } from '../../base/disjoint-sets.ts';
import { deg, pointAt2, rad, sub2, type Vec2 } from '../../geom/vec.ts';
import type { PieceFold } from '../../model/foam-piece.ts';
import type { PieceSurface } from './piece-surface.ts';

/** Points of a run that lie this near its chord lie on one line, mm: half a pencil line. */
const ONE_LINE_MM = 0.1;

/** Neighbours whose folds differ by no more than this make one line, degrees. */
const SAME_FOLD_DEG = 2;

interface FoldEdge {
  readonly v: number;
  readonly w: number;
  readonly angleDeg: number;
}

/** In a rolled piece sharp edges that hang together over less than this are its facets' doing and no crease, mm [J]. */
const LEAST_CREASE_MM = 20;

/**
 * The lines along which a piece bends sharply: edges inside it that fold by more than the limit, with runs in a straight line and of one
 * angle joined into one.
 * @param uv flat coordinates, mm.
 * @param isSmooth true for a rolled piece: a short sharp edge by itself is then left to the bend of the foam.
 * @returns in the order of their lowest triangle; the angle is the mean by length.
 */
export function foldLines(
  surface: PieceSurface,
  uv: Float64Array,
  limitDeg: number,
  isSmooth: boolean,
): readonly PieceFold[] {
  const sharp = sharpEdges(surface, rad(limitDeg));
  const edges = isSmooth ? longCreases(sharp, uv) : sharp;
  const at = new Map<number, number[]>();
  edges.forEach(({ v, w }, i) => {
    for (const end of [v, w]) at.set(end, [...(at.get(end) ?? []), i]);
  });
  const used = new Uint8Array(edges.length);
  const folds: PieceFold[] = [];
  edges.forEach((edge, i) => {
    if (used[i] === 1) return;
    used[i] = 1;
    const chain = [edge.v, edge.w];
    const members = [edge];
    for (const isForward of [true, false]) {
      for (;;) {
        const next = nextEdge(chain, members, isForward, edges, at, used, uv);
        if (next < 0) break;
        used[next] = 1;
        const tip = isForward ? chain[chain.length - 1] : chain[0];
        const beyond = edges[next].v === tip ? edges[next].w : edges[next].v;
        if (isForward) chain.push(beyond);
        else chain.unshift(beyond);
        members.push(edges[next]);
      }
    }
    folds.push({
      from: pointAt2(uv, chain[0]),
      to: pointAt2(uv, chain[chain.length - 1]),
      angleDeg: meanAngle(members, uv),
    });
  });
  return folds;
}

function sharpEdges(surface: PieceSurface, limit: number): FoldEdge[] {
  const { across, foldRad, patch } = surface;
  const edges: FoldEdge[] = [];
  for (let h = 0; h < across.length; h += 1) {
    if (across[h] < 0 || across[h] < Math.floor(h / 3) || Math.abs(foldRad[h]) <= limit) continue;
    edges.push({ v: patch.triangles[h], w: patch.triangles[h % 3 === 2 ? h - 2 : h + 1], angleDeg: deg(foldRad[h]) });
  }
  return edges;
}

/** Edges that hang together with others of the same sign over a length worth a line. */
function longCreases(edges: readonly FoldEdge[], uv: Float64Array): FoldEdge[] {
  const groups = new DisjointSets(edges.length);
  const at = new Map<string, number>();
  edges.forEach(({ v, w, angleDeg }, i) => {
    for (const end of [v, w]) {
      const key = `${end} ${angleDeg > 0}`;
      const other = at.get(key);
      if (other === undefined) at.set(key, i);
      else groups.join(other, i);
    }
  });
  const lengths = new Float64Array(edges.length);
  edges.forEach((edge, i) => (lengths[groups.find(i)] += flatLength(edge, uv)));
  return edges.filter((_, i) => lengths[groups.find(i)] >= LEAST_CREASE_MM);
}

const flatLength = ({ v, w }: FoldEdge, uv: Float64Array): number =>
  Math.hypot(uv[2 * w] - uv[2 * v], uv[2 * w + 1] - uv[2 * v + 1]);

function nextEdge(
  chain: readonly number[],
  members: readonly FoldEdge[],
  isForward: boolean,
  edges: readonly FoldEdge[],
  at: ReadonlyMap<number, readonly number[]>,
  used: Uint8Array,
  uv: Float64Array,
): number {
  const tip = isForward ? chain[chain.length - 1] : chain[0];
  const angle = members[0].angleDeg;
  for (const i of at.get(tip) ?? []) {
    if (used[i] === 1 || Math.abs(edges[i].angleDeg - angle) > SAME_FOLD_DEG) continue;
    const beyond = edges[i].v === tip ? edges[i].w : edges[i].v;
    const longer = isForward ? [...chain, beyond] : [beyond, ...chain];
    if (isStraight(longer, uv)) return i;
  }
  return -1;
}

/** All points near the chord of the ends, one after the other along it. */
function isStraight(chain: readonly number[], uv: Float64Array): boolean {
  const from = pointAt2(uv, chain[0]);
  const along = sub2(pointAt2(uv, chain[chain.length - 1]), from);
  const length = Math.hypot(along.x, along.y);
  if (length === 0) return false;
  let last = 0;
  for (const v of chain.slice(1)) {
    const d: Vec2 = sub2(pointAt2(uv, v), from);
    const station = (d.x * along.x + d.y * along.y) / length;
    const aside = Math.abs(d.x * along.y - d.y * along.x) / length;
    if (aside > ONE_LINE_MM || station <= last) return false;
    last = station;
  }
  return true;
}

function meanAngle(members: readonly FoldEdge[], uv: Float64Array): number {
  let [sum, whole] = [0, 0];
  for (const member of members) {
    const length = flatLength(member, uv);
    sum += length * member.angleDeg;
    whole += length;
  }
  return whole > 0 ? sum / whole : members[0].angleDeg;
}
