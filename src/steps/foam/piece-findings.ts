import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { PieceId } from '../../base/ids.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { StretchLimits } from '../../model/foam-stock.ts';
import type { FoamSpot, LeastRatio } from '../../model/forming.ts';
import type { Patch } from '../../model/patch.ts';

/** The piece as its findings call it, and where it is. */
export interface PieceLabel {
  readonly id: PieceId;
  readonly part: string;
  readonly name: string;
}

/** What the findings of stretch go by. */
export interface StretchFacts {
  readonly patch: Patch;
  readonly flat: FlatPiece;
  /** The piece's worst spots, the worst first. */
  readonly spots: readonly FoamSpot[];
  readonly limits: StretchLimits;
}

/**
 * Stretch and squash against the foam's limits (foam model 3). The figure held against the limit is the one that 99 % of the area does not
 * exceed: one sliver of a triangle is no trouble to a maker. Limits are shop rules. Of two findings only the first says what another way
 * of laying the piece flat could change, for it is the same for both.
 */
export function stretchFindings(label: PieceLabel, facts: StretchFacts): readonly Finding[] {
  const stretch = stretchFinding('stretch', label, facts);
  const squash = stretchFinding('squash', label, facts, stretch === null);
  return [stretch, squash].filter((finding): finding is Finding => finding !== null);
}

function stretchFinding(
  kind: 'stretch' | 'squash',
  label: PieceLabel,
  { patch, flat, spots, limits }: StretchFacts,
  isFirst = true,
): Finding | null {
  const spread = kind === 'stretch' ? flat.stretchPct : flat.squashPct;
  if (spread.p99 <= limits.noticePct) return null;
  const percentAt = (t: number): number => 100 * (kind === 'stretch' ? flat.major[t] - 1 : 1 - flat.minor[t]);
  const isTooMuch = spread.p99 > limits.tooMuchPct;
  const limit = isTooMuch ? limits.tooMuchPct : limits.noticePct;
  const places = [...patch.meshTriangles.keys()]
    .filter((t) => percentAt(t) > limit)
    .sort((a, b) => percentAt(b) - percentAt(a) || a - b);
  const must = kind === 'stretch' ? 'be pulled' : 'be gathered';
  const spot = spots.find((candidate) => candidate.kind === kind);
  const sentences = [
    `${label.name} must ${must} by ${percent(spread.p99)} in places (at most ${percent(spread.max)}), over the ${percent(limit)} ${isTooMuch ? 'this foam takes' : 'worth a word'} by shop rule: ${remedyOf(kind, isTooMuch, canBeBetter(flat.leastRatio, limit))}.`,
    spot === undefined ? null : `${capital(spot.placeText)}: ${spot.wayText}.`,
    isFirst ? leastSentence(flat.leastRatio, limit, isTooMuch) : null,
  ];
  return {
    code: `foam/${kind}`,
    severity: isTooMuch ? 'warning' : 'note',
    text: sentences.filter((sentence) => sentence !== null).join(' '),
    value: spread.p99,
    limit,
    unit: '%',
    where: {
      part: label.part,
      piece: label.id,
      triangles: clipPlaces(places.map((t) => patch.meshTriangles[t])),
      ...(spot === undefined ? {} : { point: spot.point }),
    },
  };
}

/**
 * Whether a piece could be laid flat within a limit of both stretch and squash as far as is known: then no place is longer than another by
 * more than (1 + limit) / (1 - limit). `unknown` where nothing in the piece asks for anything.
 */
function canBeBetter(least: LeastRatio | undefined, limitPct: number): 'no' | 'maybe' | 'unknown' {
  if (least === undefined || least.kind === 'flat') return 'unknown';
  return least.ratio > (1 + limitPct / 100) / (1 - limitPct / 100) ? 'no' : 'maybe';
}

function remedyOf(kind: 'stretch' | 'squash', isTooMuch: boolean, better: 'no' | 'maybe' | 'unknown'): string {
  if (isTooMuch) {
    return better === 'maybe'
      ? 'even out the worst, let seam lengths give a little, or warm it'
      : 'part it once more, or end a seam in it as a dart';
  }
  return kind === 'stretch' ? 'it will go with some warmth' : 'press it in with some warmth';
}

/** What the shape itself asks for, where it is known. */
function leastSentence(least: LeastRatio | undefined, limitPct: number, isTooMuch: boolean): string | null {
  const better = canBeBetter(least, limitPct);
  if (least === undefined || better === 'unknown') return null;
  if (better === 'maybe') {
    return isTooMuch ? 'Nothing known of its shape rules out less, so another seam is not the only way.' : null;
  }
  const held = `${Math.abs(least.heldDeg).toFixed(0)}° of ${least.kind} within ${least.radiusMm.toFixed(0)} mm`;
  return `No way of laying it flat keeps all of it under ${percent(limitPct)}, for it holds ${held}: only another seam through that place, a dart there, or warmth helps.`;
}

/** A piece that lies on itself when flat: it cannot be cut from one sheet, however little it stretches. */
export function overlapFinding(label: PieceLabel, patch: Patch, flat: FlatPiece): Finding | null {
  if (flat.overlaps.length === 0) return null;
  const triangles = [...new Set(flat.overlaps.flat())].sort((a, b) => a - b);
  return {
    code: 'foam/overlap',
    severity: 'error',
    text: `${label.name} lies over itself when flat and cannot be cut from one sheet: part it once more.`,
    value: flat.overlapCount ?? flat.overlaps.length,
    limit: 0,
    where: { part: label.part, piece: label.id, triangles: clipPlaces(triangles.map((t) => patch.meshTriangles[t])) },
  };
}

/** @param widthMm width of the widest place, mm: the largest circle that fits in. */
export function narrowFinding(label: PieceLabel, widthMm: number, thicknessMm: number, times: number): Finding | null {
  const limit = times * thicknessMm;
  if (widthMm >= limit) return null;
  return {
    code: 'foam/narrow',
    severity: 'note',
    text: `${label.name} is nowhere wider than ${millimetres(widthMm)}, under ${times} thicknesses of its foam: hard to cut clean and to glue, so join it to a neighbour if you can.`,
    value: widthMm,
    limit,
    unit: 'mm',
    where: { part: label.part, piece: label.id },
  };
}

/** What became of a side of the foam whose bevels left it no room. */
export function lossFinding(
  label: PieceLabel,
  side: 'face' | 'back',
  loss: 'none' | 'gone' | 'parted',
): Finding | null {
  if (loss === 'none') return null;
  const text =
    loss === 'gone'
      ? `${label.name} is smaller than its bevels: nothing is left of its ${side}. Its edges are drawn square on that side; use thinner foam or join it to a neighbour.`
      : `The bevels of ${label.name} part its ${side} in two: only the larger area is drawn on that side. Use thinner foam or join it to a neighbour.`;
  return {
    code: `foam/side-${loss}`,
    severity: 'warning',
    text,
    where: { part: label.part, piece: label.id },
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const percent = (x: number): string => `${x.toFixed(1)} %`;
const millimetres = (x: number): string => `${x.toFixed(1)} mm`;
