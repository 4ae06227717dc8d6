import { describe, expect, it } from 'vitest';
import { inSheets, outcomeOf } from '../../support/run-solid.ts';
import { numbersOf, rowOf } from './cases.ts';
import type { Solid } from './polygon-solids.ts';

/**
 * The tapered blade of the handbook, built up of 2 mm sheets, through the chain: the sheets of a wall lie one on the other, and where a flat
 * panel meets its neighbours at both edges each lies inside the one before by the same step. The panel is the base of a roof whose other two
 * panels lean by twice the blade's slope: its edges are then cut on the blade's own slope, which halves that.
 *
 *        / \
 *       /_,_\        the dashed lines rise `rise` over the half width: the slope of the blade
 *      /_,   ,_\
 *     ----60----
 */
const { inputs, expected } = numbersOf('L6');
const LENGTH = 100;
const DEG = 180 / Math.PI;

function roof(): Solid {
  const half = inputs.half_width;
  const top = half * Math.tan(2 * Math.atan(inputs.rise / half));
  const profile = [
    [-half, 0],
    [half, 0],
    [0, top],
  ];
  return {
    corners: [0, LENGTH].flatMap((y) => profile.map(([x, z]) => [x, y, z] as const)),
    faces: [0, 1, 2].map((i) => [3 + i, 3 + ((i + 1) % 3), (i + 1) % 3, i]),
    seams: [0, 1, 2].map((i): [number, number] => [i, 3 + i]),
  };
}

/** Half width of a panel's face and the lean of its edges, for each of so many sheets, the outermost first. */
async function layersOf(count: number) {
  const outcome = await outcomeOf(roof(), (part) =>
    inSheets(part, ...Array.from({ length: count }, () => inputs.layer)),
  );
  return outcome.layers.map(({ pieces, seams }) => {
    const base = pieces?.find(({ patch }) => outcome.cut?.patches[patch].meshTriangles.includes(0));
    if (base === undefined) throw new Error('no piece of the base');
    const joined = new Set((seams ?? []).filter(({ kind }) => kind !== 'open').map(({ id }) => id as string));
    const edges = base.edges.filter(({ seam }) => joined.has(seam));
    return { halfWidth: base.areaMm2 / LENGTH / 2, bevelsDeg: edges.flatMap(({ bevelDeg }) => [...bevelDeg]) };
  });
}

describe('the tapered blade L6', () => {
  const slope = Math.atan(inputs.rise / inputs.half_width) * DEG;
  const halfWidths = rowOf('L6', 'expected', 'layer_half_widths_bottom_face');

  it('has as many layers as its rise has sheets, and the slope that is published', () => {
    expect(inputs.rise / inputs.layer).toBe(expected.layers);
    expect(slope).toBeCloseTo(expected.slope_from_sheet_deg, 6);
    expect(90 - slope).toBeCloseTo(expected.cut_tilt_from_square_deg, 6);
  });

  it('comes out of the chain layer by layer, each a step inside the one below, all cut on the slope', async () => {
    const layers = await layersOf(expected.layers);
    expect(layers).toHaveLength(expected.layers);
    for (const [i, { halfWidth, bevelsDeg }] of layers.entries()) {
      expect(Math.abs(halfWidth - halfWidths[i])).toBeLessThan(1e-6);
      if (i > 0) expect(Math.abs(layers[i - 1].halfWidth - halfWidth - expected.step)).toBeLessThan(1e-6);
      expect(bevelsDeg.length).toBeGreaterThan(0);
      for (const bevel of bevelsDeg) expect(Math.abs(bevel - (90 - slope))).toBeLessThan(1e-9);
    }
  });
});
