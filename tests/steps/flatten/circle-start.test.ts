import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { seededRandom } from '../../../src/base/random.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { circleStart } from '../../../src/steps/flatten/circle-start.ts';
import { flatSystem } from '../../../src/steps/flatten/flat-system.ts';
import { countFlips } from '../../../src/steps/flatten/flips.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { meshOf } from '../../support/meshes.ts';
import { onePatch, referencePatch } from './flatten-support.ts';
import { needleDisc } from './needle-disc.ts';

async function started(mesh: Mesh) {
  const patch = onePatch(mesh);
  const rest = restShapes(patch, mesh.positions);
  const system = flatSystem(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles));
  const flat = await circleStart(patch, system, QUIET_WORK);
  return { patch, rest, flat };
}

describe('circleStart', () => {
  it.each(['hemisphere-500', 'mask-1k', 'mask-collapsed-1k', 'annulus-frustum-2k', 'spot-flank'])(
    'leaves %s without a flip',
    async (name) => {
      const { patch, flat } = await started(referencePatch(name));
      expect(flat === null ? -1 : countFlips(patch.triangles, flat)).toBe(0);
    },
  );

  it('puts the border on a circle of the area of the patch', async () => {
    const { patch, rest, flat } = await started(referencePatch('hemisphere-500'));
    const radius = Math.sqrt(rest.totalArea / Math.PI);
    for (const v of patch.loops[0])
      expect(Math.hypot(flat?.[2 * v] ?? 0, flat?.[2 * v + 1] ?? 0)).toBeCloseTo(radius, 9);
  });

  it('leaves no flip in random discs with needles', async () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const { patch, flat } = await started(needleDisc(seededRandom(seed)));
      expect(flat === null ? -1 : countFlips(patch.triangles, flat), `seed ${seed}`).toBe(0);
    }
  });

  it('gives a finger forty times as long as thick room to its tip', async () => {
    const { patch, flat } = await started(finger(16, 200, 800));
    expect(flat === null ? -1 : countFlips(patch.triangles, flat)).toBe(0);
  });
});

/** A tube of radius 10 closed at its upper end. */
function finger(sides: number, rings: number, length: number): Mesh {
  const points: [number, number, number][] = [];
  for (let j = 0; j <= rings; j += 1) {
    for (let i = 0; i < sides; i += 1) {
      const angle = (2 * Math.PI * i) / sides;
      points.push([10 * Math.cos(angle), 10 * Math.sin(angle), (length * j) / rings]);
    }
  }
  points.push([0, 0, length + 5]);
  const faces: number[][] = [];
  for (let j = 0; j <= rings; j += 1) {
    for (let i = 0; i < sides; i += 1) {
      const next = (i + 1) % sides;
      if (j === rings) faces.push([j * sides + i, j * sides + next, points.length - 1]);
      else faces.push([j * sides + i, j * sides + next, (j + 1) * sides + next, (j + 1) * sides + i]);
    }
  }
  return meshOf(points, faces);
}
