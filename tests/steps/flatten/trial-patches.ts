import { readFileSync } from 'node:fs';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { readTestObj } from '../../support/read-test-obj.ts';
import { referencePatch } from './flatten-support.ts';
import { meshOfPatch } from './remade-mesh.ts';

/** The pieces of a reference mesh cut along its `.seam` file, each as a mesh of its own. */
export function referencePieces(name: string): Mesh[] {
  const text = readFileSync(new URL(`../../reference/flatten/${name}.seam`, import.meta.url), 'utf8');
  const pairs = text
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number));
  return piecesOf(referencePatch(name), pairs);
}

/** The pieces of a sample cut along its own seams, each as a mesh of its own; the surface is the model's. */
export function samplePieces(name: string): Mesh[] {
  const at = (file: string): URL => new URL(`../../../samples/${file}`, import.meta.url);
  const { edges } = JSON.parse(readFileSync(at(`${name}.seams.json`), 'utf8')) as { edges: number[][] };
  return piecesOf(readTestObj(at(`${name}.obj`)), edges);
}

function piecesOf(mesh: Mesh, pairs: readonly (readonly number[])[]): Mesh[] {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const [v, w] of pairs) isSeam[topology.edgeBetween(v, w)] = 1;
  const { patches } = cutPatches(mesh, { isSeam, count: pairs.length }, mesh.positions);
  return patches.map((patch) => meshOfPatch(patch, mesh.positions));
}
