import { coveredRegions } from '../geom/polygon-boolean.ts';
import { scaledPoints } from '../geom/scale-along.ts';
import { add3, pointAt3, scale3, sub3 } from '../geom/vec.ts';
import { pointAtPlace } from '../mesh/lines/mesh-point.ts';
import { surfaceOf } from '../mesh/surface.ts';
import { cutRing, cutScaleOf } from '../model/cut-larger.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { CutOffer, Patch } from '../model/patch.ts';
import type { SplitPath } from '../model/sheet.ts';
import type { SurfacePoint } from '../model/seams.ts';
import { foamTasks, type SheetTask } from '../steps/nest/lay-on-sheets.ts';
import { splitLine, type SplitLine } from '../steps/nest/split-line.ts';
import { facePolygons, surfacePointOf } from '../steps/seams/surface-points.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import type { CutSculpt, SizedSculpt } from './outcome.ts';

/** The same as an offer on the sculpt. */
export const offerOfSplit = (
  { piece, path, lengthMm, doBothFit }: SplitPath,
  pieces: readonly FoamPiece[],
): CutOffer => {
  const found = pieces.find(({ id }) => id === piece);
  if (found === undefined) throw new Error(`offerOfSplit: no piece ${piece}`);
  return {
    patch: found.patch,
    edges: [],
    marks: { edges: [], paths: [path] },
    lengthMm,
    text: `part ${found.name}, which is larger than a sheet, so that ${doBothFit ? 'both parts fit' : 'one part fits'}`,
  };
};

/**
 * How pieces that are larger than any sheet may be parted: along a straight line on the flat piece, as a path on the sculpt.
 * @param pieces  larger than any sheet, of the sheet of the wall that is seen.
 * @param cut     that sheet parted: on the sculpt's own mesh, or on the one that is cut along drawn lines.
 * @returns one for each piece across which a straight line can be drawn so that a part fits.
 */
export function splitPaths(
  pieces: readonly FoamPiece[],
  task: SheetTask,
  cut: CutSculpt,
  sculpt: SizedSculpt,
  drawn: DrawnSurface | null,
): readonly SplitPath[] {
  const source = drawn?.mesh === cut.mesh ? drawn.sourceOfTriangle : null;
  // A sheet with seams of its own is none that a maker marks seams on.
  if (source === null && cut.mesh !== sculpt.mesh) return [];
  const tasks = foamTasks(task, false);
  return pieces.flatMap((piece): readonly SplitPath[] => {
    const own = tasks.find(({ foam }) => foam.id === piece.foam);
    if (own === undefined) return [];
    const rings = [piece.outline, ...piece.holes, piece.otherOutline, ...piece.otherHoles];
    const [area] = coveredRegions(rings.map((ring) => cutRing(piece, ring)));
    const rooms = own.rooms.map(({ free }) => ({ alongMm: free.maxX - free.minX, acrossMm: free.maxY - free.minY }));
    const line = splitLine(area, piece.grainRad, own.fill, rooms);
    if (line === null) return [];
    const scale = cutScaleOf(piece);
    const uv = scale === null ? piece.uv : scaledPoints(piece.uv, scale);
    const points = pointsAlong(line, cut.patches[piece.patch], uv, cut, sculpt, source);
    if (points === null) return [];
    return [{ piece: piece.id, lengthMm: line.lengthMm, doBothFit: line.doBothFit, path: { points, kind: 'butt' } }];
  });
}

/** Where the line crosses the edges of the patch, from one rim to the other; null where it leaves the patch between. */
function pointsAlong(
  { from, to, lengthMm }: SplitLine,
  { triangles, meshVertices, meshTriangles }: Patch,
  uv: Float64Array,
  { mesh }: CutSculpt,
  sculpt: SizedSculpt,
  source: Int32Array | null,
): readonly SurfacePoint[] | null {
  const [ux, uy] = [(to.x - from.x) / lengthMm, (to.y - from.y) / lengthMm];
  const side = (v: number): number => ux * (uv[2 * v + 1] - from.y) - uy * (uv[2 * v] - from.x);
  const surface = surfaceOf(sculpt.mesh);
  const found = new Map<string, { readonly along: number; readonly point: SurfacePoint; readonly count: number }>();
  for (let t = 0; t < meshTriangles.length; t += 1) {
    for (let k = 0; k < 3; k += 1) {
      const [v, w] = [triangles[3 * t + k], triangles[3 * t + ((k + 1) % 3)]];
      const [a, b] = [side(v), side(w)];
      if (a >= 0 === b >= 0) continue;
      const key = v < w ? `${v} ${w}` : `${w} ${v}`;
      const before = found.get(key);
      if (before !== undefined) {
        found.set(key, { ...before, count: before.count + 1 });
        continue;
      }
      const share = a / (a - b);
      const [x, y] = [0, 1].map((axis) => uv[2 * v + axis] + share * (uv[2 * w + axis] - uv[2 * v + axis]));
      const [p, q] = [v, w].map((local) => pointAt3(mesh.positions, meshVertices[local]));
      const place = add3(p, scale3(sub3(q, p), share));
      const triangle = source === null ? meshTriangles[t] : source[meshTriangles[t]];
      const point = surfacePointOf(sculpt.mesh, facePolygons(sculpt.model), pointAtPlace(surface, triangle, place));
      found.set(key, { along: ux * (x - from.x) + uy * (y - from.y), point, count: 1 });
    }
  }
  const row = [...found.values()].sort((one, other) => one.along - other.along);
  // Two rims and no more: it neither runs over a notch nor a hole of the neutral surface.
  if (row.length < 2 || row.filter(({ count }) => count === 1).length !== 2) return null;
  return row.map(({ point }) => point);
}
