import { formatAngle } from '../../base/lean-words.ts';
import { formatMm, formatNumber } from '../../base/format-length.ts';
import type { PieceId } from '../../base/ids.ts';
import type { BevelRange, FoamPiece } from '../../model/foam-piece.ts';
import type { GluedBody, GluingBatch, GluingRun, GluingStep, WarmWork } from '../../model/gluing.ts';

/** Pieces by their ids, as lists name them. */
export type Named = ReadonlyMap<PieceId, Pick<FoamPiece, 'number' | 'name'>>;

const ROMAN: readonly (readonly [number, string])[] = [
  [50, 'L'],
  [40, 'XL'],
  [10, 'X'],
  [9, 'IX'],
  [5, 'V'],
  [4, 'IV'],
  [1, 'I'],
];

/** 4 → IV: pieces have figures, seams letters, units these. */
export function roman(number: number): string {
  let rest = number;
  let text = '';
  for (const [value, sign] of ROMAN) {
    for (; rest >= value; rest -= value) text += sign;
  }
  return text;
}

/** `piece 5 Keel left` or `unit II (pieces 2, 6)`. */
export function bodyText({ pieces, unit }: GluedBody, named: Named): string {
  const [first] = pieces;
  if (unit === undefined) return `${named.get(first)?.number ?? ''} ${named.get(first)?.name ?? ''}`.trim();
  return `unit ${roman(unit)} (${numbersText(pieces, named)})`;
}

/** `1, 3 to 6`. */
function numbersText(pieces: readonly PieceId[], named: Named): string {
  const numbers = pieces.map((id) => named.get(id)?.number ?? 0).sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last?.[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`))
    .join(', ');
}

/** What a step does, in one line. */
export function stepTitle({ number, work, adds, onto, makes, runs }: GluingStep, named: Named): string {
  const what = ((): string => {
    if (work === 'close') return `Close ${bodyText(adds, named)}`;
    if (work === 'lay') return `Lay ${bodyText(adds, named)} on the sheet below`;
    return `Join ${bodyText(adds, named)} to ${onto === undefined ? 'the rest' : bodyText(onto, named)}`;
  })();
  const isNew = work === 'join' && makes.unit !== undefined && adds.unit === undefined && onto?.unit === undefined;
  const made = isNew ? `: unit ${roman(makes.unit ?? 0)}` : '';
  const along = work === 'close' && runs.length > 0 ? ` along ${runs.map(({ letter }) => letter).join(', ')}` : '';
  return `${number}. ${what}${along}${made}`;
}

/** How a seam is glued, one line or more. */
export function runText(run: GluingRun): string {
  const { kind, roll, reach, steep } = run;
  const marks = run.marks === null ? '' : `, ${marksText(run.marks)}`;
  const stretch = `Seam ${run.letter}, ${formatMm(run.toMm - run.fromMm)}${marks}, ${kind}, ${bevelsText(run.bevelDeg)}.`;
  const rolled = { ahead: 'roll on from there', back: 'roll on from there', both: 'roll both ways' }[roll];
  const fill = steep === undefined ? '' : ` ${steepText(steep)}`;
  const outside = reach === 'outside' ? ' No hand reaches it from within any more: press it from outside.' : '';
  return `${stretch} Touch first ${touchText(run)}, ${rolled}.${fill}${outside}`;
}

function touchText({ touch: { at, mark, beside } }: GluingRun): string {
  if (at === 'mark') return `at mark ${mark ?? ''}`;
  if (at === 'middle') return 'half-way';
  if (at === 'corner') return beside === undefined || beside === '' ? 'at the corner' : `at the corner with ${beside}`;
  return 'at its end';
}

function marksText({ first, last }: { readonly first: number; readonly last: number }): string {
  const [from, to] = [Math.min(first, last), Math.max(first, last)];
  return from === to ? `mark ${from}` : `marks ${from} to ${to}`;
}

/** Bevels of both sides, without their signs: `square`, `bevel 22.4°`, `bevel 2° to 18°`, `bevels 12° and 45°`. */
function bevelsText([a, b]: GluingRun['bevelDeg']): string {
  const [own, other] = [rangeText(a), rangeText(b)];
  if (own === other) return own === '0°' ? 'square' : `bevel ${own}`;
  return `bevels ${own} and ${other}`;
}

function rangeText({ min, max }: BevelRange): string {
  const ends = [Math.abs(min), Math.abs(max)].sort((p, q) => p - q);
  const least = min < 0 && max > 0 ? 0 : ends[0];
  const [from, to] = [least, ends[1]].map((deg) =>
    ends[1] - least < 1 ? formatAngle(ends[1]) : formatAngle(Math.round(deg)),
  );
  return from === to ? to : `${from} to ${to}`;
}

function steepText(steep: NonNullable<GluingRun['steep']>): string {
  if (steep.way === 'split')
    return steep.strips === 1 ? 'Its strip goes between.' : `Its ${steep.strips} strips go between.`;
  return steep.way === 'fill'
    ? `Fill the gap at the ${steep.openOn} afterwards.`
    : `Lay the trim strip over the gap at the ${steep.openOn}.`;
}

/** What is warmed beforehand. */
export function warmText({ piece, why, figure, place }: WarmWork, named: Named): string {
  const { number = 0, name = '' } = named.get(piece) ?? {};
  const own = `${number} ${name}`;
  if (why === 'bend') return `${own}: bend it, to a radius of ${formatMm(Math.round(figure))} at the tightest.`;
  if (why === 'open') return `${own}: warm its scored lines until they open.`;
  return `${own}: form it ${place}, where the foam gives ${formatNumber(figure, 1)} %.`;
}

export function batchTitle({ number, sculpt, steps, seamMm }: GluingBatch): string {
  const [first, last] = [steps[0], steps[steps.length - 1]];
  const whose = sculpt === undefined ? '' : `, ${sculpt.name}`;
  return `Batch ${number}${whose}: ${first === last ? `step ${first}` : `steps ${first} to ${last}`}, ${formatMm(Math.round(seamMm))} of seam`;
}

const minutes = (min: number): string => `${Math.ceil(min)} min`;

/** When to brush and when to join. */
export function batchTimesText({ brushedMin, joinFromMin, joinedMin }: GluingBatch): string {
  return `Brush both edges of every seam, in the order of the steps: about ${minutes(brushedMin)}. Join from ${minutes(joinFromMin)} on, counted from the first stroke; all is shut after about ${minutes(joinedMin)}.`;
}
