import { formatMm, formatNumber } from '../base/format-length.ts';
import { buildTree } from '../geom/bvh.ts';
import { composed4, handOf4, turned4, undone4, type Matrix4 } from '../geom/matrix4.ts';
import { dot3, pointAt3, unit3, vec3, type Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { surfaceOf } from '../mesh/surface.ts';
import type { Triple } from '../model/girth.ts';
import { ROOM_MM, type HoleJoin, type SeatJoin } from '../project/joins.ts';
import { enteringPart } from '../steps/assembly/entering.ts';
import type { HoleWall } from '../steps/assembly/cut-holes.ts';
import { holesOnPieces } from '../steps/assembly/holes-on-pieces.ts';
import { meetParts, type PartMeeting } from '../steps/assembly/part-meeting.ts';
import { placedMesh } from '../steps/assembly/placing.ts';
import { outlineRunThrough } from '../steps/assembly/run-through.ts';
import { seatOnPieces } from '../steps/assembly/seats-on-pieces.ts';
import type { AssemblyLines, JoinOutcome } from './assembly-lines.ts';
import type { StandingPart } from './assembly-parts.ts';

/** A part's form as it stands in the frame of another. */
export function inFrameOf(host: StandingPart, part: StandingPart, form: Mesh): Mesh {
  const matrix = composed4(undone4(host.matrix), part.matrix);
  return placedMesh(form, { matrix, isMirrored: handOf4(matrix) < 0 });
}

/** Cuts the holes of a part in all pieces of another. */
export function cutHoleJoin(join: HoleJoin, part: StandingPart, host: StandingPart, into: AssemblyLines): void {
  if (!canBeHeld(part, host, into)) return;
  const form = inFrameOf(host, part, part.body);
  const made = enteringPart(part.name, form, join.roomMm ?? ROOM_MM, wallOf(join, host.matrix));
  if (!made.ok) return into.tell('error', made.problem.code, made.problem.text, part.id);
  const holes = host.hosts.flatMap((one) => {
    const found = holesOnPieces(one, made.value, 'hole', host.bevelLimitDeg);
    into.add(found.lines);
    // Their places are in the frame of the host.
    into.hand(
      host.id,
      found.findings.map((told) => ({ ...told, where: {} })),
    );
    return found.holes;
  });
  if (holes.length === 0)
    into.tell(
      'warning',
      'assembly/no-hole',
      `${part.name} is said to go through ${host.name}, and does not reach its foam: move it, or forget that.`,
      part.id,
    );
  const outcome: JoinOutcome = {
    join: join.id,
    count: holes.length,
    lengthMm: holes.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    bevelDeg:
      holes.length === 0
        ? null
        : {
            min: holes.reduce((least, { leastBevelDeg }) => Math.min(least, leastBevelDeg), Infinity),
            max: holes.reduce((most, { greatestBevelDeg }) => Math.max(most, greatestBevelDeg), -Infinity),
          },
  };
  into.joins.push(outcome);
  if (outcome.bevelDeg === null) return;
  const room = formatNumber(join.roomMm ?? ROOM_MM, 1);
  into.steps.push({
    work: 'join',
    pieces: [],
    text: `Cut the ${holes.length === 1 ? 'hole' : `${holes.length} holes`} for ${part.name} in ${host.name} while it is flat, then slide ${part.name} in: it has ${room} mm of room all round, which the glue fills.`,
    glueMm2: 0,
    cautions: ['knife'],
  });
}

function wallOf({ along }: HoleJoin, host: Matrix4): HoleWall {
  return along === undefined ? { kind: 'surface' } : { kind: 'along', direction: turned4(undone4(host), vecOf(along)) };
}

const vecOf = ([x, y, z]: Triple): Vec3 => vec3(x, y, z);

function canBeHeld(
  part: StandingPart,
  host: StandingPart,
  into: AssemblyLines,
): part is StandingPart & { readonly body: Mesh } {
  if (part.body === null)
    into.tell(
      'warning',
      'assembly/no-form',
      `${part.name} has no form, so where it meets ${host.name} is not known.`,
      part.id,
    );
  else if (host.hosts.length === 0)
    into.tell(
      'warning',
      'assembly/no-ground',
      `Lines cannot be brought onto the pieces of ${host.name}: hold ${part.name} to it when it is put together, and mark it there.`,
      host.id,
    );
  return part.body !== null && host.hosts.length > 0;
}

/** How far beyond its near side the outline of what is set down is run, mm: through the thickest wall it is glued on, and no farther. */
const SET_DOWN_MM = 5;

/** Draws where a part sits on another, to glue it there. */
export function drawSeat(join: SeatJoin, part: StandingPart, host: StandingPart, into: AssemblyLines): void {
  if (!canBeHeld(part, host, into)) return;
  const form = inFrameOf(host, part, part.body);
  const side = join.side ?? 'face';
  const down = unit3(
    turned4(undone4(host.matrix), join.along === undefined ? turned4(part.matrix, vec3(0, 0, -1)) : vecOf(join.along)),
  );
  const met = meetingWith(form, host, side);
  // What runs into the other has its own line there; what only lies on it, or stands off it, is set down along its direction.
  const touches = met === null || met.stand !== 'cross' || met.flatPairs.length > 0;
  const entering = touches
    ? outlineRunThrough(form, down, ...reachDown(form, down, met?.gap?.mm ?? 0))
    : surfaceOf(form);
  let count = 0;
  for (const one of host.hosts) {
    const seat = seatOnPieces(one, part.name, entering, side);
    into.add(seat.lines);
    count += seat.count;
  }
  into.joins.push({ join: join.id, count, lengthMm: 0, bevelDeg: null });
  if (count === 0)
    return into.tell(
      'warning',
      'assembly/no-seat',
      `${part.name} is said to sit on ${host.name}, and its outline does not fall on it: move it, or say in which direction it is set down.`,
      part.id,
    );
  const gap = met?.gap?.mm ?? 0;
  if (gap > STANDS_OFF_MM)
    into.tell(
      'note',
      'assembly/stands-off',
      `${part.name} stands ${formatMm(gap)} off ${host.name}, on which it is glued: it is drawn where it comes down.`,
      part.id,
      { value: gap, limit: STANDS_OFF_MM, unit: 'mm' },
    );
  into.steps.push({
    work: 'lay',
    pieces: [],
    text: `Glue ${part.name} on ${host.name} inside its dotted line.`,
    glueMm2: 0,
    cautions: ['adhesive'],
  });
}

/** A part farther off what it is glued on was not put there by hand alone, mm [J]. */
const STANDS_OFF_MM = 1;

function meetingWith(form: Mesh, host: StandingPart, side: 'face' | 'back'): PartMeeting | null {
  const [seen] = host.hosts;
  const surface = side === 'face' && host.outside !== null ? surfaceOf(host.outside) : seen.shell[side];
  const own = surfaceOf(form);
  return meetParts(
    { surface: own, tree: buildTree(own.positions, own.triangles) },
    { surface, tree: buildTree(surface.positions, surface.triangles) },
  );
}

/** From the part down to where it lands, along the direction; only the near side of what it lands on is reached. */
function reachDown({ positions }: Mesh, down: Vec3, gapMm: number): readonly [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (let v = 0; v < positions.length / 3; v += 1) {
    const along = dot3(pointAt3(positions, v), down);
    [least, most] = [Math.min(least, along), Math.max(most, along)];
  }
  return [least, most + gapMm + SET_DOWN_MM];
}
