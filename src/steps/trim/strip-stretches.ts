import { centreAt, flatCentre, wayAtArc, type FlatCentre } from './flat-centre.ts';
import type { LineTurning } from './line-turning.ts';
import { isFlatSimple, flatReach } from './flat-reach.ts';

/** A strip to be: part of a smooth centre line, with straight extensions and the corner it meets its neighbour at. */
export interface StripStretch {
  readonly centre: FlatCentre;
  /** Ways along the line followed, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly before: StretchEnd;
  readonly after: StretchEnd;
}

/** `corner`: a turn to the neighbour of which each takes half, radians, left > 0, and the straight length beyond the way, mm. */
export interface StretchEnd {
  readonly kind: 'end' | 'corner' | 'joint';
  readonly turnRad: number;
  readonly straightMm: number;
}

export interface StretchWish {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly withinMm: number;
  readonly mostLengthMm: number;
  /** Added beyond the end of a closed ring, mm. */
  readonly overlapMm: number;
}

/** Share of the centre's length that the inner edge of a bend keeps at least: a tighter one is a corner and is mitred. */
const LEAST_INNER_SHARE = 0.1;
/** Farther than asked a jagged line may be left, where it would otherwise be cut at every jag: this share of the width, mm at most. */
const SLACK_SHARE = 1 / 8;
const MOST_SLACK_MM = 2;
/** A line that turns on by less than this share of all its turns within a width is jagged, not cornered. */
const JAG_SHARE = 0.5;
/** Corners of one line: beyond it is no line for a strip. */
const MOST_CORNERS = 200;

const END: StretchEnd = { kind: 'end', turnRad: 0, straightMm: 0 };
const JOINT: StretchEnd = { kind: 'joint', turnRad: 0, straightMm: 0 };

/**
 * Parts a line into strips. It is cut at corners where the strip would have to be bent tighter in its plane than its inner edge bears; the strips meet there in
 * a mitre, on straight ends as far as where their middles would cross. What then lies on itself when flat, or is too long, is cut into as few lengths as
 * there can be, alike where that is possible.
 */
export function stripStretches(turning: LineTurning, wish: StretchWish): readonly StripStretch[] {
  const { closed } = turning.line;
  const whole = turning.laid.lengthMm;
  const width = wish.leftMm + wish.rightMm;
  const isRing = closed;
  const lap = isRing ? Math.min(wish.overlapMm, whole / 2) : 0;
  const first = centreWithin(turning, 0, whole + lap, wish);
  const worst = tightest(first, wish);
  const done: StripStretch[] = [];
  if (worst === null) {
    const end = isRing ? JOINT : END;
    done.push({ centre: first, fromMm: 0, toMm: whole + lap, before: end, after: end });
  } else {
    // A ring begins at its sharpest corner; an open line is cut there and looked at again.
    const zone = cornerOf(turning, first, worst, wish);
    const queue: [number, number, StretchEnd, StretchEnd][] = isRing
      ? [[zone.to, zone.from + whole, zone.end, zone.end]]
      : [
          [0, zone.from, END, zone.end],
          [zone.to, whole, zone.end, END],
        ];
    let corners = 1;
    while (queue.length > 0) {
      const [from, to, before, after] = queue.shift() as (typeof queue)[number];
      if (!(to - from > 1e-6 * width)) continue;
      const centre = centreWithin(turning, from, to, wish);
      const tight = corners < MOST_CORNERS ? tightest(centre, wish) : null;
      if (tight === null) {
        done.push({ centre, fromMm: from, toMm: to, before, after });
        continue;
      }
      corners += 1;
      const at = cornerOf(turning, centre, tight, wish);
      queue.unshift(
        [from, Math.max(from, Math.min(at.from, to)), before, at.end],
        [Math.min(to, Math.max(at.to, from)), to, at.end, after],
      );
    }
  }
  return done.flatMap((stretch) => cutToLength(stretch, wish));
}

function centreWithin(turning: LineTurning, from: number, to: number, wish: StretchWish): FlatCentre {
  const width = wish.leftMm + wish.rightMm;
  const slack = Math.max(wish.withinMm, Math.min(MOST_SLACK_MM, width * SLACK_SHARE));
  const asAsked = flatCentre(turning, from, to, wish.withinMm, width);
  const tight = tightest(asAsked, wish);
  if (tight === null || !isJag(turning, asAsked.ways[tight], width)) return asAsked;
  for (let within = 2 * wish.withinMm; within < 2 * slack; within *= 2) {
    const wider = flatCentre(turning, from, to, Math.min(within, slack), width);
    if (wider.offMm <= slack && tightest(wider, wish) === null) return wider;
  }
  return asAsked;
}

/** Whether a line turns back what it turns within a width: then it is jagged there and has no corner. */
function isJag({ ways, turns, laid, line }: LineTurning, way: number, widthMm: number): boolean {
  let [net, gross] = [0, 0];
  for (let i = 0; i < ways.length; i += 1) {
    const apart = Math.abs(ways[i] - way);
    const near = line.closed ? Math.min(apart, Math.abs(laid.lengthMm - apart)) : apart;
    if (near > widthMm / 2) continue;
    net += turns[i];
    gross += Math.abs(turns[i]);
  }
  return Math.abs(net) < JAG_SHARE * gross;
}

/** The station where the inner edge is shortest, where that is shorter than it bears; null where nowhere is. */
function tightest({ curvature }: FlatCentre, { leftMm, rightMm }: StretchWish): number | null {
  let [found, least]: [number | null, number] = [null, LEAST_INNER_SHARE];
  for (let i = 0; i < curvature.length; i += 1) {
    const share = 1 - (curvature[i] > 0 ? curvature[i] * leftMm : -curvature[i] * rightMm);
    if (share < least) [found, least] = [i, share];
  }
  return found;
}

/** The corner about a station: the stretch that is bent too tightly, what it turns in all, and the straight ends that meet beyond it. */
function cornerOf(
  turning: LineTurning,
  { ways, curvature }: FlatCentre,
  station: number,
  { leftMm, rightMm }: StretchWish,
): { from: number; to: number; end: StretchEnd } {
  const sign = Math.sign(curvature[station]);
  const mostBend = (1 - LEAST_INNER_SHARE) / (sign > 0 ? leftMm : rightMm);
  let [from, to] = [station, station];
  while (from > 0 && sign * curvature[from - 1] > mostBend / 2) from -= 1;
  while (to + 1 < ways.length && sign * curvature[to + 1] > mostBend / 2) to += 1;
  // Of the turns that the line itself makes within it, the corner lies at their middle and reaches from the first to the last that matters.
  const whole = turning.laid.lengthMm;
  const own: [number, number][] = [];
  for (let i = 0; i < turning.ways.length; i += 1)
    for (const way of turning.line.closed
      ? [turning.ways[i] - whole, turning.ways[i], turning.ways[i] + whole]
      : [turning.ways[i]])
      if (way > ways[from] && way < ways[to]) own.push([way, turning.turns[i]]);
  const turnRad = own.reduce((sum, [, turn]) => sum + turn, 0);
  const most = Math.max(...own.map(([, turn]) => Math.abs(turn)), 0);
  const sharp = own.filter(([, turn]) => Math.abs(turn) > most / 4);
  if (sharp.length === 0)
    return { from: ways[station], to: ways[station], end: { kind: 'corner', turnRad: 0, straightMm: 0 } };
  const [first, last] = [Math.min(...sharp.map(([way]) => way)), Math.max(...sharp.map(([way]) => way))];
  const half = Math.min(Math.abs(turnRad) / 2, 1.2);
  const straightMm = half > 0 ? (((last - first) / 2) * Math.tan(half)) / half : 0;
  return { from: first, to: last, end: { kind: 'corner', turnRad, straightMm } };
}

/** Cuts a stretch where it is too long or would lie on itself; joints are square across. */
export function cutToLength(stretch: StripStretch, wish: StretchWish): readonly StripStretch[] {
  const { centre, fromMm, toMm, before, after } = stretch;
  const isGood = (from: number, to: number): boolean =>
    flatReach(centre, from, to, wish) <= wish.mostLengthMm && isFlatSimple(centre, from, to, wish);
  if (isGood(fromMm, toMm)) return [stretch];
  // As far as it goes each time is as few as there can be: what is good stays good when it is cut shorter.
  const arcs = [centreAt(centre, fromMm).arc];
  const endArc = centreAt(centre, toMm).arc;
  const least = (wish.leftMm + wish.rightMm) / 2;
  while (arcs[arcs.length - 1] < endArc - 1e-9) {
    const start = arcs[arcs.length - 1];
    let [low, high] = [Math.min(endArc, start + least), endArc];
    if (!isGood(wayAtArc(centre, start), wayAtArc(centre, high)))
      for (let i = 0; i < 24; i += 1) {
        const middle = (low + high) / 2;
        if (isGood(wayAtArc(centre, start), wayAtArc(centre, middle))) low = middle;
        else high = middle;
      }
    else low = high;
    arcs.push(low);
  }
  const parts = arcs.length - 1;
  const even = Array.from({ length: parts + 1 }, (_, i) => arcs[0] + ((endArc - arcs[0]) * i) / parts);
  const ways = (list: readonly number[]): number[] =>
    list.map((arc, i) => (i === 0 ? fromMm : i === parts ? toMm : wayAtArc(centre, arc)));
  const evenWays = ways(even);
  const cuts = evenWays.every((way, i) => i === 0 || isGood(evenWays[i - 1], way)) ? evenWays : ways(arcs);
  return cuts.slice(1).map((to, i) => ({
    centre,
    fromMm: cuts[i],
    toMm: to,
    before: i === 0 ? before : JOINT,
    after: i + 2 === cuts.length ? after : JOINT,
  }));
}
