import { describe, expect, it } from 'vitest';
import { Cancelled, QUIET_WORK } from '../../../src/base/work.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { bendJoint, type Hinge } from '../../../src/steps/wear/joint.ts';
import { meshOf } from '../../support/meshes.ts';

const HALF_GAP = 5;
const HALF_WIDTH = 20;

/** Two square bars end to end along x, 10 mm apart at the origin. */
function bars(): Mesh {
  const corners = [-100, -HALF_GAP, HALF_GAP, 100].flatMap((x) =>
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([y, z]) => [x, HALF_WIDTH * y, HALF_WIDTH * z] as const),
  );
  const bar = (o: number): number[][] => [
    [o, o + 3, o + 2, o + 1],
    [o + 4, o + 5, o + 6, o + 7],
    ...[0, 1, 2, 3].map((i) => [o + i, o + ((i + 1) % 4), o + 4 + ((i + 1) % 4), o + 4 + i]),
  ];
  return meshOf(corners, [...bar(0), ...bar(8)]);
}

const HINGE: Hinge = {
  point: { x: 0, y: 0, z: 0 },
  axis: { x: 0, y: 0, z: 2 },
  towards: { x: 1, y: 0, z: 0 },
  bendDeg: 90,
};

const bent = (hinge: Partial<Hinge>, mesh = bars()) =>
  bendJoint([mesh.positions, mesh.positions], mesh.triangles, { ...HINGE, ...hinge }, QUIET_WORK);

describe('a joint at its full bend', () => {
  it('bends until corner meets corner: twice the angle of gap and width', async () => {
    for (const bendDeg of [90, -90]) {
      const fit = await bent({ bendDeg });
      expect(fit?.freeDeg).toBeCloseTo((2 * Math.atan(HALF_GAP / HALF_WIDTH) * 180) / Math.PI, 0);
      expect(fit?.roomMm).toBe(0);
      expect(fit?.point.x).toBeCloseTo(-HALF_GAP, 1);
      expect(Math.abs(fit?.point.y ?? 0)).toBeCloseTo(HALF_WIDTH, 1);
    }
  });

  it('leaves the room between the corners when it bends less', async () => {
    const angle = Math.PI / 9;
    const fit = await bent({ bendDeg: 20 });
    const x = HALF_GAP * Math.cos(angle) - HALF_WIDTH * Math.sin(angle);
    const y = HALF_GAP * Math.sin(angle) + HALF_WIDTH * Math.cos(angle);
    expect(fit?.freeDeg).toBe(20);
    expect(fit?.roomMm).toBeCloseTo(Math.hypot(x + HALF_GAP, y - HALF_WIDTH), 9);
  });

  it('tells which way it bends: away from the side the axis lies on it meets, towards it there is room', async () => {
    const point = { x: 0, y: HALF_WIDTH, z: 0 };
    const away = await bent({ point, bendDeg: -90 });
    expect(away?.freeDeg).toBeCloseTo((2 * Math.atan(HALF_GAP / (2 * HALF_WIDTH)) * 180) / Math.PI, 0);
    const towards = await bent({ point, bendDeg: 90 });
    expect(towards?.freeDeg).toBe(90);
    expect(towards?.roomMm).toBeCloseTo(Math.hypot(HALF_GAP, HALF_GAP), 9);
  });

  it('turns what lies the way that is said', async () => {
    const fit = await bent({ bendDeg: -20, towards: { x: -3, y: 0, z: 0 } });
    const other = await bent({ bendDeg: 20 });
    expect(fit?.roomMm).toBeCloseTo(other?.roomMm ?? NaN, 9);
    expect(fit?.point.x).toBeGreaterThan(0);
  });

  it('says nothing of foam that lies on one side or hangs together', async () => {
    expect(await bent({ point: { x: 500, y: 0, z: 0 } })).toBeNull();
    expect(await bent({}, { ...bars(), triangles: bars().triangles.slice(0, 36) })).toBeNull();
  });

  it('can be called off', async () => {
    const stop = { ...QUIET_WORK, pause: () => Promise.reject(new Cancelled()) };
    const mesh = bars();
    await expect(bendJoint([mesh.positions, mesh.positions], mesh.triangles, HINGE, stop)).rejects.toBeInstanceOf(
      Cancelled,
    );
  });
});
