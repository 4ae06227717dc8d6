import { formatNumber } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { ArtOpenLine } from '../../model/artwork.ts';
import type { JoinedEnds } from './join-ends.ts';
import type { Crossing, Doubling } from './line-faults.ts';
import type { PieceRemark } from './piece-of-lines.ts';
import type { RegularChange } from './regularise.ts';
import type { Symmetrised, Symmetry } from './symmetrise.ts';

/** A length in a sentence, to the hundredth of a mm. */
const mm = (value: number): string => `${formatNumber(value, value < 1 ? 3 : 2)} mm`;

const placeText = ({ x, y }: Vec2): string => `x ${formatNumber(x, 1)}, y ${formatNumber(y, 1)} mm`;

const at = (piece: string, { x, y }: Vec2): Finding['where'] => ({ piece, point: [x, y, 0] });

export function openFinding(piece: string, { shape, path, lengthMm }: ArtOpenLine): Finding {
  const [first, last] = [path.segments[0].from, path.segments[path.segments.length - 1].to];
  const gap = Math.hypot(first.x - last.x, first.y - last.y);
  // Ends so near beside the length of the line were meant to meet.
  const isMeant = gap < 0.1 * lengthMm;
  return {
    code: 'artwork/open',
    severity: isMeant ? 'warning' : 'note',
    text: isMeant
      ? `${shape} is open by ${mm(gap)} at ${placeText(last)}: close it in the drawing, or let ends no farther apart than ${mm(roundedUp(gap))} be joined.`
      : `${shape} is an open line from ${placeText(first)} to ${placeText(last)}: it bounds nothing. Close it if it is to be cut out.`,
    value: gap,
    unit: 'mm',
    where: at(piece, last),
  };
}

export function openFillFinding(piece: string, shape: string, first: Vec2, last: Vec2): Finding {
  const gap = Math.hypot(first.x - last.x, first.y - last.y);
  return {
    code: 'artwork/open-fill',
    severity: 'warning',
    text: `${shape} is filled but open by ${mm(gap)} at ${placeText(last)}: its outline is closed straight there, as the fill shows. Close it in the drawing if it should run otherwise.`,
    value: gap,
    unit: 'mm',
    where: at(piece, last),
  };
}

/** A gap up to the next round figure. */
const roundedUp = (gap: number): number => {
  const step = 10 ** Math.floor(Math.log10(Math.max(gap, 1e-3)));
  return Math.ceil((gap * 1.0001) / step) * step;
};

export const joinedFinding = (piece: string, { at: place, gapMm, shapes }: JoinedEnds): Finding => ({
  code: 'artwork/joined',
  severity: 'note',
  text: `${shapes[0] === shapes[1] ? `Ends of ${shapes[0]}` : `${shapes[0]} and ${shapes[1]}`} were joined over a gap of ${mm(gapMm)} at ${placeText(place)}.`,
  value: gapMm,
  unit: 'mm',
  where: at(piece, place),
});

export function crossingFinding(piece: string, names: readonly [string, string], crossing: Crossing): Finding {
  const isSelf = crossing.lines[0] === crossing.lines[1];
  const often = crossing.count === 1 ? '' : `${crossing.count} times, first `;
  return {
    code: 'artwork/crossing',
    severity: 'warning',
    text: `${isSelf ? `${names[0]} crosses itself` : names[0] === names[1] ? `Lines of ${names[0]} cross` : `${names[0]} and ${names[1]} cross`} ${often}at ${placeText(crossing.at)}: a knife would part the piece there. Unite or trim the shapes in the drawing.`,
    value: crossing.count,
    where: at(piece, crossing.at),
  };
}

export function doubledFinding(
  piece: string,
  names: readonly [string, string],
  { lines, lengthMm, at: place }: Doubling,
  isLeftOut: boolean,
): Finding {
  const isSelf = lines[0] === lines[1];
  const what = isSelf ? `${names[0]} runs over itself` : `${names[0]} and ${names[1]} lie over each other`;
  return {
    code: 'artwork/doubled',
    severity: 'warning',
    text: isLeftOut
      ? `${names[1]} is drawn twice, over ${mm(lengthMm)} at ${placeText(place)}: one of the two is left out. Delete it in the drawing.`
      : `${what} for ${mm(lengthMm)} at ${placeText(place)}: it would be cut twice. Delete one of the lines in the drawing.`,
    value: lengthMm,
    unit: 'mm',
    where: at(piece, place),
  };
}

export const regularFinding = (piece: string, shape: string, changes: readonly RegularChange[]): Finding => {
  const worst = Math.max(...changes.map(({ deviationMm }) => deviationMm));
  const counted = (['circle', 'arc', 'straight line'] as const).flatMap((to) => {
    const count = changes.filter((one) => one.to === to).length;
    return count === 0 ? [] : [`${count} ${to}${count === 1 ? '' : 's'}`];
  });
  return {
    code: 'artwork/regular',
    severity: 'note',
    text: `${shape} was made regular: ${counted.join(', ')}; its line moved by ${mm(worst)} at most.`,
    value: worst,
    unit: 'mm',
    where: { piece },
  };
};

/** What a symmetry that was asked for came to; nothing of one that was exact, or of lines that are near none. */
export function symmetryFindings(
  piece: string,
  shape: string,
  found: Symmetrised,
  limitMm: number,
): readonly Finding[] {
  if (found.made !== null) {
    const { made } = found;
    if (made.deviationMm <= 1e-9) return [];
    return [
      {
        code: 'artwork/symmetric',
        severity: 'note',
        text: `${shape} was made symmetric, ${symmetryText(made)}; its line moved by ${mm(made.deviationMm)} at most.`,
        value: made.deviationMm,
        limit: limitMm,
        unit: 'mm',
        where: at(piece, made.centre),
      },
    ];
  }
  if (found.nearest === null) return [];
  const { nearest } = found;
  return [
    {
      code: 'artwork/not-symmetric',
      severity: 'warning',
      text: `${shape} stays as it was: to be symmetric, ${symmetryText(nearest)}, its line would move by ${mm(nearest.deviationMm)}, more than the ${mm(limitMm)} that were allowed. Allow more, or mend the drawing.`,
      value: nearest.deviationMm,
      limit: limitMm,
      unit: 'mm',
      where: at(piece, nearest.centre),
    },
  ];
}

const symmetryText = ({ fold, axisRad, centre }: Symmetry): string =>
  [
    ...(fold > 1 ? [`${fold} times round ${placeText(centre)}`] : []),
    ...(axisRad === null
      ? []
      : [`mirrored in an axis at ${formatNumber((180 * axisRad) / Math.PI, 1)} degrees through ${placeText(centre)}`]),
  ].join(' and ');

const REMARKS: Readonly<Record<PieceRemark, string>> = {
  'united-fills':
    'filled shapes overlap and were made one outline: draw them as pieces of their own if they are to be cut singly.',
  'lost-in-fill':
    'a filled shape lies on another and has no outline of its own there: put it into a piece of its own, or into the same path if it is a hole.',
  'mixed-fills':
    'lines with and without fill lie over each other: each outline within another counts as a hole, and the next as an island.',
};

export const remarkFinding = (piece: string, remark: PieceRemark): Finding => ({
  code: `artwork/${remark}`,
  severity: 'warning',
  text: `In ${piece} ${REMARKS[remark]}`,
  where: { piece },
});
