import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { evened, lay, plain, type Wish } from './flat-outline.ts';
import { referencePatch } from './flatten-support.ts';
import { capMesh } from './hostile-meshes.ts';

/**
 * An uncut cap of half-angle x cannot lie flat with a ratio of greatest to least scale under x / sin x (J. Milnor, "A Problem in
 * Cartography", Amer. Math. Monthly 76(10), 1969). On a mesh the scale of a triangle is a mean over it, so a cap of triangles `step`
 * radians wide may undercut the bound by about step².
 */
const CAPS: readonly (readonly [string, () => Mesh, number, number])[] = [
  ['cap30-2k', () => referencePatch('cap30-2k'), 30, 18],
  ['cap45-2k', () => referencePatch('cap45-2k'), 45, 18],
  ['30 degrees, 12 rings', () => capMesh(rad(30), 12, 36), 30, 12],
  ['30 degrees, 24 rings', () => capMesh(rad(30), 24, 72), 30, 24],
  ['45 degrees, 12 rings', () => capMesh(rad(45), 12, 36), 45, 12],
  ['45 degrees, 24 rings', () => capMesh(rad(45), 24, 72), 45, 24],
  ['hemisphere-2k', () => referencePatch('hemisphere-2k'), 90, 18],
];

/** Share by which the ratio reached may lie over the bound: at 30 and 45 degrees, and at 90. */
const OVER = { small: 0.03, hemisphere: 0.05 };

describe.each([
  ['plain', plain],
  ['evened out', evened],
  ['evened out, squash as cheap as stretch', (() => ({ evenOut: true })) satisfies Wish],
])("Milnor's bound, %s", (_, wish) => {
  it.each(CAPS)('is neared but never undercut: %s', async (_name, make, degrees, rings) => {
    const x = rad(degrees);
    const bound = x / Math.sin(x);
    const { piece } = await lay(make(), wish);
    const ratio = Math.max(...piece.major) / Math.min(...piece.minor);
    expect(ratio / bound).toBeGreaterThan(1 - (x / rings) ** 2);
    expect(ratio / bound).toBeLessThan(1 + (degrees < 90 ? OVER.small : OVER.hemisphere));
  });
});

it('comes nearer to the bound where the worst is evened out', async () => {
  for (const degrees of [30, 45, 90]) {
    const [mean, worst] = [plain, (): { evenOut: true } => ({ evenOut: true })].map(async (wish) => {
      const { piece } = await lay(capMesh(rad(degrees), 20, 60), wish);
      return Math.max(...piece.major) / Math.min(...piece.minor);
    });
    expect(await worst).toBeLessThan(await mean);
  }
});
