import { fail, ok, type Result } from '../../base/result.ts';
import type { CapWish, CoreChoice, CoreCut } from '../../model/build-up.ts';
import { NOTHING_TO_LAY_MM, radiiIn, type Profile } from './profile.ts';

/** Nothing longer is one prop, mm. */
export const LONGEST_MM = 20_000;
const MOST_DIAMETER_MM = 2000;
const MOST_PLACES = 100;
const MOST_ROOM_MM = 20;

/** How far a cap stands off the core's end, mm. */
export const standsOff = (cap: CapWish | undefined): number =>
  cap === undefined ? 0 : cap.kind === 'bought' ? cap.standsOffMm : cap.sheetMm * cap.count;

/** The core's length: overall less what the caps stand off. @returns fails with `core/size` or `core/cap`. */
export function cutLength(core: CoreChoice): Result<number> {
  const { diameterMm, overallMm, glueRoomMm, startCap, endCap } = core;
  if (!(diameterMm >= 1 && diameterMm <= MOST_DIAMETER_MM))
    return fail('core/size', `A core is from 1 to ${MOST_DIAMETER_MM} mm across its outside.`);
  if (!(overallMm >= 1 && overallMm <= LONGEST_MM))
    return fail('core/size', `The length from end to end is from 1 to ${LONGEST_MM} mm, which is 20 m.`);
  if (!(glueRoomMm >= 0 && glueRoomMm <= MOST_ROOM_MM))
    return fail('core/size', `Room for glue is from 0 to ${MOST_ROOM_MM} mm on either side.`);
  for (const cap of [startCap, endCap]) {
    if (cap === undefined) continue;
    if (cap.kind === 'bought' && !(cap.standsOffMm >= 0))
      return fail('core/cap', 'A cap stands off the core by 0 mm or more.');
    if (cap.kind === 'discs') {
      if (
        !(cap.sheetMm >= 0.1 && cap.sheetMm <= 200) ||
        !Number.isInteger(cap.count) ||
        cap.count < 1 ||
        cap.count > 20
      )
        return fail('core/cap', 'A cap is of 1 to 20 discs of a sheet from 0.1 to 200 mm thick, as 10x2.');
      if (cap.diameterMm !== undefined && !(cap.diameterMm > 0 && cap.diameterMm <= 2 * MOST_DIAMETER_MM))
        return fail('core/cap', 'The diameter of a cap is over 0 mm.');
    }
  }
  const cut = overallMm - standsOff(startCap) - standsOff(endCap);
  return cut >= 1
    ? ok(cut)
    : fail('core/cap', 'The caps stand off by all of the length: make the whole longer, or the caps flatter.');
}

/**
 * What sits on the core, with its holes, and marks for all of it.
 * @param cut  length of the core, mm.
 * @returns fails with `core/place`, or `core/clash` where two things would be in one place.
 */
export function cutCore(core: CoreChoice, cut: number, profile: Profile): Result<CoreCut> {
  const { places, diameterMm, glueRoomMm } = core;
  if (places.length > MOST_PLACES) return fail('core/place', `At most ${MOST_PLACES} parts sit on one core.`);
  for (const { name, fromMm, toMm } of places) {
    if (!(fromMm >= 0 && toMm > fromMm && toMm <= cut + 1e-9))
      return fail(
        'core/place',
        `${name} does not lie on the core, which is cut to ${cut.toFixed(1)} mm: say where it begins and ends along it, as head=700-860.`,
      );
  }
  const inOrder = [...places].sort((a, b) => a.fromMm - b.fromMm);
  for (let i = 1; i < inOrder.length; i += 1) {
    const [a, b] = [inOrder[i - 1], inOrder[i]];
    if (b.fromMm < a.toMm - 1e-9)
      return fail(
        'core/clash',
        `${a.name} and ${b.name} both take up the core from ${b.fromMm.toFixed(1)} to ${Math.min(a.toMm, b.toMm).toFixed(1)} mm: move one by ${(a.toMm - b.fromMm).toFixed(1)} mm.`,
      );
  }
  const seats: ((typeof places)[number] & { holeMm: number })[] = [];
  for (const place of inOrder) {
    const radius = Math.max(diameterMm / 2, radiiIn(profile, { from: place.fromMm, to: place.toMm })?.most ?? 0);
    if (place.on === 'core' && radius > diameterMm / 2 + NOTHING_TO_LAY_MM)
      return fail(
        'core/clash',
        `${place.name} sits on the bare core from ${place.fromMm.toFixed(1)} to ${place.toMm.toFixed(1)} mm, where foam is built up: leave the core bare there, or let it sit on the foam.`,
      );
    seats.push({ ...place, holeMm: 2 * (radius + glueRoomMm) });
  }
  const marks = [
    ...(profile.length === 0
      ? []
      : [
          { name: 'foam begins', atMm: profile[0].from },
          { name: 'foam ends', atMm: profile[profile.length - 1].to },
        ]),
    ...seats.flatMap(({ name, fromMm, toMm }) => [
      { name: `${name} begins`, atMm: fromMm },
      { name: `${name} ends`, atMm: toMm },
    ]),
  ].sort((a, b) => a.atMm - b.atMm);
  return ok({ diameterMm, cutMm: cut, marks, seats });
}
