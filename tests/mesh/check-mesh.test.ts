import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../src/mesh/check-mesh.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { boxMesh, torusMesh } from '../support/meshes.ts';

describe('checkMesh', () => {
  it('passes sound meshes', () => {
    checkMesh(boxMesh(10));
    checkMesh(torusMesh(12, 6, 50, 20));
  });

  it('throws at each broken promise and names it', () => {
    const box = boxMesh(10);
    const broken: readonly (readonly [string, Partial<Mesh>])[] = [
      ['coordinates are no triples', { positions: box.positions.slice(1) }],
      ['corners are no triples', { triangles: box.triangles.slice(1) }],
      ['faces for 12 triangles', { faceOfTriangle: box.faceOfTriangle.slice(1) }],
      ['file numbers for 8 vertices', { fileVertex: box.fileVertex.slice(1) }],
      ['groups for 6 faces', { groupOfFace: box.groupOfFace.slice(1) }],
      ['coordinate 4 is NaN', { positions: box.positions.with(4, NaN) }],
      ['corner 3 is 8', { triangles: box.triangles.with(3, 8) }],
      ['face 2 is 6', { faceOfTriangle: box.faceOfTriangle.with(2, 6) }],
      ['group 0 is 0', { groupOfFace: box.groupOfFace.with(0, 0) }],
      ['vertex of file 1 is 8', { vertexOfFile: box.vertexOfFile.with(1, 8) }],
      ['file number 1 is 1', { vertexOfFile: box.vertexOfFile.with(1, 2) }],
      ['triangle 0 has corners 2 2', { triangles: box.triangles.with(0, 2) }],
    ];
    for (const [text, change] of broken) expect(() => checkMesh({ ...box, ...change })).toThrow(text);
  });
});
