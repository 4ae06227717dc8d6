import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { triangleNormal } from '../../mesh/measure.ts';
import { nextHalfedge } from '../../mesh/topology.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { Patch } from '../../model/patch.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';

/** Where face and back of a piece run when it is set up on the prop, x y z per local vertex of its patch, mm. */
export interface PlateSkins {
  readonly face: Float64Array;
  readonly back: Float64Array;
}

/** A border edge that leaves or reaches a vertex: outward in the piece's surface, length 1, and where its two cut edges run, mm; null where they stay. */
interface BorderLine {
  readonly outward: Vec3;
  readonly cut: { readonly faceMm: number; readonly backMm: number } | null;
}

/** Edges of a border that turn less than this at a vertex are one line there, sine of about 3 degrees. */
const ONE_LINE_SINE = 0.05;

/**
 * The skins of a piece with its own edges: those of its sheet, which end on the plane that halves each fold, and where the sides of a seam are
 * cut otherwise moved in the piece's surface to where its cuts run: a piece that stands on another ends where the other begins.
 * @param shell   surfaces the piece is cut from.
 * @param uneven  seams whose sides are cut otherwise.
 */
export function plateSkins(patch: Patch, piece: FoamPiece, shell: ShellLayer, uneven: ReadonlySet<string>): PlateSkins {
  const lines = borderLines(patch, piece, shell.neutralPositions, uneven);
  const skin = (positions: Float64Array, offsetOf: (line: BorderLine) => number | null): Float64Array => {
    const points = new Float64Array(3 * patch.meshVertices.length);
    patch.meshVertices.forEach((v, local) => {
      const at = pointAt3(positions, v);
      const own = lines.get(local) ?? [];
      const above = sub3(at, pointAt3(shell.neutralPositions, v));
      const shifts = own.map((line) => {
        const offset = offsetOf(line);
        return offset === null ? 0 : offset - dot3(above, line.outward);
      });
      const { x, y, z } = shifts.every((shift) => shift === 0) ? at : add3(at, moveOnto(own, shifts));
      points.set([x, y, z], 3 * local);
    });
    return points;
  };
  return {
    face: skin(shell.facePositions, ({ cut }) => cut && cut.faceMm),
    back: skin(shell.backPositions, ({ cut }) => cut && cut.backMm),
  };
}

/** The border edges at each vertex of the border. */
function borderLines(
  patch: Patch,
  piece: FoamPiece,
  positions: Float64Array,
  uneven: ReadonlySet<string>,
): ReadonlyMap<number, readonly BorderLine[]> {
  const normals = borderNormals(patch, positions);
  const lines = new Map<number, BorderLine[]>();
  for (const { seam, ring, from, stationMm, faceOffsetMm, backOffsetMm, allowanceMm } of piece.edges) {
    const loop = patch.loops[ring];
    for (let j = 0; j + 1 < stationMm.length; j += 1) {
      const [v, w] = [loop[(from + j) % loop.length], loop[(from + j + 1) % loop.length]];
      const normal = normals.get(v);
      if (normal === undefined) continue;
      const along = sub3(pointAt3(positions, patch.meshVertices[w]), pointAt3(positions, patch.meshVertices[v]));
      const outward = unit3(cross3(along, normal));
      for (const [end, i] of [
        [v, j],
        [w, j + 1],
      ]) {
        const cut = { faceMm: faceOffsetMm[i] - allowanceMm, backMm: backOffsetMm[i] - allowanceMm };
        const line = { outward, cut: uneven.has(seam) ? cut : null };
        const known = lines.get(end);
        if (known === undefined) lines.set(end, [line]);
        else known.push(line);
      }
    }
  }
  return lines;
}

/** Normal of the triangle beside the border edge that leaves each vertex of the border. */
function borderNormals({ triangles, meshVertices, loops }: Patch, positions: Float64Array): ReadonlyMap<number, Vec3> {
  const after = new Map<number, number>();
  for (const loop of loops) loop.forEach((v, i) => after.set(v, loop[(i + 1) % loop.length]));
  const corners = triangles.map((v) => meshVertices[v]);
  const normals = new Map<number, Vec3>();
  triangles.forEach((v, h) => {
    if (after.get(v) === triangles[nextHalfedge(h)])
      normals.set(v, triangleNormal(positions, corners, Math.floor(h / 3)));
  });
  return normals;
}

/** The least move that carries a point onto the lines of its border, each so far outward, mm; along one line square to it. */
function moveOnto(lines: readonly BorderLine[], shifts: readonly number[]): Vec3 {
  const [a, b] = lines;
  const across = b === undefined ? vec3(0, 0, 0) : sub3(b.outward, scale3(a.outward, dot3(a.outward, b.outward)));
  const sine = length3(across);
  if (sine < ONE_LINE_SINE) return scale3(a.outward, shifts.reduce((sum, shift) => sum + shift, 0) / shifts.length);
  const rest = shifts[1] - shifts[0] * dot3(a.outward, b.outward);
  return add3(scale3(a.outward, shifts[0]), scale3(across, rest / (sine * sine)));
}
