import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { IS_LONG } from '../../support/long.ts';
import { lay, outlineGap, WISHES } from './flat-outline.ts';
import { referencePatch } from './flatten-support.ts';
import { needleDisc } from './needle-disc.ts';
import { movedAndTurned, renumbered, scaled, type Remade } from './remade-mesh.ts';
import { referencePieces, samplePieces } from './trial-patches.ts';

const PATCHES: readonly (readonly [string, () => Mesh])[] = [
  ['mask-1k', () => referencePatch('mask-1k')],
  ['mask-collapsed-1k', () => referencePatch('mask-collapsed-1k')],
  ['cap45-2k', () => referencePatch('cap45-2k')],
  ['annulus-frustum-2k', () => referencePatch('annulus-frustum-2k')],
  ['frustum360-500', () => referencePatch('frustum360-500')],
  ['spot-flank', () => referencePatch('spot-flank')],
  ['a gore of the hemisphere', () => referencePieces('hemisphere-gores4-2k')[0]],
  ['the hemisphere with four darts', () => referencePieces('hemisphere-darts4-2k')[0]],
];
const PIECES = ['helm', 'shoulder-plate'].flatMap((name) =>
  samplePieces(name).map((mesh, i): readonly [string, () => Mesh] => [`piece ${i} of the ${name}`, () => mesh]),
);

const NEEDLES = [1003, 1004, 1005].map(
  (seed) => [`needle disc ${seed}`, () => needleDisc(seededRandom(seed))] as const,
);

/** Greatest gap allowed between two outlines of one patch, on a piece 300 mm across. */
const GAP_MM = 1e-6;

const REMADE: readonly (readonly [string, number, (mesh: Mesh) => Remade])[] = [
  ['moved and turned', 1, (mesh) => movedAndTurned(mesh, 2.1, [310, -120, 77])],
  ['renumbered', 1, (mesh) => renumbered(mesh, seededRandom(5))],
  ['a hundredth of the size', 0.01, (mesh) => scaled(mesh, 0.01)],
  ['7.3 times the size', 7.3, (mesh) => scaled(mesh, 7.3)],
  ['a thousand times the size', 1000, (mesh) => scaled(mesh, 1000)],
];

/** Every day two of the ways for each patch, which take turns. */
const remadeFor = (turn: number): typeof REMADE =>
  IS_LONG ? REMADE : REMADE.filter((_, i) => (i + turn) % REMADE.length < 2);

describe.each(WISHES)('the outline of a patch, %s', (what, wish) => {
  const patches = [...PATCHES, ...PIECES, ...(what === 'evened out' ? [] : NEEDLES)].map(
    ([name, make], turn) => [name, make, turn] as const,
  );
  it.each(patches)('is the same whatever the place, turn, numbers and size of %s', async (_, make, turn) => {
    const mesh = make();
    const first = await lay(mesh, wish);
    expect(first.piece.solve.converged).toBe(true);
    for (const [how, factor, remake] of remadeFor(turn)) {
      const remade = remake(mesh);
      expect(outlineGap(first, await lay(remade.mesh, wish), remade, { factor }), how).toBeLessThan(GAP_MM);
    }
  });

  it.each(patches.slice(0, IS_LONG ? 12 : 3))('is bit for bit the same when asked for twice: %s', async (_, make) => {
    const [first, again] = [await lay(make(), wish), await lay(make(), wish)];
    for (const figures of ['uv', 'major', 'minor', 'majorAngle'] as const)
      expect(bytesOf(again.piece[figures]).equals(bytesOf(first.piece[figures])), figures).toBe(true);
    expect(again.piece.solve).toEqual(first.piece.solve);
  });
});

const bytesOf = (numbers: Float64Array): Buffer => Buffer.from(numbers.buffer, numbers.byteOffset, numbers.byteLength);
