import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { PieceId } from '../../base/ids.ts';
import type { FlatPiece, Spread } from '../../model/flat-piece.ts';
import type { StretchLimits } from '../../model/foam-stock.ts';
import type { Patch } from '../../model/patch.ts';

/** The piece as its findings call it, and where it is. */
export interface PieceLabel {
  readonly id: PieceId;
  readonly part: string;
  readonly name: string;
}

/**
 * Stretch and squash against the foam's limits (foam model 3). The figure held against the limit is the one that 99 % of the area does not
 * exceed: one sliver of a triangle is no trouble to a maker. Limits are shop rules.
 */
export function stretchFindings(
  label: PieceLabel,
  patch: Patch,
  flat: FlatPiece,
  limits: StretchLimits,
): readonly Finding[] {
  const stretch = stretchFinding('stretch', flat.stretchPct, (t) => (flat.major[t] - 1) * 100, label, patch, limits);
  const squash = stretchFinding('squash', flat.squashPct, (t) => (1 - flat.minor[t]) * 100, label, patch, limits);
  return [stretch, squash].filter((finding): finding is Finding => finding !== null);
}

function stretchFinding(
  kind: 'stretch' | 'squash',
  spread: Spread,
  percentAt: (t: number) => number,
  label: PieceLabel,
  patch: Patch,
  limits: StretchLimits,
): Finding | null {
  if (spread.p99 <= limits.noticePct) return null;
  const isTooMuch = spread.p99 > limits.tooMuchPct;
  const limit = isTooMuch ? limits.tooMuchPct : limits.noticePct;
  const places = [...patch.meshTriangles.keys()]
    .filter((t) => percentAt(t) > limit)
    .sort((a, b) => percentAt(b) - percentAt(a) || a - b);
  const must = kind === 'stretch' ? 'be pulled' : 'be gathered';
  const remedy = isTooMuch
    ? 'part it once more, or end a seam in it as a dart'
    : kind === 'stretch'
      ? 'it will go with some warmth'
      : 'press it in with some warmth';
  return {
    code: `foam/${kind}`,
    severity: isTooMuch ? 'warning' : 'note',
    text: `${label.name} must ${must} by ${percent(spread.p99)} in places (at most ${percent(spread.max)}), over the ${percent(limit)} ${isTooMuch ? 'this foam takes' : 'worth a word'} by shop rule: ${remedy}.`,
    value: spread.p99,
    limit,
    unit: '%',
    where: { part: label.part, piece: label.id, triangles: clipPlaces(places.map((t) => patch.meshTriangles[t])) },
  };
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

const percent = (x: number): string => `${x.toFixed(1)} %`;
const millimetres = (x: number): string => `${x.toFixed(1)} mm`;
