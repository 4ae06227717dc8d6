import type { Finding } from '../base/finding.ts';
import { runWithPauses } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { dot3, vec3, type Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { findMirrorSteps, LEAST_MIRROR_SHARE, mirrorInSteps, type Mirror } from '../mesh/mirror/mirror.ts';
import type { MirrorPlane } from '../mesh/mirror/mirror-plane.ts';
import type { SculptPart } from '../project/project.ts';

/** Sideways by which way is up: who stands upright along y or z has +x or -x on the left, along x +y or -y. */
const SIDEWAYS: Readonly<Record<SculptPart['upAxis'], Vec3>> = { x: vec3(0, 1, 0), y: vec3(1, 0, 0), z: vec3(1, 0, 0) };

/** Cosine from which on a plane parts left from right: 8 degrees. */
const LEFT_AND_RIGHT = 0.99;

/**
 * The mirror in force: the one that is found, the one the maker named, or none.
 * @param mesh in mm.
 */
export async function mirrorOfSculpt(
  mesh: Mesh,
  { mirror: choice, upAxis }: Pick<SculptPart, 'mirror' | 'upAxis'>,
  mmPerUnit: number,
  work: Work,
): Promise<Mirror | null> {
  if (choice?.by === 'off') return null;
  await work.pause(0, 'looking for the mirror');
  const pause = (): Promise<void> | undefined => work.pause(0.5);
  if (choice === undefined) return await runWithPauses(findMirrorSteps(mesh, SIDEWAYS[upAxis]), pause);
  const [x, y, z] = choice.pointInFile.map((value) => value * mmPerUnit);
  return await runWithPauses(mirrorInSteps(mesh, { point: vec3(x, y, z), normal: vec3(...choice.normal) }), pause);
}

/** What is told of the mirror in force. */
export function mirrorFindings(
  mirror: Mirror | null,
  { id, mirror: choice, upAxis }: Pick<SculptPart, 'id' | 'mirror' | 'upAxis'>,
): readonly Finding[] {
  if (mirror === null) return [];
  const { share, toleranceMm } = mirror;
  const figures = { value: 100 * share, limit: 100 * LEAST_MIRROR_SHARE, unit: '%', where: { part: id } };
  const within = `${percent(share)} of its surface within ${toleranceMm.toPrecision(2)} mm`;
  if (choice?.by === 'plane' && share < LEAST_MIRROR_SHARE)
    return [
      {
        code: 'mirror/poor',
        severity: 'warning',
        text: `In the plane that was set the sculpt mirrors itself poorly, ${within}: set another plane, or let it be found.`,
        ...figures,
      },
    ];
  return [
    {
      code: 'mirror/found',
      severity: 'note',
      text: `The sculpt mirrors itself ${wayOf(mirror.plane, SIDEWAYS[upAxis])}, ${within}.`,
      ...figures,
    },
  ];
}

function wayOf({ normal }: MirrorPlane, sideways: Vec3): string {
  if (Math.abs(dot3(normal, sideways)) >= LEFT_AND_RIGHT) return 'from left to right';
  const [x, y, z] = [normal.x, normal.y, normal.z].map((part) => String(Number(part.toFixed(3))));
  return `across the direction ${x}, ${y}, ${z}`;
}

/** 99.96 is not 100. */
const percent = (share: number): string => (share === 1 ? '100 %' : `${Math.min(99.9, 100 * share).toFixed(1)} %`);
