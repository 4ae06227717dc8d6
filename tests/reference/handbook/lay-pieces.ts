import { triangulateRings } from '../../../src/geom/triangulate.ts';
import { chainLength, onCircle, type OutlineSegment } from '../../../src/geom/outline.ts';
import type { Vec2 } from '../../../src/geom/vec.ts';
import type { ShapePiece } from '../../../src/model/shape.ts';
import { layFlat } from './flat-figures.ts';
import type { LaidShape } from './lay-shape.ts';

/** Between pieces on their plane, mm. */
const APART_MM = 10;

/** Corners on the exact outline: straight parts by their ends, round ones by so many facets to a turn, curves by as many of their own points. */
function ringThrough(segments: readonly OutlineSegment[], facets: number): Vec2[] {
  return segments.flatMap((one): Vec2[] => {
    if (one.kind === 'line') return [one.from];
    const turn = one.kind === 'arc' ? Math.abs(one.turn) : turnOf(one.points);
    const count = Math.max(1, Math.round((facets * turn) / (2 * Math.PI)));
    return Array.from({ length: count }, (_, i) => {
      if (one.kind === 'curve') return one.points[Math.round((i * (one.points.length - 1)) / count)];
      const start = Math.atan2(one.from.y - one.centre.y, one.from.x - one.centre.x);
      return i === 0 ? one.from : onCircle(one.centre, one.radius, start + (one.turn * i) / count);
    });
  });
}

/** How far a line through points turns, radians. */
function turnOf(points: readonly Vec2[]): number {
  let turn = 0;
  for (let i = 2; i < points.length; i += 1) {
    const [a, b, c] = [points[i - 2], points[i - 1], points[i]];
    const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
    turn += Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  }
  return turn;
}

/** Flat pieces side by side on a plane, one of each, as a mesh laid flat as a sculpt is: areas, and borders in place of seams, against their outlines. */
export async function layPiecesFlat(pieces: readonly ShapePiece[], facets: number): Promise<LaidShape> {
  const corners: [number, number, number][] = [];
  const faces: number[][] = [];
  let right = 0;
  for (const { outline, holes } of pieces) {
    const rings = [outline, ...holes].map((edges) =>
      ringThrough(
        edges.flatMap(({ segments }) => segments),
        facets,
      ),
    );
    const least = Math.min(...rings[0].map(({ x }) => x));
    const packed = rings.map((ring) => ring.flatMap(({ x, y }) => [x, y]));
    const first = corners.length;
    const own =
      holes.length === 0 ? [rings[0].map((_, v) => v)] : triples(triangulateRings(packed[0], packed.slice(1)));
    faces.push(...own.map((face) => face.map((v) => first + v)));
    for (const { x, y } of rings.flat()) corners.push([x - least + right, y, 0]);
    right = Math.max(...corners.map(([x]) => x)) + APART_MM;
  }
  const report = await layFlat({ corners, faces, seams: [] }, { thicknessMm: 1 });
  const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);
  const area = sumOf(pieces.map(({ areaMm2 }) => areaMm2));
  const border = sumOf(
    pieces.flatMap(({ outline, holes }) => [outline, ...holes].flat().map(({ segments }) => chainLength(segments))),
  );
  const open = report.seams.filter(({ kind }) => kind === 'open');
  return {
    pieces: report.pieces.length,
    triangles: report.model.triangles,
    areaError: sumOf(report.pieces.map(({ flatAreaMm2 }) => flatAreaMm2)) / area - 1,
    seamError: sumOf(open.flatMap(({ lengthMm }) => lengthMm)) / border - 1,
    worstStretchPct: Math.max(...report.pieces.map(({ stretchPct }) => Math.abs(stretchPct.max))),
  };
}

const triples = (numbers: readonly number[]): number[][] =>
  Array.from({ length: numbers.length / 3 }, (_, i) => numbers.slice(3 * i, 3 * i + 3));
