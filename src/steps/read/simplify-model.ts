import type { SourceModel } from '../../model/source-model.ts';

/** Polygons of the simpler model: corners, triangles and numbers in the file. */
interface Polygon {
  readonly number: number;
  readonly corners: readonly number[];
  readonly triangles: readonly number[];
}

/**
 * A model with some of its triangles only, their corners brought onto other corners: what a simplified surface is in the words of its file. Corners and
 * polygons keep their numbers; those that are gone leave theirs unused. What is left of one polygon stays one, as far as it hangs together; the rest
 * of it comes after all others, as what repairs add does.
 * @param kept    triangles that are left, ascending.
 * @param corners three vertices of the model for each of them.
 */
export function simplifiedModel(model: SourceModel, kept: Uint32Array, corners: Uint32Array): SourceModel {
  const isUsed = new Uint8Array(model.fileVertex.length);
  for (const v of corners) isUsed[v] = 1;
  const vertices = [...isUsed.keys()].filter((v) => isUsed[v] === 1);
  const newVertex = new Int32Array(isUsed.length).fill(-1);
  vertices.forEach((v, i) => (newVertex[v] = i));
  const { polygons, fileFaceCount } = polygonsOf(model, kept, corners);
  const faceStarts = new Uint32Array(polygons.length + 1);
  polygons.forEach((polygon, f) => (faceStarts[f + 1] = faceStarts[f] + polygon.corners.length));
  const rows = polygons.flatMap(({ triangles }, f) => triangles.map((i) => [f, i] as const));
  const groupOf = new Map(Array.from(model.faceNumber, (number, f) => [number, model.groupOfFace[f]]));
  const faceOfRow = (i: number): number => model.faceNumber[model.faceOfTriangle[kept[i]]];
  return {
    ...model,
    positions: triples(model.positions, vertices),
    colours: model.colours === null ? null : triples(model.colours, vertices),
    fileVertex: Uint32Array.from(vertices, (v) => model.fileVertex[v]),
    vertexOfFile: model.vertexOfFile.map((v) => (v < 0 ? -1 : newVertex[v])),
    faceStarts,
    faceVertices: Uint32Array.from(
      polygons.flatMap((polygon) => polygon.corners),
      (v) => newVertex[v],
    ),
    faceNumber: Uint32Array.from(polygons, ({ number }) => number),
    fileFaceCount,
    groupOfFace: Int32Array.from(polygons, ({ triangles }) => groupOf.get(faceOfRow(triangles[0])) ?? -1),
    triangles: Uint32Array.from(
      rows.flatMap(([, i]) => [0, 1, 2].map((k) => corners[3 * i + k])),
      (v) => newVertex[v],
    ),
    faceOfTriangle: Uint32Array.from(rows, ([f]) => f),
  };
}

function polygonsOf(
  model: SourceModel,
  kept: Uint32Array,
  corners: Uint32Array,
): { readonly polygons: readonly Polygon[]; readonly fileFaceCount: number } {
  const byFace = new Map<number, number[]>();
  kept.forEach((t, i) => {
    const f = model.faceOfTriangle[t];
    const list = byFace.get(f);
    if (list === undefined) byFace.set(f, [i]);
    else list.push(i);
  });
  const polygons: Polygon[] = [];
  const later: Omit<Polygon, 'number'>[] = [];
  for (const f of [...byFace.keys()].sort((a, b) => a - b)) {
    const [first, ...others] = partsOf(byFace.get(f) ?? [], corners);
    polygons.push({ number: model.faceNumber[f], ...first });
    later.push(...others);
  }
  later.forEach((part, i) => polygons.push({ number: model.fileFaceCount + i, ...part }));
  return { polygons, fileFaceCount: model.fileFaceCount + later.length };
}

/** The triangles of one polygon as those that hang together across an edge, each with the ring of corners round it. */
function partsOf(triangles: readonly number[], corners: Uint32Array): Omit<Polygon, 'number'>[] {
  const open = new Set(triangles);
  const parts: Omit<Polygon, 'number'>[] = [];
  for (const first of triangles) {
    if (!open.delete(first)) continue;
    const part = [first];
    for (const t of part) {
      for (const other of [...open]) {
        if (!shareEdge(corners, t, other)) continue;
        open.delete(other);
        part.push(other);
      }
    }
    part.sort((a, b) => a - b);
    const ring = ringOf(part, corners);
    if (ring !== null) parts.push({ corners: ring, triangles: part });
    else for (const t of part) parts.push({ corners: [...corners.subarray(3 * t, 3 * t + 3)], triangles: [t] });
  }
  return parts;
}

const sidesOf = (corners: Uint32Array, t: number): (readonly [number, number])[] =>
  [0, 1, 2].map((k) => [corners[3 * t + k], corners[3 * t + ((k + 1) % 3)]] as const);

const shareEdge = (corners: Uint32Array, t: number, other: number): boolean =>
  sidesOf(corners, t).some(([a, b]) => sidesOf(corners, other).some(([c, d]) => a === d && b === c));

/** The corners round some triangles, from the lowest on; null where they do not lie in one ring. */
function ringOf(triangles: readonly number[], corners: Uint32Array): number[] | null {
  const sides = triangles.flatMap((t) => sidesOf(corners, t));
  const rim = sides.filter(([a, b]) => !sides.some(([c, d]) => a === d && b === c));
  const next = new Map(rim);
  if (next.size !== rim.length) return null;
  const start = Math.min(...next.keys());
  const ring = [start];
  for (let v = next.get(start); v !== undefined && v !== start && ring.length <= rim.length; v = next.get(v))
    ring.push(v);
  return ring.length === rim.length ? ring : null;
}

const triples = (values: Float64Array, rows: readonly number[]): Float64Array =>
  Float64Array.from({ length: 3 * rows.length }, (_, i) => values[3 * rows[Math.floor(i / 3)] + (i % 3)]);
