import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { chainSweep, curveThrough, line, type OutlineSegment } from '../../geom/outline.ts';
import { deg, vec2, type Vec2 } from '../../geom/vec.ts';
import { BEND_LIMITS } from '../../model/bend-check.ts';
import type { Winding, WindingWish } from '../../model/build-up.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type { PlainDraft, PlainLine } from '../../model/plain-piece.ts';
import { flatStrip } from './flat-strip.ts';
import type { Profile } from './profile.ts';
import { windingPath, type WindingPath } from './winding-path.ts';
import { mark } from './wrap-piece.ts';

export interface WoundStrip {
  readonly winding: Winding;
  /** Null where the strip has no thickness: it is no foam. */
  readonly piece: PlainDraft | null;
  readonly path: WindingPath;
  readonly findings: readonly Finding[];
}

/** Per cent by which the edges of a strip that is pulled sideways give: told from, and too much [J], as foam that is not heated. */
const STRETCH_NOTICE_PCT = 3;
const STRETCH_TOO_MUCH_PCT = 8;

/** Heading that changes by more than this where two stretches of the profile meet, degrees, makes a crease in the strip. */
const KINK_DEG = 2;

/** @returns the strip with its marks and its flat shape; fails with `core/winding`. */
export function windStrip(profile: Profile, wish: WindingWish, number: number): Result<WoundStrip> {
  const path = windingPath(profile, wish);
  if (!path.ok) return path;
  const { widthMm, starts } = wish;
  const { parts, turned, stripMm } = path.value;
  const [first, last] = [parts[0], parts[parts.length - 1]];
  const [begin, end] = [first.at(first.from), last.at(last.to)];
  let [leastPitch, mostPitch, leastLap, mostLap, mostCurve, leastBend] = [
    Infinity,
    0,
    Infinity,
    -Infinity,
    0,
    Infinity,
  ];
  for (const part of parts) {
    for (let i = 0; i <= LOOKS; i += 1) {
      const { turnPerMm, radius, lead, curvature } = part.at(part.from + ((part.to - part.from) * i) / LOOKS);
      const pitch = (2 * Math.PI) / turnPerMm;
      const lap = widthMm - (2 * Math.PI * radius * Math.sin(lead)) / starts;
      [leastPitch, mostPitch] = [Math.min(leastPitch, pitch), Math.max(mostPitch, pitch)];
      [leastLap, mostLap] = [Math.min(leastLap, lap), Math.max(mostLap, lap)];
      mostCurve = Math.max(mostCurve, Math.abs(curvature));
      leastBend = Math.min(leastBend, radius / Math.cos(lead) ** 2);
    }
  }
  if (mostCurve * widthMm > 0.5)
    return fail(
      'core/winding',
      'The strip is too wide to follow this taper: take a narrower strip, or cover it with a wrap.',
    );
  const isStraight = mostCurve * stripMm < STRAIGHT;
  const ends = [begin.lead, end.lead] as const;
  const skew = (lead: number): number => widthMm / 2 / Math.tan(lead);
  const flat = wish.cut === 'curved' && !isStraight ? flatStrip(path.value, widthMm) : null;
  if (flat !== null && !flat.ok) return flat;
  const winding: Winding = {
    fromMm: wish.fromMm,
    toMm: wish.toMm,
    starts,
    leadDeg: [deg(begin.lead), deg(end.lead)],
    pitchMm: [leastPitch, mostPitch],
    overlapMm: [leastLap, mostLap],
    turns: turned / (2 * Math.PI),
    stripMm,
    cutMm: stripMm + skew(begin.lead) + skew(end.lead),
    endCutDeg: [deg(begin.lead), deg(end.lead)],
    edgeStretchPct: wish.cut === 'curved' ? 0 : 50 * mostCurve * widthMm,
    leastFlatRadiusMm: isStraight ? null : 1 / mostCurve,
    crossings: Array.from({ length: starts }, (_, strip) => ({
      strip: strip + 1,
      atMm: crossingsOf(path.value, strip, starts),
    })),
  };
  const outline = flat === null ? straightOutline(stripMm, widthMm, ends) : flat.value;
  const turnedOver = wish.hand === 'left' ? outline.map((chain) => mirrored(chain)).reverse() : outline;
  const names =
    wish.hand === 'left' ? ['start', 'upper edge', 'end', 'lower edge'] : ['lower edge', 'end', 'upper edge', 'start'];
  const edges = turnedOver.map((segment, i) => squareEdge(names[i], [segment]));
  const sign = wish.hand === 'left' ? -1 : 1;
  const piece: PlainDraft = {
    key: `winding-${number}`,
    name: `strip ${number}`,
    quantity: starts * (wish.crossed ? 2 : 1),
    thicknessMm: wish.thicknessMm,
    drawnAt: wish.neutralFraction,
    outline: edges,
    holes: [],
    bend: { kind: 'rolled', leastRadiusMm: leastBend },
    lines: flat === null ? lapLines(wish, stripMm, sign) : [],
    notes: [
      `Wind it ${wish.hand}-handed from ${wish.fromMm.toFixed(1)} to ${wish.toMm.toFixed(1)} mm, ${winding.turns.toFixed(2)} turns; its ends are cut ${winding.endCutDeg[0].toFixed(1)}° and ${winding.endCutDeg[1].toFixed(1)}° from its length.`,
      ...(wish.crossed ? ['Half of the strips are turned over and wound the other way.'] : []),
    ],
    areaMm2: chainSweep(edges.flatMap(({ segments }) => segments)),
  };
  return ok({
    winding,
    piece: wish.thicknessMm > 0 ? piece : null,
    path: path.value,
    findings: findingsOf(wish, winding, path.value, leastBend),
  });
}

/** Places looked at in each part for least and greatest. */
const LOOKS = 64;

/** A strip that turns less than this in all, radians, is straight: under a hundredth of a degree. */
const STRAIGHT = 1e-6;

/** Where strip `strip` of `starts` crosses the line on which the first begins: it stands that share of a turn ahead. */
function crossingsOf({ parts, turned }: WindingPath, strip: number, starts: number): readonly number[] {
  const found: number[] = [];
  const ahead = strip / starts;
  for (let i = strip === 0 ? 0 : 1; 2 * Math.PI * (i - ahead) <= turned * (1 + 1e-12); i += 1) {
    const angle = 2 * Math.PI * (i - ahead);
    const part = parts.findLast(({ turnedBefore }) => turnedBefore <= angle) ?? parts[0];
    let [a, b] = [part.from, part.to];
    for (let k = 0; k < 60; k += 1) {
      const middle = (a + b) / 2;
      if (part.turnedBefore + part.turned(middle) < angle) a = middle;
      else b = middle;
    }
    found.push((a + b) / 2);
  }
  return found;
}

/** A parallelogram, but for ends that lean differently: lower edge, end, upper edge, start, about the middle line from the origin along +x. */
function straightOutline(
  long: number,
  width: number,
  [begin, end]: readonly [number, number],
): readonly OutlineSegment[] {
  const half = width / 2;
  const [a, b] = [half / Math.tan(begin), half / Math.tan(end)];
  const corners = [vec2(a, -half), vec2(long + b, -half), vec2(long - b, half), vec2(-a, half)];
  return corners.map((from, i) => line(from, corners[(i + 1) % 4]));
}

const over = ({ x, y }: Vec2): Vec2 => ({ x: -x, y });

/** Turned over from left to right and run through the other way, so that it stays counter-clockwise. */
const mirrored = (segment: OutlineSegment): OutlineSegment =>
  segment.kind === 'curve'
    ? curveThrough([...segment.points].reverse().map(over), segment.deviationMm)
    : line(over(segment.to), over(segment.from));

/** Where the next turn comes to lie on this one. */
function lapLines(wish: WindingWish, long: number, sign: number): readonly PlainLine[] {
  if (!('overlapMm' in wish.by) || wish.by.overlapMm <= 0 || wish.keep !== 'overlap') return [];
  const y = wish.widthMm / 2 - wish.by.overlapMm;
  return [mark('placement', [0, y, sign * long, y], 'next turn to here')];
}

function findingsOf(
  wish: WindingWish,
  winding: Winding,
  { parts }: WindingPath,
  leastBend: number,
): readonly Finding[] {
  const found: Finding[] = [];
  const tell = (
    code: string,
    severity: Finding['severity'],
    text: string,
    value?: number,
    limit?: number,
    unit?: string,
  ) =>
    found.push({
      code,
      severity,
      text,
      where: {},
      ...(value === undefined ? {} : { value }),
      ...(limit === undefined ? {} : { limit }),
      ...(unit === undefined ? {} : { unit }),
    });
  const { edgeStretchPct, leastFlatRadiusMm, overlapMm } = winding;
  if (edgeStretchPct > STRETCH_NOTICE_PCT)
    tell(
      'core/winding-sideways',
      'warning',
      `A straight strip must give ${edgeStretchPct.toFixed(1)} % along its edges to follow the taper: cut it curved, to a radius of ${(leastFlatRadiusMm ?? 0).toFixed(0)} mm at least, keep it straight, or take a narrower one.`,
      edgeStretchPct,
      edgeStretchPct > STRETCH_TOO_MUCH_PCT ? STRETCH_TOO_MUCH_PCT : STRETCH_NOTICE_PCT,
      '%',
    );
  const strain = (100 * Math.max(wish.neutralFraction, 1 - wish.neutralFraction) * wish.thicknessMm) / leastBend;
  if (strain > BEND_LIMITS.noticePct)
    tell(
      'core/winding-bend',
      'warning',
      `The strip is bent so tightly that a skin changes by ${strain.toFixed(0)} %: take a thinner one.`,
      strain,
      BEND_LIMITS.noticePct,
      '%',
    );
  if (overlapMm[0] < -1e-9 && overlapMm[1] > 1e-9)
    tell(
      'core/winding-mixed',
      'note',
      `The strip overlaps by up to ${overlapMm[1].toFixed(1)} mm in places and leaves gaps of up to ${(-overlapMm[0]).toFixed(1)} mm in others: keep the overlap if it should cover alike.`,
    );
  for (let i = 1; i < parts.length; i += 1) {
    const kink = deg(parts[i].at(parts[i].from).lead - parts[i - 1].at(parts[i - 1].to).lead);
    if (Math.abs(kink) > KINK_DEG)
      tell(
        'core/winding-crease',
        'note',
        `The strip turns by ${Math.abs(kink).toFixed(1)}° at the corner at ${parts[i].from.toFixed(1)} mm and may crease there: round the corner, or keep the strip straight.`,
      );
  }
  if (wish.crossed)
    tell(
      'core/winding-crossed',
      'note',
      `Strips cross ${(2 * winding.turns * wish.starts).toFixed(0)} times: where they do the winding is ${(2 * wish.thicknessMm).toFixed(1)} mm thick, unless one passes under the other.`,
    );
  return found;
}
