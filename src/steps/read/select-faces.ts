import type { SourceModel } from '../../model/source-model.ts';

/**
 * The model with some of its polygons only. Vertices that no polygon uses any more go; numbers of the file stay what they were.
 * @param isKept one flag per polygon, 1 to keep; at least one must be kept.
 */
export function selectFaces(model: SourceModel, isKept: Uint8Array): SourceModel {
  const faces = rowsWhere(isKept);
  const newFace = new Int32Array(isKept.length).fill(-1);
  for (let f = 0; f < faces.length; f += 1) newFace[faces[f]] = f;
  const isUsed = new Uint8Array(model.fileVertex.length);
  const faceStarts = new Uint32Array(faces.length + 1);
  for (let f = 0; f < faces.length; f += 1) {
    const [from, to] = [model.faceStarts[faces[f]], model.faceStarts[faces[f] + 1]];
    faceStarts[f + 1] = faceStarts[f] + to - from;
    for (let i = from; i < to; i += 1) isUsed[model.faceVertices[i]] = 1;
  }
  const vertices = rowsWhere(isUsed);
  const newVertex = new Int32Array(isUsed.length).fill(-1);
  for (let v = 0; v < vertices.length; v += 1) newVertex[vertices[v]] = v;
  const faceVertices = new Uint32Array(faceStarts[faces.length]);
  for (let f = 0; f < faces.length; f += 1) {
    const from = model.faceStarts[faces[f]];
    for (let i = faceStarts[f]; i < faceStarts[f + 1]; i += 1) {
      faceVertices[i] = newVertex[model.faceVertices[from + i - faceStarts[f]]];
    }
  }
  const rows = rowsWhere(new Uint8Array(model.faceOfTriangle.length).map((_, t) => isKept[model.faceOfTriangle[t]]));
  return {
    ...model,
    positions: tripleRows(model.positions, vertices),
    colours: model.colours === null ? null : tripleRows(model.colours, vertices),
    fileVertex: vertices.map((v) => model.fileVertex[v]),
    vertexOfFile: model.vertexOfFile.map((v) => (v < 0 ? -1 : newVertex[v])),
    faceStarts,
    faceVertices,
    faceNumber: faces.map((f) => model.faceNumber[f]),
    groupOfFace: new Int32Array(faces).map((f) => model.groupOfFace[f]),
    triangles: new Uint32Array(3 * rows.length).map(
      (_, i) => newVertex[model.triangles[3 * rows[Math.floor(i / 3)] + (i % 3)]],
    ),
    faceOfTriangle: rows.map((t) => newFace[model.faceOfTriangle[t]]),
  };
}

function rowsWhere(flags: Uint8Array): Uint32Array {
  let count = 0;
  for (const flag of flags) count += flag;
  const rows = new Uint32Array(count);
  let at = 0;
  for (let i = 0; i < flags.length; i += 1) if (flags[i] === 1) rows[at++] = i;
  return rows;
}

const tripleRows = (triples: Float64Array, rows: Uint32Array): Float64Array =>
  new Float64Array(3 * rows.length).map((_, i) => triples[3 * rows[Math.floor(i / 3)] + (i % 3)]);
