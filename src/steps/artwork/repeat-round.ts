import { formatArea, formatNumber } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { line } from '../../geom/outline.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Artwork } from '../../model/artwork.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type { PlainDraft, PlainLine, PlainWork } from '../../model/plain-piece.ts';
import type { RoundWish } from '../../model/artwork-craft.ts';
import { boxOfArtwork, copiedArtwork, type CopyPlace } from './copied-artwork.ts';
import { fittedNote, MOST_COPIES, tightNote, tooMany } from './repeat-along.ts';

/** One figure on each of the surfaces of a bent strip, mm. */
export interface RoundLengths {
  readonly inside: number;
  /** As it is cut: on the neutral surface. */
  readonly flat: number;
  readonly outside: number;
}

export interface RepeatedRound {
  /** On the flat strip, whose lower left corner is nought. */
  readonly artwork: Artwork;
  readonly count: number;
  readonly round: RoundLengths;
  readonly spacing: RoundLengths;
  /** How much more stands between two on the finished outside than on the flat strip: 2 pi (1 - k) t / n. */
  readonly differenceMm: number;
  readonly work: PlainWork;
}

/**
 * Artwork at equal spacing round a barrel, on the flat strip that is bent round it: pi (D + 2 k t) long, pi D inside, pi (D + 2 t) outside. The first
 * stands half a spacing from the end, so that the joint falls between two.
 * @returns fails with `artwork/too-many`, or `artwork/strip-narrow` where the strip is less wide than the artwork is high.
 */
export function repeatRound(artwork: Artwork, wish: RoundWish): Result<RepeatedRound> {
  const { barrelMm, thicknessMm, neutralFraction, repeat, spacedOn, stripMm } = wish;
  const at = (depth: number): number => Math.PI * (barrelMm + 2 * depth * thicknessMm);
  const round = { inside: at(0), flat: at(neutralFraction), outside: at(1) };
  const count = 'count' in repeat ? repeat.count : Math.max(1, Math.round(round[spacedOn] / repeat.spacingMm));
  if (count > MOST_COPIES) return tooMany(count);
  const { minY, maxY } = boxOfArtwork(artwork);
  if (maxY - minY > stripMm + 1e-9)
    return fail(
      'artwork/strip-narrow',
      `The artwork is ${formatNumber(maxY - minY, 1)} mm high and the strip ${formatNumber(stripMm, 1)} mm wide: make the strip wider, or the artwork smaller.`,
    );
  const spacing = { inside: round.inside / count, flat: round.flat / count, outside: round.outside / count };
  const places = Array.from({ length: count }, (_, i): CopyPlace => ({
    at: { x: (i + 0.5) * spacing.flat, y: stripMm / 2 },
    turnRad: 0,
    scale: 1,
  }));
  const copies = copiedArtwork(artwork, places);
  const differenceMm = spacing.outside - spacing.flat;
  const mm = (value: number): string => formatNumber(value, 3);
  const notes: Finding[] = [
    {
      code: 'artwork/round-spacing',
      severity: 'note',
      text: `${count} at ${mm(spacing.flat)} mm on the flat strip stand ${mm(spacing.outside)} mm apart on the outside, ${mm(differenceMm)} mm more, and ${mm(spacing.inside)} mm on the barrel.`,
      value: differenceMm,
      unit: 'mm',
      where: {},
    },
    ...fittedNote(repeat, spacing[spacedOn], count),
    ...tightNote(artwork, spacing.flat, count),
  ];
  return ok(
    { artwork: copies, count, round, spacing, differenceMm, work: stripWork(copies, round, wish, notes) },
    notes,
  );
}

function stripWork(
  copies: Artwork,
  round: RoundLengths,
  { thicknessMm, neutralFraction, barrelMm, stripMm, as }: RoundWish,
  findings: readonly Finding[],
): PlainWork {
  const [a, b, c, d]: Vec2[] = [
    { x: 0, y: 0 },
    { x: round.flat, y: 0 },
    { x: round.flat, y: stripMm },
    { x: 0, y: stripMm },
  ];
  const radius = barrelMm / 2 + neutralFraction * thicknessMm;
  const draft: PlainDraft = {
    key: 'strip',
    name: 'Strip',
    quantity: 1,
    thicknessMm,
    drawnAt: neutralFraction,
    outline: [
      squareEdge('lower edge', [line(a, b)]),
      squareEdge('end', [line(b, c)], { seam: 'joint' }),
      squareEdge('upper edge', [line(c, d)]),
      squareEdge('start', [line(d, a)], { seam: 'joint' }),
    ],
    holes: [],
    bend: { kind: 'rolled', leastRadiusMm: radius, greatestRadiusMm: radius },
    lines: copies.pieces.flatMap(({ regions, lines }): PlainLine[] => [
      ...regions
        .flatMap(({ outline, holes }) => [outline, ...holes])
        .map(({ ring }): PlainLine => ({ role: as, points: ring, closed: true })),
      ...lines.map(({ points }): PlainLine => ({ role: as, points, closed: false })),
    ]),
    notes: [],
    areaMm2: round.flat * stripMm,
  };
  const onBarrel = draft.areaMm2 + round.inside * stripMm;
  const joint = 2 * thicknessMm * stripMm;
  return {
    pieces: [draft],
    steps: [
      {
        work: 'wrap',
        pieces: ['strip'],
        text: `Glue the strip round the barrel of ${formatNumber(barrelMm, 1)} mm, ${formatArea(onBarrel, 'mm')} on both faces, from its middle to both ends.`,
        glueMm2: onBarrel,
        cautions: ['adhesive'],
      },
      {
        work: 'close',
        pieces: ['strip'],
        text: `Close the joint between its ends, ${formatNumber(stripMm, 1)} mm long.`,
        glueMm2: joint,
        cautions: ['adhesive'],
      },
    ],
    findings,
    form: null,
  };
}
