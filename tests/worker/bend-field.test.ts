import { beforeAll, describe, expect, it } from 'vitest';
import type { Workbench } from '../../src/app/workbench.ts';
import { readingAt } from '../../src/app/legend/reading.ts';
import { tableRows } from '../../src/app/legend/table-rows.ts';
import type { BendField } from '../../src/model/bend-field.ts';
import { setScale } from '../../src/project/commands.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

/** Half a tube round y, of flat sides that touch a circle of this radius. */
const RADIUS_MM = 60;
const SIDES = 40;
const HEIGHT_MM = 80;
const ROWS = 4;

/** @param outward 1: its outside is seen, as on a column; -1: its inside, as in a gutter. */
function halfTube(outward: 1 | -1): string {
  const half = Math.PI / SIDES / 2;
  const points: string[] = [];
  const faces: string[] = [];
  for (let j = 0; j <= ROWS; j += 1)
    for (let i = 0; i <= SIDES; i += 1) {
      const angle = (Math.PI * i) / SIDES;
      const r = RADIUS_MM / Math.cos(half);
      points.push(`v ${r * Math.cos(angle)} ${(HEIGHT_MM * j) / ROWS} ${-r * Math.sin(angle)}`);
    }
  for (let j = 0; j < ROWS; j += 1)
    for (let i = 0; i < SIDES; i += 1) {
      const a = j * (SIDES + 1) + i + 1;
      const corners = [a, a + 1, a + SIDES + 2, a + SIDES + 1];
      faces.push(`f ${(outward > 0 ? corners : corners.toReversed()).join(' ')}`);
    }
  return [...points, ...faces].join('\n');
}

async function bent(outward: 1 | -1): Promise<{ workbench: Workbench; bends: BendField }> {
  const { workbench } = makeWorkbench();
  await openObj(workbench, 'half tube', halfTube(outward));
  workbench.run(setScale({ by: 'unit', unit: 'mm' }));
  await shown(workbench);
  const bends = await workbench.workshop.bendField(1);
  if (bends === null) throw new Error('no pieces');
  return { workbench, bends };
}

describe('bend by place', () => {
  let workbench: Workbench;
  let bends: BendField;
  beforeAll(async () => {
    ({ workbench, bends } = await bent(1));
  });

  it('strains the skins of a half tube by t / 2 R all over (handbook case M6)', () => {
    const { thicknessMm: t, neutralFraction } = workbench.bench.shell!;
    expect(neutralFraction).toBe(0.5);
    // The sculpt is the face of the foam: its neutral surface lies half a thickness within.
    const expected = (100 * t) / (2 * (RADIUS_MM - t / 2));
    const [field] = bends.patches;
    const inside = [...field!.strainPct].toSorted((a, b) => a - b);
    expect(inside[inside.length >> 1] / expected).toBeCloseTo(1, 2);
  });

  it('is at its most what the piece and its finding tell', () => {
    const [piece] = workbench.bench.pieces!.pieces;
    const [row] = tableRows('bend', { project: workbench.project, bench: workbench.bench, sheet: 1, unit: 'mm' });
    expect(Math.max(...bends.patches[0]!.strainPct)).toBeCloseTo(piece.bend!.outsidePct, 4);
    expect(row.figure).toBe(piece.bend!.outsidePct);
  });

  it('runs along the tube in the flat piece', () => {
    const { up } = workbench.bench.pieces!.pieces[0];
    for (const angle of bends.patches[0]!.axisRad)
      expect(Math.abs(Math.cos(angle) * up!.x + Math.sin(angle) * up!.y)).toBeCloseTo(1, 3);
  });

  it('is read at a place with its radius', () => {
    const { thicknessMm: t } = workbench.bench.shell!;
    const middle = bends.patches[0]!.strainPct.length >> 1;
    const triangle = workbench.bench.pieces!.patches[0].meshTriangles[middle];
    const reading = readingAt('bend', workbench.bench, bends, { triangle });
    expect(reading?.kind === 'bend' && Math.abs(reading.radiusMm / (RADIUS_MM - t / 2) - 1)).toBeLessThan(0.02);
  });

  it('has the other sign in a gutter', async () => {
    const gutter = await bent(-1);
    expect(Math.max(...gutter.bends.patches[0]!.strainPct)).toBeLessThan(0);
  });
});
