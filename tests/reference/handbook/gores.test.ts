import { beforeAll, describe, expect, it } from 'vitest';
import type { ReportPiece } from '../report-shape.ts';
import { numbersOf, rowOf } from './cases.ts';
import { apart, flatPointsOf, layFlat } from './flat-figures.ts';
import { gore } from './polygon-solids.ts';

/** Steps from pole to pole, so that the handbook's 15 degrees are four of them. */
const ROWS = 48;
/** Half a step, radians: a chord is 2 R sin. */
const X = Math.PI / ROWS / 2;

/** Distance between the two edges of a flat gore at each latitude of the handbook, degrees. */
function widthsAt(piece: ReportPiece, latitudes: readonly number[], columns: number): number[] {
  return latitudes.map((degrees) => {
    const left = 1 + (ROWS / 2 + (degrees * ROWS) / 180 - 1) * (columns + 1);
    return apart(flatPointsOf(piece, left)[0], flatPointsOf(piece, left + columns)[0]);
  });
}

describe('gore of a dome straight across E2', () => {
  const { inputs, expected } = numbersOf('E2');
  const { radius, gores } = inputs;
  let piece: ReportPiece;
  beforeAll(async () => {
    const edge = Math.tan(Math.PI / gores);
    const straight = gore(gores, ROWS, 1, (azimuth, latitude) => {
      const out = radius * Math.cos(latitude);
      return [out, out * Math.sign(azimuth) * edge, radius * Math.sin(latitude)];
    });
    ({
      pieces: [piece],
    } = await layFlat(straight));
  });

  it('is as wide as the handbook says at every latitude', () => {
    const widths = widthsAt(piece, rowOf('E2', 'inputs', 'latitude_deg'), 1);
    // The facets have the width of the round dome at their corners.
    for (const [k, width] of rowOf('E2', 'expected', 'widths').entries())
      expect(Math.abs(widths[k] - width)).toBeLessThan(1e-6);
    // Half a width and the radius of the flat make the radius of the edge.
    expect(Math.abs(Math.hypot(radius, widths[0] / 2) - expected.edge_radius_at_equator)).toBeLessThan(1e-6);
  });

  it('is as long as its chords and has the area of its trapezia', () => {
    const length = apart(flatPointsOf(piece, 0)[0], flatPointsOf(piece, 2 * ROWS - 1)[0]);
    const chord = 2 * radius * Math.sin(X);
    expect(Math.abs(length / (ROWS * chord) - 1)).toBeLessThan(1e-6);
    // Short of pi R by X² / 6.
    expect(Math.abs(length / (Math.PI * radius) - (1 - (X * X) / 6))).toBeLessThan(X ** 4);
    let area = 0;
    for (let j = 0; j < ROWS; j += 1) {
      const [low, high] = [j, j + 1].map(
        (k) => 2 * radius * Math.sin((Math.PI * k) / ROWS) * Math.tan(Math.PI / gores),
      );
      area += (chord * (low + high)) / 2;
    }
    expect(Math.abs(piece.flatAreaMm2 / area - 1)).toBeLessThan(1e-6);
    expect(piece.stretchPct.max).toBeLessThan(1e-6);
  });
});

describe('gore of a ball E1', () => {
  const { inputs, expected } = numbersOf('E1');
  const { radius, gores } = inputs;
  const COLUMNS = 8;
  let piece: ReportPiece;
  beforeAll(async () => {
    const round = gore(gores, ROWS, COLUMNS, (azimuth, latitude) => [
      radius * Math.cos(latitude) * Math.cos(azimuth),
      radius * Math.cos(latitude) * Math.sin(azimuth),
      radius * Math.sin(latitude),
    ]);
    ({
      pieces: [piece],
    } = await layFlat(round));
  });

  /**
   * The handbook lays the middle meridian out at its true length and all widths square to it. Its edges are then longer than on the ball by
   * sqrt(1 + ((pi / n) sin latitude)²), on the mean (pi / n)² / 4: 1.7 % for 12 gores. Least stretch shares this between middle and edges,
   * so every figure is smaller than the handbook's by less than that.
   */
  const excess = (Math.PI / gores) ** 2 / 4;

  it('is as wide as the handbook says but for a part of what its edges are too long', () => {
    const widths = widthsAt(piece, rowOf('E1', 'inputs', 'latitude_deg'), COLUMNS);
    for (const [k, width] of rowOf('E1', 'expected', 'widths').entries()) {
      expect(widths[k] / width).toBeLessThan(1);
      expect(widths[k] / width).toBeGreaterThan(1 - excess);
    }
  });

  it('shares the length between its middle and its edges, and has the area of the ball but for the same part', () => {
    const points = (columns: number): number[] => [
      0,
      ...Array.from({ length: ROWS - 1 }, (_, j) => 1 + j * (COLUMNS + 1) + columns),
      (ROWS - 1) * (COLUMNS + 1) + 1,
    ];
    const [middle, edge] = [COLUMNS / 2, 0].map((column) => {
      const row = points(column).map((corner) => flatPointsOf(piece, corner)[0]);
      return row.slice(1).reduce((sum, point, i) => sum + apart(row[i], point), 0) / expected.gore_length;
    });
    expect(middle).toBeGreaterThan(1 - excess);
    expect(middle).toBeLessThan(1);
    expect(edge).toBeGreaterThan(1);
    expect(edge).toBeLessThan(1 + excess);
    expect(Math.abs(edge - middle - excess)).toBeLessThan(excess / 10);
    expect(piece.flatAreaMm2 / expected.gore_area).toBeLessThan(1);
    expect(piece.flatAreaMm2 / expected.gore_area).toBeGreaterThan(1 - excess);
    expect(piece.stretchPct.max).toBeLessThan(100 * excess);
    expect(piece.flipped).toBe(0);
    expect(piece.overlaps).toBe(0);
  });
});
