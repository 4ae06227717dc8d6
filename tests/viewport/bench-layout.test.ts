import { Box3, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { layBench } from '../../src/viewport/bench-layout.ts';
import { settingBefore } from '../../src/viewport/setting.ts';

const sheet = (widthMm: number, heightMm: number) => ({ widthMm, heightMm });
const box = (width: number, height: number) => ({ minX: -5, minY: -7, maxX: width - 5, maxY: height - 7 });

/** Where sheets and loose pieces lie, as boxes of x and z. */
function covered(
  sheets: readonly { widthMm: number; heightMm: number }[],
  loose: readonly ReturnType<typeof box>[],
  footprint = { width: 300, depth: 250 },
) {
  const layout = layBench(footprint, sheets, loose);
  const boxes = [
    { minX: -footprint.width / 2, maxX: footprint.width / 2, minZ: -footprint.depth / 2, maxZ: footprint.depth / 2 },
    ...layout.sheets.map(({ x, z, isTurned }, i) => {
      const [w, d] = isTurned ? [sheets[i].heightMm, sheets[i].widthMm] : [sheets[i].widthMm, sheets[i].heightMm];
      return { minX: isTurned ? x - w : x, maxX: isTurned ? x : x + w, minZ: z - d, maxZ: z };
    }),
    ...layout.loose.map(({ x, z }, i) => ({
      minX: x + loose[i].minX,
      maxX: x + loose[i].maxX,
      minZ: z - loose[i].maxY,
      maxZ: z - loose[i].minY,
    })),
  ];
  return { layout, boxes };
}

describe('what lies where on the bench', () => {
  it('never lies on another thing, and always on the bench', () => {
    for (const [sheets, loose] of [
      [[sheet(600, 400), sheet(600, 400), sheet(600, 400)], []],
      [[sheet(1000, 2000)], [box(300, 200), box(80, 500)]],
      [[], [box(100, 50), box(300, 200), box(80, 500), box(10, 10)]],
      [Array.from({ length: 9 }, () => sheet(610, 610)), [box(900, 120)]],
    ] as const) {
      const { layout, boxes } = covered(sheets, loose);
      boxes.forEach((a, i) => {
        expect(a.minX).toBeGreaterThanOrEqual(layout.top.minX);
        expect(a.maxX).toBeLessThanOrEqual(layout.top.maxX);
        expect(a.minZ).toBeGreaterThanOrEqual(layout.top.minZ);
        expect(a.maxZ).toBeLessThanOrEqual(layout.top.maxZ);
        for (const b of boxes.slice(i + 1)) {
          const isApart = a.maxX <= b.minX || b.maxX <= a.minX || a.maxZ <= b.minZ || b.maxZ <= a.minZ;
          expect(isApart).toBe(true);
        }
      });
    }
  });

  it('lies in front of the sculpt', () => {
    const { boxes } = covered([sheet(600, 400)], [box(100, 50)]);
    expect(boxes[1].minZ).toBeGreaterThan(125);
    expect(boxes[2].minZ).toBeGreaterThan(boxes[1].maxZ);
  });

  it('turns a long sheet across', () => {
    expect(
      layBench({ width: 300, depth: 250 }, [sheet(1000, 2000), sheet(600, 600)], []).sheets.map(
        ({ isTurned }) => isTurned,
      ),
    ).toEqual([true, false]);
  });
});

describe('what is cut of a row', () => {
  const filled = (widthMm: number, heightMm: number, fillAlong: 'x' | 'y', filledMm: number) => ({
    widthMm,
    heightMm,
    fillAlong,
    filledMm,
  });

  it('lies in the middle, before the sculpt', () => {
    // Turned across, a sheet is filled from its right end.
    const turned = layBench({ width: 300, depth: 250 }, [filled(1000, 2000, 'y', 480)], []);
    expect(turned.sheets[0]).toMatchObject({ x: 240, isTurned: true });
    expect(turned.filled).toEqual({ minX: -240, maxX: 240, minZ: 179, maxZ: 1179 });
    expect(turned.top).toMatchObject({ minX: -1830, maxX: 310 });
    const along = layBench({ width: 300, depth: 250 }, [filled(1000, 900, 'x', 300)], []);
    expect(along.sheets[0].x).toBe(-150);
    // Away from the viewer nothing is gained by moving it.
    const away = layBench({ width: 300, depth: 250 }, [filled(1000, 900, 'y', 300)], []);
    expect(away.sheets[0].x).toBe(-500);
  });

  it('belongs in one picture with the sculpt as far as that is large', () => {
    const sculpt = new Box3(new Vector3(-100, 0, -120), new Vector3(100, 280, 120));
    const { min, max } = settingBefore(sculpt, { minX: -240, maxX: 900, minZ: 180, maxZ: 1180 });
    expect([min.x, min.z]).toEqual([-224, 180]);
    expect(max.x).toBeCloseTo(224, 9);
    expect(max.z).toBeCloseTo(390, 9);
    expect(settingBefore(sculpt, null).isEmpty()).toBe(true);
  });
});
