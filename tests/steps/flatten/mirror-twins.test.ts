import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { meshOf } from '../../support/meshes.ts';
import { lay, outlineGap, WISHES } from './flat-outline.ts';
import { referencePatch } from './flatten-support.ts';
import { needleDisc } from './needle-disc.ts';
import { mirrored, type Remade } from './remade-mesh.ts';
import { referencePieces, samplePieces } from './trial-patches.ts';

/** Greatest gap allowed between an outline and its twin's mirror image, on a piece 300 mm across. */
const GAP_MM = 1e-6;

const PATCHES: readonly (readonly [string, Mesh])[] = [
  ...['mask-1k', 'cap45-2k', 'spot-flank', 'annulus-frustum-2k'].map((name) => [name, referencePatch(name)] as const),
  ['a gore of the hemisphere', referencePieces('hemisphere-gores4-2k')[0]],
  ['the hemisphere with four darts', referencePieces('hemisphere-darts4-2k')[0]],
  ...['helm', 'shoulder-plate'].flatMap((name) =>
    samplePieces(name).map((mesh, i) => [`piece ${i} of the ${name}`, mesh] as const),
  ),
  ...[1021, 1022, 1023].map((seed) => [`needle disc ${seed}`, needleDisc(seededRandom(seed))] as const),
];

describe.each(WISHES)('mirror twins, %s', (_, wish) => {
  it.each(PATCHES)('have outlines that mirror each other: %s', async (_name, mesh) => {
    const twin = mirrored(mesh);
    const gap = outlineGap(await lay(mesh, wish), await lay(twin.mesh, wish), twin, { isMirrored: true });
    expect(gap).toBeLessThan(GAP_MM);
  });

  it.each([
    ['without eyes', false],
    ['with eyes', true],
  ])('are the two halves of one mask, %s', async (_name, hasEyes) => {
    const { mesh, across } = symmetricMask(hasEyes);
    const mask = await lay(mesh, wish);
    expect(mask.piece.solve.method).toBe('minimised');
    expect(outlineGap(mask, mask, across, { isMirrored: true })).toBeLessThan(GAP_MM);
  });
});

/**
 * A mask 200 mm wide with a brow and a nose, the same left and right to the last bit, its diagonals mirrored too, with or without two eyes
 * cut out; and which corner lies across from each.
 */
function symmetricMask(hasEyes: boolean): { readonly mesh: Mesh; readonly across: Remade } {
  const [half, rows] = [11, 24];
  const wide = 2 * half + 1;
  const points: [number, number, number][] = [];
  for (let j = 0; j <= rows; j += 1) {
    for (let i = -half; i <= half; i += 1) {
      const [x, y] = [Math.abs(i) / half, (2 * j) / rows - 1];
      const nose = 30 * Math.exp(-40 * x * x - 10 * (y + 0.2) ** 2);
      const brow = 12 * Math.exp(-30 * (y - 0.4) ** 2 - 3 * (x - 0.5) ** 2);
      const depth = 90 * (1 - 0.6 * x * x - 0.3 * y * y) + nose + brow;
      points.push([Math.sign(i) * 100 * x * (1 - 0.15 * y * y), 120 * y, depth]);
    }
  }
  const at = (i: number, j: number): number => j * wide + half + i;
  const isEye = (i: number, j: number): boolean => hasEyes && i >= 3 && i <= 6 && j >= 14 && j <= 16;
  const faces: number[][] = [];
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < half; i += 1) {
      if (isEye(i, j)) continue;
      faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
      faces.push([at(-i - 1, j), at(-i, j), at(-i - 1, j + 1)], [at(-i, j), at(-i, j + 1), at(-i - 1, j + 1)]);
    }
  }
  const used = [...new Set(faces.flat())].sort((a, b) => a - b);
  const number = new Map(used.map((v, i) => [v, i]));
  const numberOf = (v: number): number => number.get(v) ?? -1;
  const mesh = meshOf(
    used.map((v) => points[v]),
    faces.map((face) => face.map(numberOf)),
  );
  const numberNow = Uint32Array.from(used, (v) => numberOf(v - 2 * ((v % wide) - half)));
  return { mesh, across: { mesh, numberNow } };
}
