import { cross3, dot3, sub3, unit3, vec2, type Vec2 } from '../../geom/vec.ts';
import type { ShapeEdge, ShapeFold, ShapePiece } from '../../model/shape.ts';
import { piece, side } from './pieces.ts';
import type { Polyhedron, SolidEdge } from './polyhedron.ts';

const DEG = 180 / Math.PI;
/** Faces whose sides differ by less than this share are cut from one template. */
const ALIKE_SHARE = 1e-8;

/** Bevel of an edge: half of what the faces turn, degrees from square. */
export const bevelOf = ({ dihedral }: Pick<SolidEdge, 'dihedral'>): number => 90 - (DEG * dihedral) / 2;

/** A face laid flat seen from outside, its first side along +x. */
export function flatFace({ corners, faces, normals }: Polyhedron, face: number): Vec2[] {
  const ring = faces[face];
  const first = corners[ring[0]];
  const x = unit3(sub3(corners[ring[1]], first));
  const y = cross3(normals[face], x);
  return ring.map((v) => vec2(dot3(sub3(corners[v], first), x), dot3(sub3(corners[v], first), y)));
}

function edgesByFace({ faces, edges }: Polyhedron): (SolidEdge | null)[][] {
  const found = new Map(
    edges.flatMap((one) => [[`${one.a} ${one.b}`, one] as const, [`${one.b} ${one.a}`, one] as const]),
  );
  return faces.map((face) => face.map((a, i) => found.get(`${a} ${face[(i + 1) % face.length]}`) ?? null));
}

/**
 * Every kind of face as one piece, in the number it is needed, with the bevel of each side and the kind of piece it meets. Faces are of one
 * kind where going round them gives the same sides, corners and bevels.
 * @param nameOf  name of a face; kinds that would have the same name are numbered.
 */
export function facePieces(solid: Polyhedron, nameOf: (face: number) => string): readonly ShapePiece[] {
  const around = edgesByFace(solid);
  const kinds: { readonly face: number; readonly key: readonly number[]; quantity: number }[] = [];
  const kindOf = solid.faces.map((_, f) => {
    const key = keyOf(flatFace(solid, f), around[f]);
    const found = kinds.findIndex((kind) => isTurnOf(kind.key, key));
    if (found < 0) return kinds.push({ face: f, key, quantity: 1 }) - 1;
    kinds[found].quantity += 1;
    return found;
  });
  const plainNames = kinds.map(({ face }) => nameOf(face));
  const names = plainNames.map((name, k) => {
    if (plainNames.filter((other) => other === name).length === 1) return name;
    return `${name} ${plainNames.slice(0, k + 1).filter((other) => other === name).length}`;
  });
  return kinds.map(({ face, quantity }, kind) => {
    const points = flatFace(solid, face);
    return piece(
      names[kind],
      points.map((p, i) => {
        const one = around[face][i];
        const other = one === null ? -1 : one.faces[0] === face ? one.faces[1] : one.faces[0];
        return side(
          `side ${i + 1}`,
          p,
          points[(i + 1) % points.length],
          one === null ? {} : { bevelDeg: bevelOf(one), meets: names[kindOf[other]] },
        );
      }),
      { quantity },
    );
  });
}

/** Side, diagonal over the corner and bevel, side by side. */
const keyOf = (points: readonly Vec2[], edges: readonly (SolidEdge | null)[]): number[] =>
  points.flatMap((p, i) => {
    const [q, r] = [points[(i + 1) % points.length], points[(i + 2) % points.length]];
    const one = edges[i];
    return [Math.hypot(q.x - p.x, q.y - p.y), Math.hypot(r.x - p.x, r.y - p.y), one === null ? 0 : bevelOf(one)];
  });

function isTurnOf(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return false;
  const size = Math.max(...a.map(Math.abs), 1e-300);
  for (let turn = 0; turn < a.length; turn += 3)
    if (a.every((one, i) => Math.abs(one - b[(i + turn) % b.length]) <= ALIKE_SHARE * size)) return true;
  return false;
}

/**
 * The net: all faces in one piece, folded along a tree of shared edges that is grown evenly from the first face: E - F + 1 edges are cut.
 */
export function netPiece(
  solid: Polyhedron,
  name = 'net',
): { readonly piece: ShapePiece; readonly cutEdges: number; readonly perimeter: number; readonly overlaps: boolean } {
  const around = edgesByFace(solid);
  const placed: (Vec2[] | null)[] = solid.faces.map(() => null);
  placed[0] = flatFace(solid, 0);
  const folded = new Set<SolidEdge>();
  const queue = [0];
  const folds: ShapeFold[] = [];
  for (let f = queue.shift(); f !== undefined; f = queue.shift()) {
    const own = placed[f] as Vec2[];
    around[f].forEach((one, i) => {
      if (one === null) return;
      const other = one.faces[0] === f ? one.faces[1] : one.faces[0];
      if (placed[other] !== null) return;
      placed[other] = laidAgainst(
        flatFace(solid, other),
        around[other].indexOf(one),
        own[(i + 1) % own.length],
        own[i],
      );
      folded.add(one);
      folds.push({ from: own[i], to: own[(i + 1) % own.length], angleDeg: 180 - DEG * one.dihedral });
      queue.push(other);
    });
  }
  // Walk round the outside: past a folded side one goes on in the neighbour.
  const start = ((): readonly [number, number] => {
    for (let f = 0; f < solid.faces.length; f += 1)
      for (let i = 0; i < around[f].length; i += 1) {
        const one = around[f][i];
        if (one === null || !folded.has(one)) return [f, i];
      }
    throw new Error('a net without a border');
  })();
  const outline: ShapeEdge[] = [];
  let [f, i] = start;
  do {
    const ring = placed[f] as Vec2[];
    const one = around[f][i];
    const seam =
      one === null
        ? {}
        : { seam: `${Math.min(one.a, one.b) + 1}-${Math.max(one.a, one.b) + 1}`, bevelDeg: bevelOf(one) };
    outline.push(side(`side ${outline.length + 1}`, ring[i], ring[(i + 1) % ring.length], seam));
    i = (i + 1) % ring.length;
    for (let next = around[f][i]; next !== null && folded.has(next); next = around[f][i]) {
      const other: number = next.faces[0] === f ? next.faces[1] : next.faces[0];
      i = (around[other].indexOf(next) + 1) % around[other].length;
      f = other;
    }
  } while (f !== start[0] || i !== start[1]);
  const perimeter = outline.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return {
    piece: piece(name, outline, { folds, bend: { kind: 'folded' } }),
    cutEdges: solid.edges.length - folded.size,
    perimeter,
    overlaps: doFacesOverlap(placed as Vec2[][]),
  };
}

/** A face moved so that its side `i` runs from `from` to `to`. */
function laidAgainst(face: readonly Vec2[], i: number, from: Vec2, to: Vec2): Vec2[] {
  const [p, q] = [face[i], face[(i + 1) % face.length]];
  const turn = Math.atan2(to.y - from.y, to.x - from.x) - Math.atan2(q.y - p.y, q.x - p.x);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return face.map(({ x, y }) => vec2(from.x + c * (x - p.x) - s * (y - p.y), from.y + s * (x - p.x) + c * (y - p.y)));
}

/** Whether two convex faces of a net lie on one another by more than rounding: no side of either parts them. */
function doFacesOverlap(faces: readonly (readonly Vec2[])[]): boolean {
  return faces.some((a, i) => faces.slice(i + 1).some((b) => !isParted(a, b) && !isParted(b, a)));
}

function isParted(a: readonly Vec2[], b: readonly Vec2[]): boolean {
  return a.some((p, i) => {
    const q = a[(i + 1) % a.length];
    const long = Math.hypot(q.x - p.x, q.y - p.y);
    return b.every((r) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x) <= 1e-9 * long * long);
  });
}
