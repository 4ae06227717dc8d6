import { describe, expect, it } from 'vitest';
import { FOAM_RULES } from '../../src/model/foam-settings.ts';
import { groovedSurfaces } from '../../src/pipeline/grooved-surface.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { makeShellLayer } from '../../src/steps/shell/make-shell-layer.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { foamId, layerId } from '../../src/base/ids.ts';
import { meshOf } from '../support/meshes.ts';

describe('the ground of a piece', () => {
  /** Strips 40 mm wide and 60 mm long, each turned from the one before. */
  const folded = (...turnsDeg: number[]) => {
    let [x, z, lean] = [0, 0, 0];
    const rows = [[x, z]];
    for (const turn of [0, ...turnsDeg]) {
      lean += (turn * Math.PI) / 180;
      [x, z] = [x + 40 * Math.cos(lean), z - 40 * Math.sin(lean)];
      rows.push([x, z]);
    }
    const mesh = meshOf(
      rows.flatMap(([a, b]) => [[a, 0, b] as const, [a, 60, b] as const]),
      Array.from({ length: rows.length - 1 }, (_, i) => [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1]),
    );
    const isSeam = new Uint8Array(topologyOf(mesh).edgeCount);
    const [patch] = cutPatches(mesh, { isSeam, count: 0 }, mesh.positions).patches;
    const shell = makeShellLayer(mesh, {
      layer: layerId('layer'),
      foam: foamId('foam'),
      thicknessMm: 6,
      neutralFraction: 0.5,
      modelIs: 'face',
      offMm: 0,
    });
    return { shell, patch, ground: groovedSurfaces(mesh, { shell, rules: FOAM_RULES, pieceSettings: [] })(patch) };
  };

  it('is the neutral surface where nothing is sharp', () => {
    const { shell, ground } = folded(15, 15);
    expect(ground.positions).toBe(shell.neutralPositions);
    expect(ground.corners).toBeUndefined();
  });

  it('is under the face, half a hinge deep, where it is folded one way', () => {
    const { ground } = folded(60);
    expect(ground.corners).toBeUndefined();
    // The first strip is level, its face at 0.
    expect(ground.positions[2]).toBeCloseTo(-FOAM_RULES.hingeMm / 2, 9);
  });

  it('has panels of their own size where folds go both ways', () => {
    const { patch, ground } = folded(60, -60);
    expect(ground.corners).toHaveLength(9 * 6);
    expect(ground.lengthsOf?.(patch.loops[0].slice(0, 2))).toHaveLength(1);
  });
});
