import { beforeAll, describe, expect, it } from 'vitest';
import type { Workbench } from '../../src/app/workbench.ts';
import { setScale } from '../../src/project/commands.ts';
import { drawPaths } from '../../src/project/path-commands.ts';
import type { AcrossLine, AcrossWish, Spot } from '../../src/worker/drawing-api.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

const { sides, rings, radiusMm, heightMm } = SHADE;
const corner = (ring: number, side: number): Spot => ({ corner: ring * sides + ((side + sides) % sides) });
/** Breadth of a side, mm. */
const breadth = 2 * radiusMm * Math.sin(Math.PI / sides);

describe('lines across faces from the worker', () => {
  let workbench: Workbench;
  beforeAll(async () => {
    ({ workbench } = makeWorkbench());
    await openObj(workbench, 'lamp shade', shadeObj());
    workbench.run(setScale({ by: 'unit', unit: 'mm' }));
    await shown(workbench);
  });
  const draw = async (wish: AcrossWish, isMirrored?: boolean): Promise<readonly AcrossLine[]> =>
    expectOk(await workbench.workshop.drawAcross(wish, isMirrored));

  it('straight ones are as long as on the unrolled shade', async () => {
    const [line] = await draw({ by: 'straight', spots: [corner(0, 0), corner(rings, 3)] });
    expect(line.lengthMm).toBeCloseTo(Math.hypot(3 * breadth, heightMm), 4);
    const [round] = await draw({ by: 'straight', spots: [corner(0, 0), corner(3, 3), corner(3, 5), corner(0, 0)] });
    expect(round.points[0]).toEqual(round.points.at(-1));
  });

  it('a place beside an open edge is meant to lie on it, one beside any other edge is not', async () => {
    const { sculpt } = workbench.bench;
    const edges = [...sculpt!.edgeIsOpen.keys()];
    const middle = (e: number, up: number): [number, number, number] => {
      const [a, b] = [0, 1].map((k) => 3 * sculpt!.edgeVertices[2 * e + k]);
      const at = (axis: number): number => (sculpt!.positions[a + axis] + sculpt!.positions[b + axis]) / 2;
      return [at(0), at(1) + up, at(2)];
    };
    const ends = (e: number): number[] => [...sculpt!.edgeVertices.subarray(2 * e, 2 * e + 2)].sort((a, b) => a - b);
    const rim = edges.find((e) => ends(e).join() === '0,1')!;
    const inner = edges.find((e) => ends(e).join() === `${sides},${sides + 1}`)!;
    const triangleBy = (e: number): number => {
      // The one above it.
      const [a, b] = ends(e);
      for (let t = 0; ; t += 1) {
        const own = [...sculpt!.triangles.subarray(3 * t, 3 * t + 3)];
        if (own.includes(a) && own.includes(b) && own.some((v) => v > b)) return t;
      }
    };
    const from = async (e: number): Promise<number> => {
      const spot = { triangle: triangleBy(e), point: middle(e, 2), edge: e };
      const [line] = await draw({ by: 'straight', spots: [spot, corner(rings, 0)] });
      return line.xyz[1];
    };
    expect(await from(rim)).toBeCloseTo(0, 4);
    const beside = await from(inner);
    expect(Math.abs(beside - heightMm / rings)).toBeGreaterThan(0.5);
  });

  it('planes cut as often as they meet the sculpt', async () => {
    const plane = { by: 'plane', point: [0, 50, 0], normal: [0, 1, 0] } as const;
    const [ring] = await draw(plane);
    expect(ring.lengthMm).toBeCloseTo(sides * breadth, 3);
    expect(await draw({ ...plane, spacingMm: 20 })).toHaveLength(6);
    const missed = await workbench.workshop.drawAcross({ ...plane, point: [0, 500, 0] });
    expect(!missed.ok && missed.problem.code).toBe('seams/missed');
  });

  it('stand on both sides where the mirror is on, and once where they lie on it', async () => {
    const spots = [corner(rings, 1), corner(2, 2)];
    expect(await draw({ by: 'straight', spots })).toHaveLength(1);
    const both = await draw({ by: 'straight', spots }, true);
    expect(both.map(({ lengthMm }) => lengthMm.toFixed(4))).toEqual([
      both[0].lengthMm.toFixed(4),
      both[0].lengthMm.toFixed(4),
    ]);
    const { normal } = workbench.bench.mirror!;
    const onIt = normal.x ** 2 > 0.5 ? 0 : 2;
    expect(await draw({ by: 'straight', spots: [corner(0, onIt), corner(rings, onIt)] }, true)).toHaveLength(1);
  });

  it('one pulled taut becomes shorter and stays within the distance', async () => {
    const corners = [48, 40, 41, 33, 32, 24, 16, 8, 0];
    const [line] = await draw({ by: 'taut', corners, withinMm: 30 });
    expect(line.farthestMm).toBeLessThanOrEqual(30);
    expect(line.lengthMm).toBeLessThan(heightMm + 2 * breadth - 5);
    expect([line.points[0], line.points.at(-1)]).toEqual([{ vertex: 48 }, { vertex: 0 }]);
  });

  it('are drawn again on a sculpt that was cut finer, through corners that a line has added', async () => {
    const [line] = await draw({ by: 'plane', point: [0, 50, 0], normal: [0, 1, 0] });
    workbench.run(drawPaths([{ points: line.points, kind: 'butt' }]));
    await shown(workbench);
    const added = (rings + 1) * sides;
    const [next] = await draw({ by: 'straight', spots: [corner(rings, 0), { corner: added }] });
    expect(next.points.at(-1)).toHaveProperty('face');
    expect(next.xyz.at(-2)).toBeCloseTo(50, 3);
  });
});
