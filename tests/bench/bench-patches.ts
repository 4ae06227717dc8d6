import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { readTestObj } from '../support/read-test-obj.ts';
import { objText } from './obj-text.ts';
import { ontoSphere, splitTriangles } from './split-triangles.ts';

/** A surface to lay flat, with the files another program reads it from. */
export interface BenchPatch {
  readonly name: string;
  readonly mesh: Mesh;
  /** Edges to cut, pairs of vertices. */
  readonly seams: readonly (readonly [number, number])[];
  readonly objPath: string;
  readonly seamPath?: string;
}

const FOLDER = new URL('../reference/flatten/', import.meta.url);

/** Energies the reference program found when the patches were made (SOURCES.md beside them); 4 is an isometry. */
export const PUBLISHED_ENERGY: Readonly<Record<string, number>> = {
  'cylinder120-500': 4,
  'cylinder120-2k': 4,
  'frustum360-500': 4,
  'frustum360-2k': 4,
  'annulus-frustum-2k': 4.553204,
  'hemisphere-500': 4.145927,
  'hemisphere-2k': 4.141877,
  'hemisphere-10k': 4.140774,
  'hemisphere-gores4-2k': 4.00436,
  'hemisphere-darts4-2k': 4.004425,
  'cap30-2k': 4.001599,
  'cap45-2k': 4.0082,
  'spot-flank': 4.706108,
  'mask-1k': 4.088615,
  'mask-5k': 4.093245,
  'mask-collapsed-1k': 4.0899,
};

/** One of the patches kept in tests/reference/flatten. */
export function referencePatch(name: string): BenchPatch {
  const obj = new URL(`${name}.obj`, FOLDER);
  const seam = new URL(`${name}.seam`, FOLDER);
  const seamPath = existsSync(seam) ? fileURLToPath(seam) : undefined;
  return {
    name,
    mesh: readTestObj(obj),
    seams: seamPath === undefined ? [] : readSeams(seamPath),
    objPath: fileURLToPath(obj),
    ...(seamPath === undefined ? {} : { seamPath }),
  };
}

function readSeams(path: string): [number, number][] {
  const numbers = readFileSync(path, 'utf8').trim().split(/\s+/).map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i], numbers[2 * i + 1]]);
}

/** A reference patch with every triangle parted into `parts` squared; a hemisphere stays round. */
export function splitPatch(name: string, parts: number): Mesh {
  const { mesh } = referencePatch(name);
  if (parts === 1) return mesh;
  const split = splitTriangles(mesh, parts);
  return name.startsWith('hemisphere') ? ontoSphere(split, HEMISPHERE_RADIUS) : split;
}

/** The reference hemispheres stand on z = 0 round the origin, mm. */
const HEMISPHERE_RADIUS = 100;

/** Files for other programs, gone when the process ends. */
export class BenchFolder {
  readonly #path = mkdtempSync(join(tmpdir(), 'foamloft-bench-'));

  constructor() {
    process.on('exit', () => rmSync(this.#path, { recursive: true, force: true }));
  }

  /** The mesh written to the last digit, so that both sides lay the same surface flat. */
  patchOf(name: string, mesh: Mesh): BenchPatch {
    const objPath = join(this.#path, `${name}.obj`);
    writeFileSync(objPath, objText(mesh));
    return { name, mesh, seams: [], objPath };
  }
}
