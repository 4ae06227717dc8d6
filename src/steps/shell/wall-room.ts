import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { add3, cross3, dot3, pointAt3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import { triangleCentre } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { PLACE_IN_WALL } from './make-shell-layer.ts';
import { offsetsOf, roomsOf, type Outward } from './mesh-offsets.ts';
import { greatestMm, mmText } from './room-words.ts';
import { wallAheadOf } from './wall-ahead.ts';

/** The whole wall, of one sheet or several. */
export type Wall = Pick<ShellLayer, 'thicknessMm' | 'backMm' | 'modelIs'>;

/** Share of its own size by which a place may come down beside the triangle that it meets: the next one is as far away. */
const BESIDE_SHARE = 0.5;
/** Share of its thickness by which a wall may reach too far and only touch. */
const TOUCH_SHARE = 1e-9;

/**
 * Finding `shell/no-room`: where the foam of one place runs into the foam of another, as in a slot, on a thin plate that has foam on both
 * sides, or between one shell and the next; and the thickest wall for which it does not. Foam that folds over itself is told elsewhere.
 *
 * A wall W thick whose sculpt lies at `s` of it reaches `s W - o` inward and `(1 - s) W + o` outward, o the offset of the wall from its
 * usual place. A place at the height h over another plane, of which a move of 1 adds c, comes to that plane's own foam when
 * `|h| = |c| own + its`, own and its the reaches of the two towards each other: a linear equation for W. It is a meeting only where it comes
 * down on the triangle as that has moved.
 */
export function* wallRoomSteps(mesh: Mesh, { thicknessMm, backMm, modelIs }: Wall): Stepwise<Finding[]> {
  const place = PLACE_IN_WALL[modelIs];
  const offset = backMm + place * thicknessMm;
  const reach = (outward: Outward): { share: number; offset: number } =>
    outward === 1 ? { share: 1 - place, offset } : { share: place, offset: -offset };
  const rooms = new Map<number, number>();
  for (const outward of [-1, 1] as const) {
    const own = reach(outward);
    if (!(own.share * thicknessMm + own.offset > 0)) continue;
    const { directions } = yield* offsetsOf(mesh);
    const folds = yield* roomsOf(mesh, outward);
    const { triangles, met, places, ways, heights, climbs } = yield* wallAheadOf(mesh, outward);
    for (let i = 0; i < triangles.length; i += 1) {
      if (folds[triangles[i]] < own.share * thicknessMm + own.offset) continue;
      // Coming from behind a plane it is its back that is met, else its face.
      const side = heights[i] < 0 ? -1 : 1;
      const other = reach(side);
      const climb = Math.abs(climbs[i]);
      const grows = climb * own.share + other.share;
      const room = (Math.abs(heights[i]) - climb * own.offset - other.offset) / grows;
      if (!(grows > 0) || room >= thicknessMm * (1 - TOUCH_SHARE)) continue;
      const place = add3(pointAt3(places, i), scale3(pointAt3(ways, i), own.share * room + own.offset));
      const moved = side * (other.share * room + other.offset);
      const corners = [0, 1, 2].map((k) => {
        const v = mesh.triangles[3 * met[i] + k];
        return add3(pointAt3(mesh.positions, v), scale3(pointAt3(directions, v), moved));
      });
      if (!isOver(place, corners)) continue;
      rooms.set(triangles[i], Math.min(room, rooms.get(triangles[i]) ?? Infinity));
    }
  }
  return rooms.size === 0 ? [] : [noRoom(mesh, rooms, thicknessMm)];
}

/** Whether a place looked at square to a triangle lies on it, or a little beside it. */
function isOver(place: Vec3, [a, b, c]: readonly Vec3[]): boolean {
  const normal = cross3(sub3(b, a), sub3(c, a));
  const area = dot3(normal, normal);
  const share = (p: Vec3, q: Vec3): number => dot3(normal, cross3(sub3(p, place), sub3(q, place))) / area;
  return Math.min(share(a, b), share(b, c), share(c, a)) >= -BESIDE_SHARE;
}

/** @param rooms  greatest thickness of the wall at each triangle that has too little room, mm. */
function noRoom(mesh: Mesh, rooms: ReadonlyMap<number, number>, thicknessMm: number): Finding {
  const tight = [...rooms].sort(([a, room], [b, other]) => room - other || a - b);
  const [[worst, least]] = tight;
  const works = greatestMm(least);
  return {
    code: 'shell/no-room',
    severity: 'warning',
    text: `Foam ${mmText(thicknessMm)} thick runs into foam of another side of the sculpt at ${tight.length} ${tight.length === 1 ? 'place' : 'places'}: ${works > 0 ? `use at most ${mmText(works)} in all there` : 'there is no room for foam there'}, or move the two sides of the sculpt apart.`,
    value: thicknessMm,
    limit: works,
    unit: 'mm',
    where: { triangles: clipPlaces(tight.map(([t]) => t)), point: triangleCentre(mesh, worst) },
  };
}
