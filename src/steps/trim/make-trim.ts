import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { MARK_SPACING_MM } from '../../base/tolerance.ts';
import { layLine } from '../../mesh/lines/along-line.ts';
import { lineThrough } from '../../mesh/lines/line-through.ts';
import type { MeshLine } from '../../mesh/lines/mesh-line.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { PlainDraft, PlainStep } from '../../model/plain-piece.ts';
import type { StripFacts, StripPlacing, TrimPlace, TrimResult, TrimWish } from '../../model/trim.ts';
import { checkTrim } from './check-trim.ts';
import { edgeStretch } from './edge-stretch.ts';
import { centreAt } from './flat-centre.ts';
import { awayFromCorners, layOn, type LaidEdges } from './laid-edges.ts';
import { lineTurning, type LineTurning } from './line-turning.ts';
import { ontoSurface, runsOn } from './onto-surface.ts';
import { trimSection, type TrimSection } from './profile.ts';
import { stripBend } from './strip-bend.ts';
import { MARK_MM, stripPiece } from './strip-piece.ts';
import { cutToLength, stripStretches, type StretchWish, type StripStretch } from './strip-stretches.ts';
import { stripFindings, stripNotes, tenth } from './strip-words.ts';
import { rimSide, wayOnOther, type TrimGround, type TrimLine } from './trim-ground.ts';
import { wrappedCentre } from './wrapped-centre.ts';

interface Strips {
  readonly stretches: readonly StripStretch[];
  /** Of strips wrapped over a rim: the stretch that stays; null where it is measured on the surface. */
  readonly wrapped: { readonly left: readonly TrimPlace[]; readonly right: readonly TrimPlace[] } | null;
}

/**
 * Strips along lines of a surface: flat pieces with true edges, what bends, twists and stretches them, where they lie on the surface, and match marks on both.
 * @returns `trim/…` where a wish makes no strip, or an edging's line is no open edge.
 */
export function makeTrim(
  { foot, neutral }: TrimGround,
  lines: readonly TrimLine[],
  wish: Omit<TrimWish, 'along'>,
): Result<TrimResult> {
  const checked = checkTrim(wish);
  if (!checked.ok) return checked;
  const section = trimSection(wish.profile, wish.widthMm, wish.thicknessMm, wish.neutralFraction);
  const made: { piece: PlainDraft; facts: StripFacts; placing: StripPlacing; step: PlainStep }[] = [];
  const findings: Finding[] = [];
  for (const one of lines) {
    const turning = lineTurning(neutral, one.line);
    if (!(turning.laid.lengthMm > 0) || !turning.turns.every(Number.isFinite))
      return fail('trim/line', `The line ${one.name} has no length or runs over empty triangles: draw another.`);
    const sides = sidesOf(wish, section);
    const strips = stripsOf(neutral, turning, one, wish, sides);
    if (!strips.ok) return strips;
    const { stretches, wrapped } = strips.value;
    const marks = marksOf(foot, turning, one, wish, stretches);
    for (const [i, stretch] of stretches.entries()) {
      const key = stretches.length === 1 ? one.name : `${one.name}-${i + 1}`;
      const name = stretches.length === 1 ? `Strip ${one.name}` : `Strip ${one.name} ${i + 1} of ${stretches.length}`;
      const laid = layOn(neutral, turning, stretch, sides, wrapped !== null);
      const facts = factsOf(neutral, turning, stretch, laid, { key, line: one.name }, wish, section, wrapped);
      const marksAt = marks.filter((way) => way > stretch.fromMm && way < stretch.toMm);
      const placing = placingOf(foot, neutral, turning, stretch, sides, laid, key, wrapped === null ? marksAt : []);
      if (!placing.ok) return placing;
      const notes = stripNotes(facts, wish.profile);
      const piece = stripPiece(stretch, sides, section, wish, facts, name, marksAt, notes);
      const work = wrapped === null ? 'lay' : 'wrap';
      const text =
        wrapped === null
          ? `Glue ${name} over its line, mark to mark, from one end to the other.`
          : `Wrap ${name} over the rim, its middle along the middle of the edge.`;
      const step: PlainStep = { work, pieces: [key], text, glueMm2: 2 * piece.areaMm2, cautions: ['adhesive'] };
      made.push({ piece, facts, placing: placing.value, step });
      findings.push(...stripFindings(facts, name, wish.withinMm));
    }
    if (stretches.length > 1) findings.push(partedFinding(one.name, stretches));
  }
  const sanded = made.filter(({ facts }) => facts.sandMm3 > 0);
  const sandSteps: PlainStep[] = sanded.map(({ facts, piece }) => ({
    work: 'sand',
    pieces: [facts.key],
    text: `Sand ${piece.name} to its profile: ${tenth(facts.sandMm3 / 1000)} cm³ come off.`,
    glueMm2: 0,
    cautions: ['dust'],
  }));
  return ok({
    work: {
      pieces: made.map(({ piece }) => piece),
      steps: [...sandSteps, ...made.map(({ step }) => step)],
      findings,
      form: null,
    },
    strips: made.map(({ facts }) => facts),
    placing: made.map(({ placing }) => placing),
  });
}

/** How far the strip reaches to each side of the line at its neutral surface, mm. */
function sidesOf(
  { widthMm, leftShare, profile }: Omit<TrimWish, 'along'>,
  { flatMm, leftLessMm, rightLessMm }: TrimSection,
): { leftMm: number; rightMm: number } {
  if (profile.kind === 'edge-roll' || profile.kind === 'u-binding') return { leftMm: flatMm / 2, rightMm: flatMm / 2 };
  return { leftMm: widthMm * leftShare - leftLessMm, rightMm: widthMm * (1 - leftShare) - rightLessMm };
}

function stripsOf(
  surface: Surface,
  turning: LineTurning,
  { name, line }: TrimLine,
  wish: Omit<TrimWish, 'along'>,
  sides: { leftMm: number; rightMm: number },
): Result<Strips> {
  const { profile, thicknessMm, neutralFraction, withinMm, overlapMm } = wish;
  const stretchWish: StretchWish = { ...sides, withinMm, overlapMm, mostLengthMm: wish.mostLengthMm ?? Infinity };
  if (profile.kind !== 'edge-roll' && profile.kind !== 'u-binding')
    return ok({ stretches: stripStretches(turning, stretchWish), wrapped: null });
  const side = rimSide(surface, line);
  if (side === null)
    return fail(
      'trim/no-rim',
      `The line ${name} is no open edge of the prop, so nothing can be wrapped over it: choose an edge.`,
    );
  const { centre, left, right } = wrappedCentre(
    surface,
    turning,
    side,
    profile,
    thicknessMm,
    neutralFraction,
    withinMm,
    overlapMm,
  );
  const end = { kind: line.closed ? 'joint' : 'end', turnRad: 0, straightMm: 0 } as const;
  const whole = { centre, fromMm: 0, toMm: centre.ways[centre.ways.length - 1], before: end, after: end };
  return ok({ stretches: cutToLength(whole, stretchWish), wrapped: { left, right } });
}

/** Ways of match marks along the line on the neutral surface: the seam's own, or such as cannot be mistaken when turned end for end. */
function marksOf(
  foot: Surface,
  { laid }: LineTurning,
  { line, marksAtMm }: TrimLine,
  { hasMarks }: Omit<TrimWish, 'along'>,
  stretches: readonly StripStretch[],
): readonly number[] {
  if (!hasMarks) return [];
  if (marksAtMm !== undefined) {
    const below = layLine(foot, line);
    return marksAtMm.map((mm) => wayOnOther(below, laid, mm));
  }
  return stretches.flatMap(({ fromMm, toMm }) => {
    const count = Math.max(2, Math.ceil((toMm - fromMm) / (UNEVEN * MARK_SPACING_MM)) + 1);
    return Array.from({ length: count - 1 }, (_, i) => {
      const share = (i + 1 - UNEVEN_SHIFT * ((i + 1) % 2)) / count;
      return fromMm + (toMm - fromMm) * share;
    });
  });
}

/** Marks stand at this share of the greatest spacing, and every other one is moved by that share of a space, so that they are uneven. */
const UNEVEN = 0.75;
const UNEVEN_SHIFT = 0.2;

function factsOf(
  surface: Surface,
  turning: LineTurning,
  stretch: StripStretch,
  laid: LaidEdges,
  named: { key: string; line: string },
  wish: Omit<TrimWish, 'along'>,
  section: TrimSection,
  wrapped: Strips['wrapped'],
): StripFacts {
  const { centre, fromMm, toMm, before, after } = stretch;
  const [start, end] = [centreAt(centre, fromMm), centreAt(centre, toMm)];
  const sides = sidesOf(wish, section);
  const wave = Math.max(4 * turning.meshMm, wish.widthMm);
  const { bend, twist } = stripBend(surface, turning, fromMm, toMm, Math.min(wave, toMm - fromMm));
  const mostBend = bend.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
  const mostTwist = twist.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
  const windowMm = Math.max(wish.widthMm, 4 * turning.meshMm);
  const stretchOf = (side: 'left' | 'right', mm: number): readonly TrimPlace[] =>
    wrapped === null
      ? edgeStretch(surface, centre, awayFromCorners(laid[side], stretch, Math.abs(mm)), mm, windowMm, start.arc)
      : wrapped[side]
          .filter(({ atMm }) => atMm >= start.arc - 1e-9 && atMm <= end.arc + 1e-9)
          .map(({ atMm, value }) => ({ atMm: atMm - start.arc, value }));
  const left = stretchOf('left', sides.leftMm);
  const right = stretchOf('right', -sides.rightMm);
  const lengthMm = end.arc - start.arc + before.straightMm + after.straightMm;
  const flatTurnRad = end.heading - start.heading;
  const outer = Math.max(wish.neutralFraction, 1 - wish.neutralFraction);
  let mostCurve = 0;
  for (let i = 0; i < centre.ways.length; i += 1)
    if (centre.ways[i] >= fromMm && centre.ways[i] <= toMm)
      mostCurve = Math.max(mostCurve, Math.abs(centre.curvature[i]));
  return {
    ...named,
    fromMm,
    toMm,
    lengthMm,
    offMm: centre.offMm,
    leastFlatRadiusMm: 1 / mostCurve,
    flatTurnRad,
    leastBendRadiusMm: 1 / mostBend,
    skinStrainPercent: 100 * outer * wish.thicknessMm * mostBend,
    twistDegPer100Mm: (100 * mostTwist * 180) / Math.PI,
    leftStretchPercent: left,
    rightStretchPercent: right,
    greatestStretchPercent: [...left, ...right].reduce(
      (most, { value }) => (Math.abs(value) > Math.abs(most) ? value : most),
      0,
    ),
    // Pappus: an area swept along, each part by the length of its own way.
    sandMm3: section.sandMm2 * (lengthMm - section.sandAtMm * flatTurnRad),
  };
}

function placingOf(
  foot: Surface,
  neutral: Surface,
  turning: LineTurning,
  stretch: StripStretch,
  { leftMm, rightMm }: { leftMm: number; rightMm: number },
  laid: LaidEdges,
  key: string,
  marksAt: readonly number[],
): Result<StripPlacing> {
  const join = (runs: ReturnType<typeof runsOn>): Result<MeshLine[]> => {
    const joined: MeshLine[] = [];
    for (const run of runs) {
      const line = lineThrough(foot, run, false);
      if (!line.ok) return line;
      joined.push(line.value);
    }
    return ok(joined);
  };
  const tick = (way: number, sign: 1 | -1): ReturnType<typeof runsOn> => {
    const edge = sign > 0 ? leftMm : rightMm;
    return runsOn(
      [edge, edge + MARK_MM].map((mm) => ontoSurface(neutral, turning, stretch.centre, stretch, way, sign * mm)),
    );
  };
  const [left, right] = [join(runsOn(laid.left.places)), join(runsOn(laid.right.places))];
  const marks = join(marksAt.flatMap((way) => [...tick(way, 1), ...tick(way, -1)]));
  if (!left.ok) return left;
  if (!right.ok) return right;
  if (!marks.ok) return marks;
  return ok({ key, left: left.value, right: right.value, marks: marks.value });
}

function partedFinding(name: string, stretches: readonly StripStretch[]): Finding {
  const corners = stretches.filter(({ before }) => before.kind === 'corner').length;
  const why =
    corners > 0
      ? `${corners} corners too sharp for its width, where they meet in mitres`
      : 'its length or its flat shape';
  return {
    code: 'trim/parted',
    severity: 'note',
    text: `The strip along ${name} is cut into ${stretches.length} lengths because of ${why}.`,
    value: stretches.length,
    where: { seam: name },
  };
}
