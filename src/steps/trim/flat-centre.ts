import type { Vec2 } from '../../geom/vec.ts';
import { developedAt, developLine, partAt, type DevelopedLine } from './develop-line.ts';
import type { LineTurning } from './line-turning.ts';
import { smoothSeries, smoothWeight } from './smooth-series.ts';

/** The smooth centre line of a strip laid flat, at even stations along the line it follows. */
export interface FlatCentre {
  /** The line as it was, laid flat in the same plane. */
  readonly developed: DevelopedLine;
  /** Way along that line at each station, mm. */
  readonly ways: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Direction at each station, radians, without jumps. */
  readonly headings: Float64Array;
  /** Curvature, 1/mm, left > 0. */
  readonly curvature: Float64Array;
  /** Length of the centre line up to each station, mm. */
  readonly arc: Float64Array;
  /** Greatest distance of the centre line from the line it follows, mm. */
  readonly offMm: number;
  /** Waves shorter than this are smoothed away, mm. */
  readonly waveMm: number;
}

/** Stations to the shortest wave that is kept. */
const STATIONS_A_WAVE = 32;
const FEWEST_STATIONS = 24;
const MOST_STATIONS = 20000;
/** The longest wave that is tried first, in mean sides of the mesh; then half of it, and so on. */
const WAVE_SIDES = 8;
const MOST_HALVINGS = 8;
/** A closed line is laid on so many waves past both ends, so that it is smooth over its joint. */
const WAVES_ON = 2;

/**
 * The centre line of a strip: the line laid flat with its own turns, made smooth. Laid flat, what is jagged on the mesh is jagged by the same amount, so the
 * distance from the line is kept to in the plane. Waves up to eight sides of the mesh and two widths are smoothed away where that keeps within the distance,
 * else up to half as much, and so on; a circle of six times that length round keeps its radius to a part in 50 000.
 * @param withinMm  greatest distance from the line; > 0.
 * @param widthMm   of the strip; bends shorter than twice this are not followed unless the distance asks for it.
 */
export function flatCentre(
  turning: LineTurning,
  fromMm: number,
  toMm: number,
  withinMm: number,
  widthMm: number,
): FlatCentre {
  const whole = toMm - fromMm;
  let waveMm = Math.min(whole, Math.max(WAVE_SIDES * turning.meshMm, 2 * widthMm));
  let best = centreOf(turning, fromMm, toMm, waveMm);
  for (let i = 0; i < MOST_HALVINGS && best.offMm > withinMm; i += 1) {
    waveMm /= 2;
    if (whole / (waveMm / STATIONS_A_WAVE) > MOST_STATIONS) break;
    const next = centreOf(turning, fromMm, toMm, waveMm);
    if (next.offMm < best.offMm) best = next;
  }
  return best;
}

function centreOf(turning: LineTurning, fromMm: number, toMm: number, waveMm: number): FlatCentre {
  const { closed } = turning.line;
  const whole = toMm - fromMm;
  const steps = Math.min(
    MOST_STATIONS,
    Math.max(FEWEST_STATIONS, Math.ceil((STATIONS_A_WAVE * whole) / Math.max(waveMm, 1e-9))),
  );
  const step = whole / steps;
  // A closed line that is followed all the way round has no ends; a part of it has.
  const isRound = closed && whole >= turning.laid.lengthMm * (1 - 1e-12);
  const on = isRound ? Math.ceil((WAVES_ON * waveMm) / step) : 0;
  const developed = developLine(turning, fromMm - on * step, toMm + on * step);
  const count = steps + 1 + 2 * on;
  const [px, py] = [new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i += 1) {
    const at = developedAt(developed, fromMm + (i - on) * step);
    px[i] = at.x;
    py[i] = at.y;
  }
  const [sx, sy] = smoothSeries([px, py], smoothWeight(waveMm / step));
  const ways = Float64Array.from({ length: steps + 1 }, (_, i) => fromMm + i * step);
  const [headings, curvature, arc] = [0, 1, 2].map(() => new Float64Array(steps + 1));
  for (let i = 0; i <= steps; i += 1) {
    const { heading, bend } = bendAt(sx, sy, i + on);
    headings[i] = i === 0 ? heading : headings[i - 1] + wrapped(heading - headings[i - 1]);
    curvature[i] = bend;
    if (i > 0) {
      const chord = Math.hypot(sx[i + on] - sx[i + on - 1], sy[i + on] - sy[i + on - 1]);
      const mean = (curvature[i] + curvature[i - 1]) / 2;
      arc[i] = arc[i - 1] + chord * (1 + (mean * chord) ** 2 / 24);
    }
  }
  const [x, y] = [sx.slice(on, on + steps + 1), sy.slice(on, on + steps + 1)];
  const centre = { developed, ways, x, y, headings, curvature, arc, offMm: 0, waveMm };
  return { ...centre, offMm: farthestOff(centre, fromMm, toMm) };
}

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** Direction and curvature by differences over five stations (fourth order), over fewer at the ends. */
function bendAt(x: Float64Array, y: Float64Array, i: number): { heading: number; bend: number } {
  const last = x.length - 1;
  const c = Math.min(last - 1, Math.max(1, i));
  const isWide = c >= 2 && c <= last - 2;
  const first = (f: Float64Array): number =>
    isWide ? (f[c - 2] - 8 * f[c - 1] + 8 * f[c + 1] - f[c + 2]) / 12 : (f[c + 1] - f[c - 1]) / 2;
  const second = (f: Float64Array): number =>
    isWide ? (-f[c - 2] + 16 * f[c - 1] - 30 * f[c] + 16 * f[c + 1] - f[c + 2]) / 12 : f[c - 1] - 2 * f[c] + f[c + 1];
  const [ddx, ddy] = [second(x), second(y)];
  // At an end the middle of the last three stands for it, moved on by its bend.
  const [dx, dy] = [first(x) + (i - c) * ddx, first(y) + (i - c) * ddy];
  const size = Math.hypot(dx, dy);
  return { heading: Math.atan2(dy, dx), bend: size > 0 ? (dx * ddy - dy * ddx) / size ** 3 : 0 };
}

/** Across the centre line, at its stations and at the corners of the line it follows. */
function farthestOff(centre: FlatCentre, fromMm: number, toMm: number): number {
  const { developed, ways } = centre;
  let most = 0;
  const look = (way: number): void => {
    const at = developedAt(developed, way);
    const on = centreAt(centre, way);
    most = Math.max(most, Math.abs(-Math.sin(on.heading) * (at.x - on.x) + Math.cos(on.heading) * (at.y - on.y)));
  };
  for (const way of ways) look(way);
  for (const way of developed.ways) if (way >= fromMm && way <= toMm) look(way);
  return most;
}

export interface CentrePlace extends Vec2 {
  readonly heading: number;
  readonly curvature: number;
  readonly arc: number;
}

/** The centre line at a way along the line it follows; by cubic parts between stations (Hermite). */
export function centreAt(centre: FlatCentre, way: number): CentrePlace {
  const { ways, x, y, headings, curvature, arc } = centre;
  const i = partAt(ways, way);
  const t = Math.min(1, Math.max(0, (way - ways[i]) / (ways[i + 1] - ways[i])));
  const size = arc[i + 1] - arc[i];
  const [h00, h10, h01, h11] = [(1 + 2 * t) * (1 - t) ** 2, t * (1 - t) ** 2, t * t * (3 - 2 * t), t * t * (t - 1)];
  const put = (f: Float64Array, turn: (angle: number) => number): number =>
    h00 * f[i] + h01 * f[i + 1] + size * (h10 * turn(headings[i]) + h11 * turn(headings[i + 1]));
  const mix = (f: Float64Array): number => f[i] + t * (f[i + 1] - f[i]);
  const bend = size * t * (1 - t);
  return {
    x: put(x, Math.cos),
    y: put(y, Math.sin),
    // The parabola of headings that both curvatures ask for.
    heading: mix(headings) + (bend * (curvature[i] - curvature[i + 1])) / 2,
    curvature: mix(curvature),
    arc: mix(arc),
  };
}

/** The way at which the centre line is so long, mm. */
export function wayAtArc({ arc, ways }: Pick<FlatCentre, 'arc' | 'ways'>, mm: number): number {
  const i = partAt(arc, mm);
  const size = arc[i + 1] - arc[i];
  return ways[i] + (size > 0 ? (mm - arc[i]) / size : 0) * (ways[i + 1] - ways[i]);
}
