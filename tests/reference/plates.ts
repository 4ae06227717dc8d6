import type { Pair, Report, ReportPiece } from './report-shape.ts';

/**
 * Puts flat plates together from nothing but the lines to cut and the bevels that a report gives, as a maker would: one plate is laid down,
 * and each next one is set against the face edge of one that stands, turned by the sum of both bevels. Shares no code with the product.
 */
export type Point = readonly [number, number, number];

/** One straight edge of a plate, between two corners of its face. */
export interface PlateEdge {
  readonly seam: string;
  readonly from: number;
  readonly to: number;
  readonly bevelRad: number;
}

export interface Plate {
  readonly id: string;
  readonly thicknessMm: number;
  readonly face: readonly Pair[];
  readonly edges: readonly PlateEdge[];
}

/** A plate of one straight edge for each seam, traced on its face. */
export function plateOf(piece: ReportPiece): Plate {
  if (piece.tracedSide !== 'face') throw new Error('the outline is that of the face');
  if (piece.outlineMm.length !== piece.edges.length) throw new Error('an edge for each corner');
  return {
    id: piece.id,
    thicknessMm: piece.thicknessMm,
    face: piece.outlineMm,
    edges: piece.edges.map(({ seam, from, to, bevelDeg }) => ({
      seam,
      from,
      to,
      bevelRad: (bevelDeg.reduce((sum, bevel) => sum + bevel, 0) / bevelDeg.length) * (Math.PI / 180),
    })),
  };
}

export const platesOf = (report: Report): readonly Plate[] => report.pieces.map(plateOf);

/** A plate with one edge moved in, its neighbours shortened by it. */
export function withEdgeMovedIn(plate: Plate, seam: string, byMm: number): Plate {
  const edge = edgeOf(plate, seam);
  const moved = plate.edges.map((each) => (each === edge ? byMm : 0));
  return { ...plate, face: drawnIn(plate, moved) };
}

/** Corners of a plate's back: every edge stands in by `t tan(bevel)`. */
export const backOf = (plate: Plate): readonly Pair[] =>
  drawnIn(
    plate,
    plate.edges.map(({ bevelRad }) => plate.thicknessMm * Math.tan(bevelRad)),
  );

/** Moves the edges of a polygon in by their own distances; corners are where moved neighbours meet. */
function drawnIn({ face, edges }: Plate, inMm: readonly number[]): readonly Pair[] {
  return face.map((corner, i) => {
    const lines = edges.flatMap((edge, k) => {
      if (edge.from !== i && edge.to !== i) return [];
      const [ux, uy] = unit2(face[edge.from], face[edge.to]);
      // Inward is to the left of a ring that runs counter-clockwise.
      return [{ n: [-uy, ux], d: -uy * corner[0] + ux * corner[1] + inMm[k] }];
    });
    const [{ n: p, d: a }, { n: q, d: b }] = lines;
    const det = p[0] * q[1] - p[1] * q[0];
    return [(a * q[1] - b * p[1]) / det, (p[0] * b - q[0] * a) / det];
  });
}

interface Standing {
  readonly plate: Plate;
  readonly at: (p: Pair, heightMm: number) => Point;
  readonly normal: Point;
  /** Where a way in the plate leads in space. */
  readonly way: (p: Pair) => Point;
}

/** How two plates miss each other along a seam; the way between the two edges split up along the seam and along both plates. */
export interface Miss {
  readonly seam: string;
  /** Lacking, of both edges together, in their own planes, >= 0 and < 0 where they run into each other; the worst of four corners. */
  readonly gapMm: number;
  /** Longest way between two corners that should be one. */
  readonly apartMm: number;
}

/**
 * @param plates     the first is laid down.
 * @param lastSeams  seams across which nothing is set: they are to be closed by the others.
 */
export function assemble(plates: readonly Plate[], lastSeams: readonly string[] = []): readonly Miss[] {
  const standing = new Map<string, Standing>();
  const flat: Standing = {
    plate: plates[0],
    at: ([x, y], z) => [x, y, z],
    normal: [0, 0, 1],
    way: ([x, y]) => [x, y, 0],
  };
  standing.set(plates[0].id, flat);
  const queue = [flat];
  for (let here = queue.shift(); here !== undefined; here = queue.shift()) {
    for (const edge of here.plate.edges) {
      if (lastSeams.includes(edge.seam)) continue;
      const next = plates.find(({ id, edges }) => !standing.has(id) && edges.some(({ seam }) => seam === edge.seam));
      if (next === undefined) continue;
      const placed = setAgainst(here, edge, next);
      standing.set(next.id, placed);
      queue.push(placed);
    }
  }
  const seams = [...new Set(plates.flatMap(({ edges }) => edges.map(({ seam }) => seam)))];
  return seams.flatMap((seam) => {
    const [a, b] = [...standing.values()].filter(({ plate }) => plate.edges.some((edge) => edge.seam === seam));
    return b === undefined ? [] : [missOf(a, b, seam)];
  });
}

function setAgainst(here: Standing, edge: PlateEdge, plate: Plate): Standing {
  const own = edgeOf(plate, edge.seam);
  const turn = edge.bevelRad + own.bevelRad;
  const start = here.at(here.plate.face[edge.to], 0);
  const along = scaled(here.way(unit2(here.plate.face[edge.from], here.plate.face[edge.to])), -1);
  const outward = cross(here.normal, along);
  const inward = plus(scaled(outward, Math.cos(turn)), scaled(here.normal, -Math.sin(turn)));
  const normal = plus(scaled(here.normal, Math.cos(turn)), scaled(outward, Math.sin(turn)));
  const [ux, uy] = unit2(plate.face[own.from], plate.face[own.to]);
  const [cx, cy] = plate.face[own.from];
  const way = ([x, y]: Pair): Point => plus(scaled(along, ux * x + uy * y), scaled(inward, ux * y - uy * x));
  return {
    plate,
    normal,
    way,
    at: ([x, y], z) => plus(plus(start, way([x - cx, y - cy])), scaled(normal, z)),
  };
}

function missOf(a: Standing, b: Standing, seam: string): Miss {
  const [edgeA, edgeB] = [edgeOf(a.plate, seam), edgeOf(b.plate, seam)];
  const outward = ({ plate, way }: Standing, { from, to }: PlateEdge): Point => {
    const [ux, uy] = unit2(plate.face[from], plate.face[to]);
    return way([uy, -ux]);
  };
  const [outA, outB] = [outward(a, edgeA), outward(b, edgeB)];
  // A lack x of A and y of B opens the way x outA - y outB; their sum is what both lack.
  const lack = (way: Point): number => (2 * dot(way, minus(outA, outB))) / dot(minus(outA, outB), minus(outA, outB));
  let [gapMm, apartMm] = [0, 0];
  for (const [cornersA, cornersB, height] of [
    [a.plate.face, b.plate.face, 0],
    [backOf(a.plate), backOf(b.plate), -1],
  ] as const) {
    for (const [i, j] of [
      [edgeA.from, edgeB.to],
      [edgeA.to, edgeB.from],
    ]) {
      const way = minus(
        b.at(cornersB[j], height * b.plate.thicknessMm),
        a.at(cornersA[i], height * a.plate.thicknessMm),
      );
      if (Math.abs(lack(way)) > Math.abs(gapMm)) gapMm = lack(way);
      apartMm = Math.max(apartMm, Math.hypot(...way));
    }
  }
  return { seam, gapMm, apartMm };
}

function edgeOf(plate: Plate, seam: string): PlateEdge {
  const edge = plate.edges.find((candidate) => candidate.seam === seam);
  if (edge === undefined) throw new Error(`plate ${plate.id} has no edge ${seam}`);
  return edge;
}

function unit2(p: Pair, q: Pair): Pair {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
}

const plus = (p: Point, q: Point): Point => [p[0] + q[0], p[1] + q[1], p[2] + q[2]];
const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const scaled = (p: Point, s: number): Point => [s * p[0], s * p[1], s * p[2]];
const dot = (p: Point, q: Point): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Point, q: Point): Point => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];
