import type { Vec2 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { prevHalfedge, triangleOfHalfedge } from '../topology.ts';
import { flatCorners, type Heading } from './heading.ts';
import { halfedgeIn } from './mesh-point.ts';
import type { MeshPoint } from './mesh-line.ts';
import { sideShapesOf } from './side-shapes.ts';

/** One triangle's part of the round about a point: from a direction in the triangle laid flat, counter-clockwise over an angle, radians. */
interface Part {
  readonly triangle: number;
  readonly from: Vec2;
  readonly angle: number;
}

/** All directions about a point, counter-clockwise seen from outside. An open one begins and ends at open edges. */
export interface Round {
  readonly parts: readonly Part[];
  /** Sum of the angles, radians: a full turn inside a triangle and on an edge, less on a summit, more on a saddle. */
  readonly total: number;
  readonly isOpen: boolean;
}

/** The round about a point. @param triangle  one that holds the point: at a corner where several surfaces meet it says which. */
export function roundAt(surface: Surface, p: MeshPoint, triangle: number): Round {
  if (p.at === 'triangle') return roundOf([{ triangle, from: { x: 1, y: 0 }, angle: 2 * Math.PI }], false);
  if (p.at === 'edge') {
    const h = halfedgeIn(surface, triangle, p.edge);
    const across = surface.topology.twin[h];
    const half = (side: number): Part => ({
      triangle: triangleOfHalfedge(side),
      from: alongSide(surface, side),
      angle: Math.PI,
    });
    return across < 0 ? roundOf([half(h)], true) : roundOf([half(h), half(across)], false);
  }
  return roundAtVertex(surface, p.vertex, triangle);
}

function roundAtVertex(surface: Surface, v: number, triangle: number): Round {
  const { topology, triangles } = surface;
  const { angle } = sideShapesOf(surface);
  let first = 3 * triangle;
  while (triangles[first] !== v) first += 1;
  // Back, clockwise, to the open edge where there is one.
  let start = first;
  let isOpen = false;
  for (;;) {
    const across = topology.twin[start];
    isOpen = across < 0;
    if (isOpen) break;
    start = across % 3 === 2 ? across - 2 : across + 1;
    if (start === first) break;
  }
  const parts: Part[] = [];
  for (let h = start; ;) {
    parts.push({ triangle: triangleOfHalfedge(h), from: alongSide(surface, h), angle: angle[h] });
    const next = topology.twin[prevHalfedge(h)];
    if (next < 0 || next === start) break;
    h = next;
  }
  return roundOf(parts, isOpen);
}

const roundOf = (parts: readonly Part[], isOpen: boolean): Round => ({
  parts,
  total: parts.reduce((sum, part) => sum + part.angle, 0),
  isOpen,
});

/** How far round a heading stands, radians from the start of the round, 0 to its total. The heading is in one of the round's triangles. */
export function angleInRound(round: Round, { triangle, x, y }: Heading): number {
  let before = 0;
  for (const { triangle: t, from, angle } of round.parts) {
    if (t !== triangle) {
      before += angle;
      continue;
    }
    const turn = Math.atan2(from.x * y - from.y * x, from.x * x + from.y * y);
    // Rounding may put a direction along a side a shade before it; inside a triangle the turn goes all the way round.
    const onward = turn < 0 && angle > Math.PI ? turn + 2 * Math.PI : turn < -Math.PI / 2 ? angle : Math.max(0, turn);
    return before + Math.min(angle, onward);
  }
  throw new RangeError('round: the heading is not in it');
}

/** The heading so far round, radians; beyond the ends of an open round, the end, and round again in a closed one. */
export function headingInRound({ parts, total, isOpen }: Round, angle: number): Heading {
  let rest = isOpen ? Math.min(total, Math.max(0, angle)) : ((angle % total) + total) % total;
  let i = 0;
  for (; i + 1 < parts.length && rest > parts[i].angle; i += 1) rest -= parts[i].angle;
  const { triangle, from } = parts[i];
  const [c, s] = [Math.cos(rest), Math.sin(rest)];
  return { triangle, x: c * from.x - s * from.y, y: s * from.x + c * from.y };
}

/** Direction of a half-edge in its triangle laid flat, length 1. */
export function alongSide(surface: Surface, h: number): Vec2 {
  const corners = flatCorners(surface, triangleOfHalfedge(h));
  const [a, b] = [corners[h % 3], corners[(h + 1) % 3]];
  const size = Math.hypot(b.x - a.x, b.y - a.y);
  return size > 0 ? { x: (b.x - a.x) / size, y: (b.y - a.y) / size } : { x: 1, y: 0 };
}
