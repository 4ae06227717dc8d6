import { describe, expect, it } from 'vitest';
import { seamId } from '../../../src/base/ids.ts';
import type { SeamPull } from '../../../src/model/springing.ts';
import { borderLoads } from '../../../src/steps/dryfit/border-loads.ts';
import { plateStiffness } from '../../../src/steps/dryfit/hinge-bending.ts';
import { standOff } from '../../../src/steps/dryfit/let-go.ts';
import { heldShell } from '../../../src/steps/dryfit/shell-energy.ts';
import { byPull, seamPull, type PullSide } from '../../../src/steps/dryfit/springing.ts';
import { stripSheet } from './strip-sheet.ts';

const FOAM = { youngNPerMm2: 1.5, poisson: 0.3 };
const [COLUMNS, ROWS, THICKNESS] = [80, 8, 6];
const LENGTH = 100;
const WIDTH = 20;

/** The strip held by `shape`; the seam joins its end to its start. */
function pullOf(shape: (u: number, v: number) => readonly [number, number, number], letter = 'A'): SeamPull {
  const { sheet, uv } = stripSheet(LENGTH, WIDTH, COLUMNS, ROWS);
  const positions = new Float64Array(sheet.vertexCount * 3);
  for (let i = 0; i < sheet.vertexCount; i += 1) positions.set(shape(uv[2 * i], uv[2 * i + 1]), 3 * i);
  const loads = borderLoads(heldShell(sheet.triangles, uv, positions, FOAM, THICKNESS), positions);
  const side = (column: number): PullSide => ({
    vertices: Array.from({ length: ROWS + 1 }, (_, j) => j * (COLUMNS + 1) + column),
    loads,
    standOff: standOff(sheet.triangles, uv, positions),
    thicknessMm: THICKNESS,
  });
  return seamPull({ seam: seamId(`seam-${letter}`), letter }, [side(0), side(COLUMNS)]);
}

describe('what a joint carries', () => {
  const stiffness = (FOAM.youngNPerMm2 * THICKNESS) / (1 - FOAM.poisson ** 2);

  it('is the moment D / R and next to no force where a tube closes, open at the face', () => {
    const radius = LENGTH / (2 * Math.PI);
    const pull = pullOf((u, v) => [radius * Math.sin(u / radius), v, radius * Math.cos(u / radius)]);
    const moment = plateStiffness(FOAM, THICKNESS) / radius;
    expect(Math.abs(pull.momentN / moment - 1)).toBeLessThan(0.02);
    expect(Math.abs(pull.pullNPerMm / ((6 * moment) / THICKNESS) - 1)).toBeLessThan(0.1);
    expect(pull.way).toBe('opensFace');
  });

  it('opens at the back where the piece is bent the other way', () => {
    const pull = pullOf((u, v) => [40 * Math.sin(u / 40), v, -40 * Math.cos(u / 40)]);
    expect(pull.momentN).toBeLessThan(0);
    expect(pull.way).toBe('opensBack');
    expect(pull.opensMm).toBeGreaterThan(0);
  });

  it('is pulled apart by what a piece is too short', () => {
    const strain = (1.01 ** 2 - 1) / 2;
    const pull = pullOf((u, v) => [1.01 * u, v, 0]);
    expect(Math.abs(pull.acrossNPerMm / (1.01 * stiffness * strain) - 1)).toBeLessThan(1e-6);
    expect(pull.shearNPerMm).toBeLessThan(0.35 * pull.acrossNPerMm);
    expect(pull.way).toBe('apart');
    expect(pullOf((u, v) => [0.99 * u, v, 0]).acrossNPerMm).toBeLessThan(0);
  });

  it('is sheared where the piece is held askew', () => {
    const pull = pullOf((u, v) => [u, v + 0.01 * u, 0]);
    const shear = ((FOAM.youngNPerMm2 * THICKNESS) / (2 * (1 + FOAM.poisson))) * 0.01;
    expect(Math.abs(pull.shearNPerMm / shear - 1)).toBeLessThan(0.05);
    expect(pull.way).toBe('slides');
  });

  it('is listed from the most pulled on', () => {
    const little = pullOf((u, v) => [1.005 * u, v, 0], 'A');
    const much = pullOf((u, v) => [1.01 * u, v, 0], 'B');
    expect(byPull([little, much]).map(({ letter }) => letter)).toEqual(['B', 'A']);
  });
});
