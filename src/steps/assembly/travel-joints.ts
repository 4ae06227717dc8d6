import type { Finding } from '../../base/finding.ts';
import { formatMm, formatNumber } from '../../base/format-length.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { dot3, pointAt3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { JointKind, Stretch, TravelJoint, TravelPiece, TravelPlan, TravelWish } from '../../model/travel.ts';
import { behind, common, nearestPlace, restOf } from './stretches.ts';

/** A peg goes into each side by so many of its diameters: as usual, and no less than [J], common practice for spigots. */
export const PEG_DIAMETERS = 2;
export const LEAST_PEG_DIAMETERS = 1.5;
/** Magnets hold so many times what stillness asks: a prop is swung and knocked [J]. */
export const MAGNET_SAFETY = 3;
/** Straps over one joint, so that it cannot fold [J]. */
const STRAPS = 2;
/** Most pieces anybody puts together on the way to an event. */
const MOST_PIECES = 50;
/** m/s², standard gravity (ISO 80000-3). */
const GRAVITY = 9.80665;
/** The longest piece is found to this, mm: far finer than any saw. */
const LENGTH_STEP_MM = 1e-7;

/**
 * The fewest pieces that go into the bag; among those plans one whose longest piece is shortest, its joints as near to even as that and the stretches that
 * must stay whole let them be.
 * @returns fails with `travel/wish` where a number is missing, `travel/no-place` where no joints will do.
 */
export function planTravel(wish: TravelWish): Result<TravelPlan> {
  const fault = faultOf(wish);
  if (fault !== null) return fail('travel/wish', fault);
  const { lengthMm, bagMm, whole = [], joint } = wish;
  const engagement = engagementOf(joint);
  const standsOut = joint.kind === 'peg' && joint.isLoose !== true ? engagement : 0;
  // A peg needs its own room on both sides, out of what must stay whole.
  const taken = whole.map(({ fromMm, toMm }) => ({ fromMm: fromMm - engagement, toMm: toMm + engagement }));
  const allowed = restOf(engagement, lengthMm - engagement, taken);
  const rule = { lengthMm, standsOut, least: 2 * engagement, allowed };
  let pieces = 1;
  while (pieces <= MOST_PIECES && !reachSets(rule, pieces, bagMm)) pieces += 1;
  if (pieces > MOST_PIECES)
    return fail(
      'travel/no-place',
      `No joints let the prop into a bag of ${formatMm(bagMm)}: give a longer bag, shorter pegs, or let fewer stretches stay whole.`,
    );
  let [low, high] = [0, bagMm];
  while (pieces > 1 && high - low > LENGTH_STEP_MM) {
    const middle = (low + high) / 2;
    if (reachSets(rule, pieces, middle)) high = middle;
    else low = middle;
  }
  const places = placesOf(rule, pieces, high);
  const ends = [0, ...places, lengthMm];
  const parts = ends.slice(1).map((toMm, i): TravelPiece => {
    const fromMm = ends[i];
    return { fromMm, toMm, packedMm: toMm - fromMm + (i < pieces - 1 ? standsOut : 0) };
  });
  const joints = places.map((atMm, i) => jointAt(wish, atMm, i + 1, engagement));
  const isLoose = joint.kind === 'peg' && joint.isLoose === true;
  return ok({
    joints,
    pieces: parts,
    pegsMm: isLoose ? places.map(() => 2 * engagement) : [],
    findings: findingsOf(wish, parts, engagement),
  });
}

/** How far places reach along a direction, mm: what {@link planTravel} asks for as the prop's length. */
export function extentAlong(positions: Float64Array, direction: Vec3): Stretch {
  const way = unit3(direction);
  let [fromMm, toMm] = [Infinity, -Infinity];
  for (let v = 0; v < positions.length / 3; v += 1) {
    const at = dot3(pointAt3(positions, v), way);
    [fromMm, toMm] = [Math.min(fromMm, at), Math.max(toMm, at)];
  }
  return { fromMm, toMm };
}

interface Rule {
  readonly lengthMm: number;
  readonly standsOut: number;
  /** No piece is shorter, mm, where there are joints. */
  readonly least: number;
  readonly allowed: readonly Stretch[];
}

/** Where the first, second … joint can be with no piece longer than `most` as packed; null where the prop's end is not reached with so many pieces. */
function reachSets(rule: Rule, pieces: number, most: number): readonly (readonly Stretch[])[] | null {
  const { lengthMm, standsOut, least, allowed } = rule;
  if (pieces === 1) return lengthMm <= most ? [] : null;
  const sets: (readonly Stretch[])[] = [];
  // At an end of the prop a piece holds one peg alone.
  let from: readonly Stretch[] = [{ fromMm: 0, toMm: 0 }];
  for (let i = 0; i < pieces - 1; i += 1) {
    const longest = most - standsOut;
    const shortest = i === 0 ? least / 2 : least;
    if (longest < shortest) return null;
    from = common(behind(from, shortest, longest), allowed);
    sets.push(from);
  }
  return common(from, [{ fromMm: lengthMm - most, toMm: lengthMm - least / 2 }]).length > 0 ? sets : null;
}

function placesOf(rule: Rule, pieces: number, most: number): number[] {
  const sets = reachSets(rule, pieces, most);
  if (sets === null) throw new Error('travel: what was found is lost');
  const places: number[] = [];
  let next = rule.lengthMm;
  for (let i = sets.length - 1; i >= 0; i -= 1) {
    const isLast = i === sets.length - 1;
    const reach = {
      fromMm: next - (isLast ? most : most - rule.standsOut),
      toMm: next - (isLast ? rule.least / 2 : rule.least),
    };
    const even = evenPlace(rule, pieces, i);
    const place = nearestPlace(common(sets[i], [reach]), even) ?? nearestPlace(sets[i], reach.fromMm);
    if (place === null) throw new Error('travel: a joint has no place');
    places.unshift(place);
    next = place;
  }
  return places;
}

/** Where joint `i` is when all pieces are as long in the bag: all but the last have a peg on top. */
function evenPlace({ lengthMm, standsOut }: Rule, pieces: number, i: number): number {
  const packed = (lengthMm + (pieces - 1) * standsOut) / pieces;
  return (i + 1) * (packed - standsOut);
}

const engagementOf = (joint: JointKind): number =>
  joint.kind === 'peg' ? (joint.engagementMm ?? PEG_DIAMETERS * joint.diameterMm) : 0;

function jointAt(wish: TravelWish, atMm: number, number: number, engagementMm: number): TravelJoint {
  const { joint, lengthMm } = wish;
  const where = `J${number} at ${formatMm(atMm)} from the foot`;
  if (joint.kind === 'peg') {
    const way = joint.isLoose === true ? 'into both sides' : 'glued into the lower piece, and as far into the upper';
    return {
      atMm,
      engagementMm,
      count: 0,
      text: `${where}: a peg of ${formatMm(joint.diameterMm)}, ${formatMm(engagementMm)} ${way}.`,
    };
  }
  if (joint.kind === 'strap') {
    const count = joint.count ?? STRAPS;
    return { atMm, engagementMm: 0, count, text: `${where}: ${count} straps over it, evenly round.` };
  }
  // What hangs on the joint is the side away from the hand; it opens about the rim of the joint.
  const grip = wish.gripMm ?? lengthMm / 2;
  const outboard = atMm >= grip ? lengthMm - atMm : atMm;
  const weightN = ((wish.massKg ?? 0) * GRAVITY * outboard) / lengthMm;
  const safety = joint.safety ?? MAGNET_SAFETY;
  const bending = (weightN * outboard) / 2 / (joint.acrossMm / 2);
  const count = Math.max(2, Math.ceil((safety * Math.max(bending, weightN)) / joint.pullN - 1e-9));
  return {
    atMm,
    engagementMm: 0,
    count,
    text: `${where}: ${count} pairs of magnets of ${formatNumber(joint.pullN, 1)} N, for ${formatNumber(weightN, 1)} N that hang ${formatMm(outboard / 2)} out, ${formatNumber(safety, 1)} times over.`,
  };
}

/** Most pairs of magnets that are a joint rather than a wish. */
const MANY_MAGNETS = 12;

function findingsOf(wish: TravelWish, pieces: readonly TravelPiece[], engagementMm: number): Finding[] {
  const { joint } = wish;
  const findings: Finding[] = [
    {
      code: 'travel/ask-event',
      severity: 'note',
      text: 'How long a prop may be, and whether it may be put together on the spot, is for each event to say: ask your event.',
      where: {},
    },
  ];
  if (pieces.length === 1) return findings;
  if (joint.kind === 'peg' && engagementMm < LEAST_PEG_DIAMETERS * joint.diameterMm)
    findings.push({
      code: 'travel/short-peg',
      severity: 'warning',
      text: `The peg goes in by ${formatMm(engagementMm)}; under ${LEAST_PEG_DIAMETERS} times its diameter a joint wobbles: make it longer.`,
      value: engagementMm,
      limit: LEAST_PEG_DIAMETERS * joint.diameterMm,
      unit: 'mm',
      where: {},
    });
  if (joint.kind === 'magnets') {
    const most = pieces
      .slice(1)
      .reduce((all, { fromMm }, i) => Math.max(all, jointAt(wish, fromMm, i + 1, 0).count), 0);
    if (most > MANY_MAGNETS)
      findings.push({
        code: 'travel/many-magnets',
        severity: 'warning',
        text: `${most} pairs of magnets would be needed at one joint: use a peg and let one pair keep it from slipping out.`,
        value: most,
        limit: MANY_MAGNETS,
        where: {},
      });
    findings.push({
      code: 'travel/magnet-care',
      severity: 'note',
      text: 'Keep strong magnets away from pacemakers and from children: two that are swallowed can kill.',
      where: {},
    });
  }
  return findings;
}

function faultOf({ lengthMm, bagMm, whole = [], joint, massKg, gripMm }: TravelWish): string | null {
  const isSize = (value: number): boolean => Number.isFinite(value) && value > 0 && value <= 1e5;
  if (!isSize(lengthMm) || !isSize(bagMm))
    return 'The prop and the bag need a length of more than 0 and at most 100 m: give both.';
  if (whole.length > 200) return 'More than 200 stretches are to stay whole: join those that lie together.';
  const isWrong = ({ fromMm, toMm }: Stretch): boolean =>
    !Number.isFinite(fromMm) || !Number.isFinite(toMm) || fromMm > toMm;
  if (whole.some(isWrong))
    return 'A stretch that is to stay whole lacks an end, or ends before it begins: give it anew.';
  if (gripMm !== undefined && !(gripMm >= 0 && gripMm <= lengthMm))
    return 'The hand holds the prop beyond its ends: give a place on it.';
  if (joint.kind === 'peg') {
    const { diameterMm, engagementMm = diameterMm } = joint;
    return isSize(diameterMm) && isSize(engagementMm)
      ? null
      : 'A peg needs a diameter and a length of more than 0: give both.';
  }
  if (joint.kind === 'strap') {
    const { count = STRAPS } = joint;
    return Number.isInteger(count) && count >= 1 && count <= 100 ? null : 'Straps are counted from 1 to 100.';
  }
  const isHeld = isSize(joint.pullN) && isSize(joint.acrossMm) && isSize(joint.safety ?? MAGNET_SAFETY);
  if (!isHeld) return 'Magnets need the pull of one pair, N, and the width of the joint: give both.';
  return massKg !== undefined && isSize(massKg)
    ? null
    : 'Magnets need the mass of the prop, kg: weigh it or guess high.';
}
