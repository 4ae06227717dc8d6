import { formatMm } from '../base/format-length.ts';
import { buildTree } from '../geom/bvh.ts';
import { placed4 } from '../geom/matrix4.ts';
import { boxOfPoints3, type Box3 } from '../mesh/measure.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { surfaceOf } from '../mesh/surface.ts';
import { meetParts, type PartMeeting } from '../steps/assembly/part-meeting.ts';
import { meetingCurves, type StandingSurface } from '../steps/assembly/meeting-curves.ts';
import { inFrameOf } from './assembly-holes.ts';
import type { AssemblyLines } from './assembly-lines.ts';
import type { StandingPart } from './assembly-parts.ts';

/** Parts in each other by less are pressed together, mm [J]: foam gives. */
export const PRESSED_MM = 1;

/** Tells of two parts that run into each other although nobody has said how they have to do with each other. */
export function tellUnsaid(a: StandingPart, b: StandingPart, into: AssemblyLines): void {
  if (a.body === null || b.body === null || a.outside === null || b.outside === null) return;
  const other = inFrameOf(a, b, b.body);
  if (areApart(boxOfPoints3(a.body.positions), boxOfPoints3(other.positions))) return;
  // What lies in the hollow of another, as a core, does not touch its foam.
  const [foam, form] = [standing(a.body), standing(other)];
  const isInFoam = meetingCurves(foam, form).curves.length > 0;
  const met = meetParts(standing(a.outside), standing(inFrameOf(a, b, b.outside)));
  if (!isInFoam && !isSolidWithin(a, b, met)) return;
  const mm = met.depth?.mm ?? Infinity;
  if (mm < PRESSED_MM || met.stand === 'apart' || met.stand === 'touch') return;
  const { x, y, z } = placed4(a.matrix, met.depth?.point ?? { x: 0, y: 0, z: 0 });
  const by = met.depth === null ? 'wholly' : `by ${formatMm(mm)}`;
  into.tell(
    'warning',
    'assembly/runs-into',
    `${b.name} and ${a.name} are in each other ${by}: say whether one goes through the other by a hole or sits on it, or move them apart.`,
    b.id,
    {
      ...(met.depth === null ? {} : { value: mm, unit: 'mm' }),
      where: { otherPart: a.id, ...(met.depth === null ? {} : { point: [x, y, z] as const }) },
      limit: PRESSED_MM,
    },
  );
}

/** One lies wholly within the foam of the other, which is no shell. */
const isSolidWithin = (a: StandingPart, b: StandingPart, { stand }: PartMeeting): boolean =>
  (stand === 'second-within' && a.body === a.outside) || (stand === 'first-within' && b.body === b.outside);

function standing(mesh: Mesh): StandingSurface {
  const surface = surfaceOf(mesh);
  return { surface, tree: buildTree(surface.positions, surface.triangles) };
}

const areApart = (a: Box3, b: Box3): boolean =>
  (['x', 'y', 'z'] as const).some((axis) => a.max[axis] < b.min[axis] || b.max[axis] < a.min[axis]);
