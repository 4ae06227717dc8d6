import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { splitTriangles } from '../../bench/split-triangles.ts';
import { IS_LONG } from '../../support/long.ts';
import { lay, outlineGap, WISHES } from './flat-outline.ts';
import { referencePatch } from './flatten-support.ts';
import { movedAndTurned, renumbered, type Remade } from './remade-mesh.ts';

it.each(WISHES.slice(0, IS_LONG ? 2 : 1))(
  'the outline of 20,000 triangles is the same to a thousandth of a millimetre wherever it stands and however it is numbered, %s',
  async (_, wish) => {
    const mesh = splitTriangles(referencePatch('mask-5k'), 2);
    expect(mesh.triangles.length / 3).toBeGreaterThan(20_000);
    const first = await lay(mesh, wish);
    expect(first.piece.solve.converged).toBe(true);
    const turned = movedAndTurned(mesh, 0.7, [-900, 400, 1300]);
    const again = renumbered(turned.mesh, seededRandom(17));
    const remade: Remade = { mesh: again.mesh, numberNow: turned.numberNow.map((v) => again.numberNow[v]) };
    expect(outlineGap(first, await lay(remade.mesh, wish), remade)).toBeLessThan(1e-3);
  },
);
