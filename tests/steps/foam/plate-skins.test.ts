import { describe, expect, it } from 'vitest';
import { foamId } from '../../../src/base/ids.ts';
import { dot3, length3, pointAt3, rad, sub3 } from '../../../src/geom/vec.ts';
import type { FoamInput } from '../../../src/steps/foam/make-foam-pieces.ts';
import { plateSkins, type PlateSkins } from '../../../src/steps/foam/plate-skins.ts';
import { makeShellLayer } from '../../../src/steps/shell/make-shell-layer.ts';
import type { SeamSetting } from '../../../src/model/seams.ts';
import { boxMesh } from '../../support/meshes.ts';
import { BOX_EDGES, foamInput, foamOf, hingedFlat, hingeMesh, partedAlong } from './support.ts';

/** Skins of two panels on a fold, of these thicknesses. */
function skinsOf(fold: number, sheetsMm: readonly [number, number], settings: readonly SeamSetting[] = []) {
  const parted = partedAlong(hingeMesh(fold), [[0, 1]], { thicknessMm: sheetsMm[0] }, settings);
  const { mesh, layer, patches, chains } = parted;
  const shells = sheetsMm.map((thicknessMm, i) =>
    makeShellLayer(mesh, { ...layer, backMm: -thicknessMm, thicknessMm, foam: foamId(`foam-${i}`) }),
  );
  const flats = patches.map((patch, i) => hingedFlat(patch, shells[i].neutralPositions));
  const change: Partial<FoamInput> = { shells, flats };
  const { pieces } = foamOf(parted, change);
  const skins = pieces.map((piece, i) => plateSkins(patches[i], piece, shells[i], new Set([chains[0].id])));
  /** Where the vertex of the mesh stands on a skin of a panel. */
  const at = (panel: number, skin: keyof PlateSkins, v: number) =>
    pointAt3(skins[panel][skin], patches[panel].meshVertices.indexOf(v));
  return { at, skins, patches };
}

describe('the skins of a piece set up on the prop', () => {
  it.each([60, 90, 120, -75])('of two thicknesses touch along both edges of the cut at %i degrees', (foldDeg) => {
    const { at } = skinsOf(rad(foldDeg), [6, 10]);
    for (const v of [0, 1])
      for (const skin of ['face', 'back'] as const)
        expect(length3(sub3(at(0, skin, v), at(1, skin, v)))).toBeLessThan(1e-9);
  });

  it('of a panel that stands on another end on its inner side, and the other is flush with them', () => {
    const rebate: SeamSetting = { edge: [0, 1], kind: 'rebate', allowanceMm: 0, standFace: 1 };
    const { at } = skinsOf(rad(90), [6, 10], [rebate]);
    // Outward of the first panel, whose face goes through the seam on the sculpt, and of the second.
    const [first, second] = [-1, 1].map((side) => ({ x: side * Math.SQRT1_2, y: 0, z: Math.SQRT1_2 }));
    for (const v of [0, 1]) {
      const onSculpt = { x: 0, y: v === 0 ? 0 : 100, z: 0 };
      for (const skin of ['face', 'back'] as const) {
        expect(dot3(sub3(at(1, skin, v), onSculpt), first)).toBeCloseTo(-6, 9);
        expect(dot3(sub3(at(0, skin, v), onSculpt), second)).toBeCloseTo(0, 9);
      }
    }
  });

  it('are those of the sheet where every edge is cut on the plane that halves its fold', () => {
    const parted = partedAlong(boxMesh(100, 80, 60), BOX_EDGES, { thicknessMm: 8 });
    const { pieces } = foamOf(parted, foamInput(parted));
    const { layer, patches, chains } = parted;
    pieces.forEach((piece) => {
      const { face, back } = plateSkins(patches[piece.patch], piece, layer, new Set(chains.map(({ id }) => id)));
      patches[piece.patch].meshVertices.forEach((v, i) => {
        expect(length3(sub3(pointAt3(face, i), pointAt3(layer.facePositions, v)))).toBeLessThan(1e-9);
        expect(length3(sub3(pointAt3(back, i), pointAt3(layer.backPositions, v)))).toBeLessThan(1e-9);
      });
    });
  });
});
