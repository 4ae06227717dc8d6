import type { Finding } from '../base/finding.ts';
import { fail, ok, type Result } from '../base/result.ts';
import type { ArtPath, Artwork } from '../model/artwork.ts';
import type { PlainWork } from '../model/plain-piece.ts';
import type { ArtworkCraft } from '../model/artwork-craft.ts';
import { artworkWork } from '../steps/artwork/artwork-work.ts';
import { boxOfArtwork } from '../steps/artwork/copied-artwork.ts';
import { inlayPair } from '../steps/artwork/inlay.ts';
import { offsetArtwork } from '../steps/artwork/offset-artwork.ts';
import { raisedStack } from '../steps/artwork/raised-stack.ts';
import { repeatAlong } from '../steps/artwork/repeat-along.ts';
import { repeatRound } from '../steps/artwork/repeat-round.ts';
import { scatter } from '../steps/artwork/scatter.ts';

export interface CraftedArtwork {
  readonly kind: ArtworkCraft['kind'];
  readonly artwork: Artwork;
  /** By name; mm, mm² or mm³ as the name ends. */
  readonly figures: Readonly<Record<string, number>>;
  /** Pieces of foam and the order of the work, where that comes of it. */
  readonly work: PlainWork | null;
}

/**
 * Does one thing with artwork.
 * @param other  what it is laid along or scattered over; null where there is none.
 * @returns fails with `artwork/…`, each telling what to do.
 */
export function craftArtwork(artwork: Artwork, craft: ArtworkCraft, other: Artwork | null): Result<CraftedArtwork> {
  const { kind } = craft;
  switch (craft.kind) {
    case 'cut':
      return mapped(artworkWork(artwork, craft), (work) => ({ kind, artwork, figures: {}, work }));
    case 'offset':
      return mapped(offsetArtwork(artwork, craft.distanceMm, craft.corners), (made) => ({
        kind,
        artwork: made,
        figures: { distanceMm: craft.distanceMm },
        work: null,
      }));
    case 'inlay':
      return mapped(inlayPair(artwork, craft), ({ pocket, insert, pocketMm, insertMm, gapMm }) => ({
        kind,
        artwork: together(artwork, [pocket, insert]),
        figures: { pocketMm, insertMm, gapMm },
        work: null,
      }));
    case 'raised':
      return mapped(raisedStack(artwork, craft), ({ layers, sandMm3, fillMm3, withinMm3, work }) => ({
        kind,
        artwork: together(
          artwork,
          layers.map((layer, i) => suffixed(layer.artwork, `, layer ${i + 1}`)),
        ),
        figures: {
          ...Object.fromEntries(layers.map(({ setbackMm }, i) => [`layer${i + 1}SetbackMm`, setbackMm])),
          sandMm3,
          fillMm3,
          withinMm3,
        },
        work,
      }));
    case 'round': {
      const { minY, maxY } = boxOfArtwork(artwork);
      const made = repeatRound(artwork, { ...craft, stripMm: craft.stripMm ?? 2 * (maxY - minY) });
      return mapped(made, ({ artwork: copies, count, round, spacing, differenceMm, work }) => ({
        kind,
        artwork: copies,
        figures: {
          count,
          insideLengthMm: round.inside,
          flatLengthMm: round.flat,
          outsideLengthMm: round.outside,
          insideSpacingMm: spacing.inside,
          flatSpacingMm: spacing.flat,
          outsideSpacingMm: spacing.outside,
          differenceMm,
        },
        work,
      }));
    }
    case 'along': {
      const curve = other === null ? null : firstLine(other);
      if (curve === null)
        return fail('artwork/along-none', 'The drawing to go along holds no line: draw one as a path.');
      return mapped(repeatAlong(artwork, curve, craft), ({ artwork: copies, places, spacingMm, lengthMm }) => ({
        kind,
        artwork: copies,
        figures: { count: places.length, spacingMm, curveLengthMm: lengthMm },
        work: null,
      }));
    }
    case 'scatter':
      if (other === null) return fail('artwork/scatter-area', 'There is no drawing to scatter over: name one.');
      return mapped(scatter(artwork, other, craft), ({ artwork: copies, places, radiusMm, roomLeftMm }) => ({
        kind,
        artwork: copies,
        figures: { count: places.length, radiusMm, roomLeftMm },
        work: null,
      }));
  }
}

const mapped = <T>(result: Result<T>, to: (value: T) => CraftedArtwork): Result<CraftedArtwork> =>
  result.ok ? ok(to(result.value), result.notes satisfies readonly Finding[]) : result;

/** The first open line, else the first outline whose exact parts are known. */
function firstLine({ pieces }: Artwork): ArtPath | null {
  const open = pieces.flatMap(({ lines }) => lines)[0] as Artwork['pieces'][0]['lines'][0] | undefined;
  const closed = pieces.flatMap(({ regions }) => regions).find(({ outline }) => outline.path !== null);
  return open?.path ?? closed?.outline.path ?? null;
}

const suffixed = (artwork: Artwork, suffix: string): Artwork => ({
  ...artwork,
  pieces: artwork.pieces.map((piece) => ({ ...piece, name: `${piece.name}${suffix}` })),
});

function together(source: Artwork, parts: readonly Artwork[]): Artwork {
  const whole = { ...source, pieces: parts.flatMap(({ pieces }) => pieces) };
  const box = boxOfArtwork(whole);
  return {
    ...whole,
    widthMm: box.maxX - box.minX,
    heightMm: box.maxY - box.minY,
    deviationMm: Math.max(...parts.map(({ deviationMm }) => deviationMm)),
  };
}
