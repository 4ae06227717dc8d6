import { QUIET_WORK } from '../../../src/base/work.ts';
import type { Result } from '../../../src/base/result.ts';
import type { SourceModel } from '../../../src/model/source-model.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { expectOk } from '../../support/expect-ok.ts';

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Reads a model from text; the ending of the name is .obj when left out. */
export const readText = (text: string, fileName = 'test.obj'): Promise<Result<SourceModel>> =>
  readModel(bytesOf(text), fileName, QUIET_WORK);

export const modelOf = async (text: string, fileName?: string): Promise<SourceModel> =>
  expectOk(await readText(text, fileName));

/** Polygons of a model as lists of vertices. */
export const facesOf = (model: SourceModel): number[][] =>
  Array.from({ length: model.faceNumber.length }, (_, f) =>
    Array.from(model.faceVertices.subarray(model.faceStarts[f], model.faceStarts[f + 1])),
  );

/** A binary STL of facets given as nine numbers each. */
export function binaryStl(facets: readonly (readonly number[])[], header = '', promised = facets.length): Uint8Array {
  const bytes = new Uint8Array(84 + 50 * facets.length);
  bytes.set(bytesOf(header).subarray(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, promised, true);
  for (const [f, facet] of facets.entries()) {
    for (const [i, value] of facet.entries()) view.setFloat32(84 + 50 * f + 12 + 4 * i, value, true);
  }
  return bytes;
}

/** An ASCII STL of facets given as nine numbers each. */
export const asciiStl = (facets: readonly (readonly number[])[], name = 'test'): string =>
  [
    `solid ${name}`,
    ...facets.flatMap((facet) => [
      ' facet normal 0 0 0',
      '  outer loop',
      ...[0, 3, 6].map((k) => `   vertex ${facet.slice(k, k + 3).join(' ')}`),
      '  endloop',
      ' endfacet',
    ]),
    `endsolid ${name}`,
    '',
  ].join('\n');

/** An OBJ of points and faces counted from 0. */
export const objOf = (points: readonly (readonly number[])[], faces: readonly (readonly number[])[]): string =>
  [...points.map((p) => `v ${p.join(' ')}`), ...faces.map((f) => `f ${f.map((v) => v + 1).join(' ')}`), ''].join('\n');

/** A tetrahedron with outward faces, as points and faces from 0. */
export const TETRA_POINTS = [
  [0, 0, 0],
  [10, 0, 0],
  [0, 10, 0],
  [0, 0, 10],
] as const;
export const TETRA_FACES = [
  [0, 2, 1],
  [0, 1, 3],
  [0, 3, 2],
  [1, 2, 3],
] as const;

export const TETRA_FACETS = TETRA_FACES.map((face) => face.flatMap((v) => [...TETRA_POINTS[v]]));
