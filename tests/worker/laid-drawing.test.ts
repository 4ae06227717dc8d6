import { beforeAll, describe, expect, it } from 'vitest';
import type { Workbench } from '../../src/app/workbench.ts';
import { setScale } from '../../src/project/commands.ts';
import { drawPaths } from '../../src/project/path-commands.ts';
import type { AcrossLine, LaidDrawing, LayWish } from '../../src/worker/drawing-api.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

const { sides, radiusMm, heightMm } = SHADE;
/** Breadth of a side of the shade, mm. */
const breadth = 2 * radiusMm * Math.sin(Math.PI / sides);
const SEEN = { by: 'seen', right: [1, 0, 0], up: [0, 1, 0] } as const;
const ROUND = { by: 'round', ups: [[0, 1, 0]] } as const;
/** The corner of the middle ring that looks at the viewer. */
const FRONT = { corner: 3 * sides };

describe('a drawing laid on the sculpt', () => {
  let workbench: Workbench;
  beforeAll(async () => {
    ({ workbench } = makeWorkbench());
    await openObj(workbench, 'lamp shade', shadeObj());
    workbench.run(setScale({ by: 'unit', unit: 'mm' }));
    await shown(workbench);
  });
  const rectangle = async (width = 60, height = 30): Promise<LayWish['strokes']> => {
    const text = `<svg width="100mm" height="100mm" viewBox="0 0 100 100"><rect width="${width}" height="${height}"/></svg>`;
    return expectOk(await workbench.workshop.readDrawing(text)).strokes;
  };
  const lay = async (wish: Partial<LayWish>, isMirrored = false): Promise<LaidDrawing> => {
    const whole = { strokes: await rectangle(), size: 1, turnRad: 0, shiftMm: [0, 0], spot: FRONT, way: SEEN } as const;
    return expectOk(await workbench.workshop.layDrawing({ ...whole, ...wish }, isMirrored));
  };
  /** Least and greatest of a coordinate over lines. */
  const span = (lines: readonly AcrossLine[], axis: number): [number, number] => {
    const all = lines.flatMap(({ xyz }) => [...xyz].filter((_, i) => i % 3 === axis));
    return [Math.min(...all), Math.max(...all)];
  };

  it('has its true size as it is seen, turned, enlarged and moved in that plane', async () => {
    const { lines, missedShare } = await lay({});
    expect(lines).toHaveLength(1);
    expect(missedShare).toBe(0);
    expect(span(lines, 0)).toEqual([expect.closeTo(-30, 4), expect.closeTo(30, 4)]);
    expect(span(lines, 1)).toEqual([expect.closeTo(heightMm / 2 - 15, 4), expect.closeTo(heightMm / 2 + 15, 4)]);
    expect(span(lines, 2)[0]).toBeGreaterThan(0);
    expect(lines[0].points[0]).toEqual(lines[0].points.at(-1));
    const { lines: half } = await lay({ size: 0.5 });
    expect(span(half, 0)).toEqual([expect.closeTo(-15, 4), expect.closeTo(15, 4)]);
    const { lines: turned } = await lay({ turnRad: Math.PI / 2, size: 0.5, shiftMm: [4, 10] });
    expect(span(turned, 0)).toEqual([expect.closeTo(4 - 7.5, 4), expect.closeTo(4 + 7.5, 4)]);
    expect(span(turned, 1)).toEqual([expect.closeTo(70 - 15, 4), expect.closeTo(70 + 15, 4)]);
  });

  it('keeps its lengths laid round, where the shade unrolls, and is closed', async () => {
    const { lines, closedByMm } = await lay({ way: ROUND, strokes: await rectangle(3 * breadth, 40) });
    expect(lines).toHaveLength(1);
    expect(lines[0].lengthMm).toBeCloseTo(2 * (3 * breadth + 40), 3);
    expect(closedByMm).toBe(0);
    expect(lines[0].points[0]).toEqual(lines[0].points.at(-1));
    // Its end, which comes back to its beginning but for rounding, is one with it.
    const { xyz } = lines[0];
    const gaps = [...xyz.keys()].filter((i) => i % 3 === 0 && i > 0);
    const least = gaps.map((i) => Math.hypot(xyz[i] - xyz[i - 3], xyz[i + 1] - xyz[i - 2], xyz[i + 2] - xyz[i - 1]));
    expect(Math.min(...least)).toBeGreaterThan(0.05);
    // Its middle lies on the place: one and a half sides to either hand, upright.
    expect(span(lines, 1)).toEqual([expect.closeTo(heightMm / 2 - 20, 4), expect.closeTo(heightMm / 2 + 20, 4)]);
    const reach = radiusMm * Math.sin((2 * Math.PI) / sides);
    const third = radiusMm * Math.sin((4 * Math.PI) / sides);
    expect(span(lines, 0)[1]).toBeCloseTo((reach + third) / 2, 3);
    expect(span(lines, 0)[0]).toBeCloseTo(-(reach + third) / 2, 3);
  });

  it('an up that stands square to the surface gives way to the next', async () => {
    const { lines } = await lay({
      way: {
        by: 'round',
        ups: [
          [0, 0, 1],
          [0.01, 0, 1],
          [1, 0, 0],
        ],
      },
      spot: { corner: 3 * sides },
    });
    // The normal there leans half a side's turn from z, so z itself still shows a way; laid lengths stay.
    expect(lines[0].lengthMm).toBeCloseTo(180, 3);
  });

  it('tells what lies beside the sculpt and beyond its rim', async () => {
    const wide = await lay({ strokes: await rectangle(60, 200) });
    expect(wide.missedShare).toBeCloseTo((2 * 60 + 2 * 80) / 520, 6);
    const upright = {
      points: [
        { x: 0, y: 0 },
        { x: 0, y: 100 },
      ],
      closed: false,
    };
    const beyond = await lay({ way: ROUND, strokes: [upright] });
    expect(beyond.missedShare).toBeCloseTo(1 - heightMm / 2 / 100, 6);
    // What begins beyond the rim is not drawn at all.
    const whole = { strokes: await rectangle(60, 200), size: 1, turnRad: 0, shiftMm: [0, 0], spot: FRONT } as const;
    const missed = await workbench.workshop.layDrawing({ ...whole, way: ROUND });
    expect(!missed.ok && missed.problem.code).toBe('drawing/missed');
  });

  it('fails where nothing lies on it', async () => {
    const strokes = await rectangle();
    const far = { strokes, size: 1, turnRad: 0, shiftMm: [500, 0], spot: FRONT, way: SEEN } as const;
    const missed = await workbench.workshop.layDrawing(far);
    expect(!missed.ok && missed.problem.code).toBe('drawing/missed');
  });

  it('is turned over with the mirror', async () => {
    // A flag whose foot is its middle: to one side only.
    const strokes = [
      {
        points: [
          { x: 0, y: -10 },
          { x: 0, y: 10 },
          { x: 12, y: 10 },
        ],
        closed: false,
      },
    ];
    const { normal, at } = workbench.bench.mirror!;
    const beyond = (p: number[]): number[] => {
      const far = 2 * (p[0] * normal.x + p[1] * normal.y + p[2] * normal.z - at);
      return [p[0] - far * normal.x, p[1] - far * normal.y, p[2] - far * normal.z];
    };
    const ends = ({ xyz }: AcrossLine): number[][] => [[...xyz.slice(0, 3)], [...xyz.slice(-3)]];
    for (const way of [ROUND, SEEN]) {
      const { lines } = await lay({ strokes, way, spot: { corner: 3 * sides + 1 } }, true);
      expect(lines).toHaveLength(2);
      const [own, other] = lines.map(ends);
      expect(lines[1].lengthMm).toBeCloseTo(lines[0].lengthMm, 3);
      for (const [k, p] of own.entries())
        for (const [axis, x] of beyond(p).entries()) expect(other[k][axis]).toBeCloseTo(x, 2);
    }
  });

  it('parts the foam as any line does', async () => {
    const { lines } = await lay({ way: ROUND });
    workbench.run(drawPaths(lines.map(({ points }) => ({ points, kind: 'butt' }))));
    await shown(workbench);
    expect(workbench.bench.pieces?.patches).toHaveLength(2);
    workbench.undo();
    await shown(workbench);
  });
});
