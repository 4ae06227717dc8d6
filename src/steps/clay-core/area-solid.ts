import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { buildTree } from '../../geom/bvh.ts';
import { doTrianglesCross } from '../../geom/triangle-crossing.ts';
import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { areaVector, boxOfPoints3 } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { openRims } from '../../mesh/open-rims.ts';
import { plainMesh } from '../../mesh/plain-mesh.ts';
import { buildTopology } from '../../mesh/topology.ts';
import type { AreaSolid, ClayBorder } from '../../model/clay-core.ts';
import { rimCap } from './rim-cap.ts';

/** An area that faces all ways has no mean direction: its directions cancel to under this share. */
const FACES_ALL_WAYS = 0.05;

/** How far the walls of the skin go on below the base, in covers, and mm more: past any ball of clay that reaches down there. */
const SKIRT_COVERS = 1.25;
const SKIRT_MM = 1;

/** Share of the size within which surfaces that touch do not run through each other. */
const TOUCH_SHARE = 1e-6;

/**
 * Closes an area of a sculpt to the solid that is modelled in clay: each rim by flat triangles across it ({@link rimCap}).
 * @param faces  polygons of the file.
 * @param coverMm  least clay, mm, > 0.
 * @returns fails with `clay/no-area` where the sculpt has none of the faces, and with `clay/hollow` where the area is a hollow: under it lies no solid.
 */
export function areaSolid(mesh: Mesh, faces: ReadonlySet<number>, coverMm: number, axisWish?: Vec3): Result<AreaSolid> {
  const { positions, triangles, fileVertex } = areaOf(mesh, faces);
  const count = triangles.length / 3;
  if (count === 0) return fail('clay/no-area', 'The area has no faces on this sculpt: mark it again.');
  let [facing, areaMm2] = [vec3(0, 0, 0), 0];
  for (let t = 0; t < count; t += 1) {
    const own = areaVector(positions, triangles, t);
    facing = add3(facing, own);
    areaMm2 += length3(own);
  }
  const axis = axisWish ?? (length3(facing) > FACES_ALL_WAYS * areaMm2 ? facing : vec3(0, 0, 1));
  if (!(length3(axis) > 0 && Number.isFinite(length3(axis))))
    return fail(
      'clay/axis',
      'The axis of the core has no direction: give x, y, z or three numbers that are not all 0.',
    );
  const up = unit3(axis);
  const rims = openRims(triangles, buildTopology(triangles, positions.length / 3));
  const closed = closedBy(positions, triangles, rims);
  const volume = volumeOf(closed.positions, closed.triangles);
  const { min, max } = boxOfPoints3(positions);
  const size = length3(sub3(max, min));
  if (!(volume > 1e-9 * size ** 3))
    return fail(
      'clay/hollow',
      'The area is flat or a hollow, so that no solid lies under it: mark an area that stands out, or build it up in clay on the foam.',
    );
  const lowest = Math.min(...heights(positions, up)) - SKIRT_COVERS * coverMm - SKIRT_MM;
  const skirted = rims.length === 0 ? closed : skirtedBy(positions, triangles, rims, up, lowest);
  const borders = rims.map((rim) => borderOf(positions, rim, fileVertex));
  return ok({
    solid: plainMesh(closed.positions, closed.triangles),
    skin: plainMesh(skirted.positions, skirted.triangles),
    areaTriangles: count,
    axis: up,
    areaMm2,
    borders,
    findings: crossingFinding(closed, count, TOUCH_SHARE * size),
  });
}

interface Closed {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

/** The triangles of some polygons with the vertices they use. */
function areaOf(mesh: Mesh, faces: ReadonlySet<number>): Closed & { readonly fileVertex: readonly number[] } {
  const numbers = new Map<number, number>();
  const positions: number[] = [];
  const fileVertex: number[] = [];
  const triangles: number[] = [];
  for (let t = 0; t < mesh.faceOfTriangle.length; t += 1) {
    if (!faces.has(mesh.faceOfTriangle[t])) continue;
    for (let k = 0; k < 3; k += 1) {
      const v = mesh.triangles[3 * t + k];
      let number = numbers.get(v);
      if (number === undefined) {
        number = numbers.size;
        numbers.set(v, number);
        const { x, y, z } = pointAt3(mesh.positions, v);
        positions.push(x, y, z);
        fileVertex.push(mesh.fileVertex[v]);
      }
      triangles.push(number);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles), fileVertex };
}

/** The surface with a cap over each rim; its own triangles stand first. */
function closedBy(positions: Float64Array, triangles: Uint32Array, rims: readonly (readonly number[])[]): Closed {
  const points: number[] = [...positions];
  const all: number[] = [...triangles];
  for (const rim of rims) addCap(points, all, rim);
  return { positions: Float64Array.from(points), triangles: Uint32Array.from(all) };
}

/** A cap that has the rim on its other side. @param at  where the corners of the rim stand in the points. */
function addCap(points: number[], triangles: number[], at: readonly number[]): void {
  const { middles, triangles: cut } = rimCap(at.flatMap((v) => [points[3 * v], points[3 * v + 1], points[3 * v + 2]]));
  const first = points.length / 3;
  for (const [a, b] of middles)
    for (let k = 0; k < 3; k += 1) points.push((points[3 * at[a] + k] + points[3 * at[b] + k]) / 2);
  const numberOf = (corner: number): number => (corner < at.length ? at[corner] : first + corner - at.length);
  for (let t = 0; t < cut.length; t += 3) triangles.push(numberOf(cut[t]), numberOf(cut[t + 2]), numberOf(cut[t + 1]));
}

/** The area with walls from its rims down to a height along the axis, closed there. */
function skirtedBy(
  positions: Float64Array,
  triangles: Uint32Array,
  rims: readonly (readonly number[])[],
  up: Vec3,
  height: number,
): Closed {
  const points: number[] = [...positions];
  const all: number[] = [...triangles];
  for (const rim of rims) {
    const foot = rim.map((v) => {
      const p = pointAt3(positions, v);
      const { x, y, z } = add3(p, scale3(up, height - dot3(p, up)));
      points.push(x, y, z);
      return points.length / 3 - 1;
    });
    for (let i = 0; i < rim.length; i += 1) {
      const j = (i + 1) % rim.length;
      all.push(rim[j], rim[i], foot[i], rim[j], foot[i], foot[j]);
    }
    addCap(points, all, foot);
  }
  return { positions: Float64Array.from(points), triangles: Uint32Array.from(all) };
}

const heights = (positions: Float64Array, up: Vec3): Float64Array =>
  Float64Array.from({ length: positions.length / 3 }, (_, v) => dot3(pointAt3(positions, v), up));

/** Signed volume within a closed surface, mm³, summed about one of its corners. */
export function volumeOf(positions: Float64Array, triangles: Uint32Array): number {
  const about = pointAt3(positions, triangles[0]);
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => sub3(pointAt3(positions, triangles[t + k]), about));
    six += dot3(a, cross3(b, c));
  }
  return six / 6;
}

function borderOf(positions: Float64Array, rim: readonly number[], fileVertex: readonly number[]): ClayBorder {
  const points = rim.map((v) => pointAt3(positions, v));
  const middle = scale3(points.reduce(add3), 1 / points.length);
  let [normal, lengthMm] = [vec3(0, 0, 0), 0];
  for (const [i, p] of points.entries()) {
    const q = points[(i + 1) % points.length];
    normal = add3(normal, cross3(sub3(p, middle), sub3(q, middle)));
    lengthMm += length3(sub3(q, p));
  }
  const unit = unit3(normal);
  return {
    vertices: rim.map((v) => fileVertex[v]),
    lengthMm,
    offPlaneMm: Math.max(...points.map((p) => Math.abs(dot3(sub3(p, middle), unit)))),
  };
}

/** Where a cap runs through the area or another cap, the volume counts what lies twice or not at all. */
function crossingFinding({ positions, triangles }: Closed, count: number, tolerance: number): readonly Finding[] {
  if (triangles.length === 3 * count) return [];
  const area = buildTree(positions, triangles.slice(0, 3 * count));
  const caps = buildTree(positions, triangles.slice(3 * count));
  let at = -1;
  area.pairsWith(caps, (own, other) => {
    if (at < 0 && doTrianglesCross(positions, triangles, own, count + other, tolerance)) at = own;
  });
  if (at < 0) return [];
  const { x, y, z } = pointAt3(positions, triangles[3 * at]);
  return [
    {
      code: 'clay/base-crosses',
      severity: 'warning',
      text: `The base across the area's rim runs through the area near ${[x, y, z].map((one) => String(Number(one.toFixed(1)) + 0)).join(', ')} mm, so that the volume of clay is rough: mark an area whose rim is nearer to flat.`,
      where: { point: [x, y, z] },
    },
  ];
}
