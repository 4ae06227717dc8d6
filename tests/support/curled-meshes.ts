import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshOf } from './meshes.ts';

/**
 * A ramp that winds up round z, one strip of quads: a flat ring of more than a turn, lifted. Vertex 2 i is the inner end of rung i, 2 i + 1
 * the outer one. Without an inner vertex it unfolds exactly.
 * @param turns  how often it goes round.
 * @param rungs  quads along the ramp.
 * @param rise   mm up for each turn.
 */
export function rampMesh(turns: number, rungs: number, inner = 40, outer = 60, rise = 30): Mesh {
  const points: [number, number, number][] = [];
  const faces: number[][] = [];
  for (let i = 0; i <= rungs; i += 1) {
    const angle = (2 * Math.PI * turns * i) / rungs;
    const z = (rise * turns * i) / rungs;
    for (const r of [inner, outer]) points.push([r * Math.cos(angle), r * Math.sin(angle), z]);
    if (i < rungs) faces.push([2 * i, 2 * i + 1, 2 * i + 3, 2 * i + 2]);
  }
  return meshOf(points, faces);
}

/** The same ramp with `rows` quads across, so that it has inner vertices; vertex (rows + 1) i + j is row j of rung i. */
export function wideRampMesh(turns: number, rungs: number, rows: number, inner = 40, outer = 60, rise = 30): Mesh {
  const points: [number, number, number][] = [];
  const faces: number[][] = [];
  const at = (i: number, j: number): number => (rows + 1) * i + j;
  for (let i = 0; i <= rungs; i += 1) {
    const angle = (2 * Math.PI * turns * i) / rungs;
    for (let j = 0; j <= rows; j += 1) {
      const r = inner + ((outer - inner) * j) / rows;
      points.push([r * Math.cos(angle), r * Math.sin(angle), (rise * turns * i) / rungs]);
      if (i < rungs && j < rows) faces.push([at(i, j), at(i, j + 1), at(i + 1, j + 1), at(i + 1, j)]);
    }
  }
  return meshOf(points, faces);
}

/**
 * A C on a cone: a ring, middle of its band at `radius` mm, width `width`, open over `gap` radians; at its back, in the middle of the band,
 * sits the tip of a cone from which a wedge of `wedge` radians is missing. The wedge would open towards the inside of the ring: closed as
 * it is, it bends the limbs towards each other.
 */
export function coneHookMesh(wedge: number, gap: number, radius = 40, width = 20): Mesh {
  const round = 2 * Math.PI - wedge;
  const columns = 72;
  const step = 1.7;
  const share = round / (2 * Math.PI);
  const points: [number, number, number][] = [[0, 0, 0]];
  const numberOf = new Map<string, number>();
  const vertex = (i: number, j: number): number => {
    if (j === 0) return 0;
    const reach = step * j;
    // Beyond the band the limbs are no neighbours, although they meet on the cone.
    const column = reach <= width ? i % columns : i;
    const key = `${column} ${j}`;
    const known = numberOf.get(key);
    if (known !== undefined) return known;
    const angle = (2 * Math.PI * column) / columns;
    points.push([
      reach * share * Math.cos(angle),
      reach * share * Math.sin(angle),
      -reach * Math.sqrt(1 - share * share),
    ]);
    numberOf.set(key, points.length - 1);
    return points.length - 1;
  };
  // In the plane with the wedge open: the tip at the origin, the ring's middle at +x, the wedge about +x.
  const isInside = (i: number, j: number): boolean => {
    const angle = wedge / 2 + (round * (i + 0.5)) / columns;
    const x = step * (j + 0.5) * Math.cos(angle) - radius;
    const y = step * (j + 0.5) * Math.sin(angle);
    return Math.abs(Math.hypot(x, y) - radius) < width / 2 && Math.abs(Math.atan2(y, x)) > gap / 2;
  };
  const faces: number[][] = [];
  for (let j = 0; step * j < 2 * radius + width; j += 1) {
    // Beyond the band the limbs reach on over the wedge.
    const more = step * j < width ? 0 : Math.ceil((columns * wedge) / 2 / round);
    for (let i = -more; i < columns + more; i += 1) {
      if (!isInside(i, j)) continue;
      const corners = [vertex(i, j), vertex(i, j + 1), vertex(i + 1, j + 1)];
      faces.push(j === 0 ? corners : [...corners, vertex(i + 1, j)]);
    }
  }
  return meshOf(points, faces);
}

/**
 * A C on a saddle: a ring, middle of its band at `radius` mm, open over `gap` radians, on the surface z = `bend` r² cos(2 angle) / radius.
 * Round a saddle there is more than a full turn, so that in the plane the limbs run over each other.
 */
export function saddleHookMesh(bend = 0.6, gap = 0.2, radius = 40, width = 16): Mesh {
  const [columns, rows] = [72, 4];
  const points: [number, number, number][] = [];
  const faces: number[][] = [];
  const at = (i: number, j: number): number => (rows + 1) * i + j;
  for (let i = 0; i <= columns; i += 1) {
    const angle = gap / 2 + ((2 * Math.PI - gap) * i) / columns;
    for (let j = 0; j <= rows; j += 1) {
      const r = radius + width * (j / rows - 0.5);
      points.push([r * Math.cos(angle), r * Math.sin(angle), (bend * r * r * Math.cos(2 * angle)) / radius]);
      if (i < columns && j < rows) faces.push([at(i, j), at(i, j + 1), at(i + 1, j + 1), at(i + 1, j)]);
    }
  }
  return meshOf(points, faces);
}
