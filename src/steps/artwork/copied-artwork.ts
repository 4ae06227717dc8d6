import { mapped, type Affine } from '../../geom/affine.ts';
import type { Box2 } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { ArtOutline, ArtPiece, Artwork } from '../../model/artwork.ts';
import { boxOfPaths } from './segment-box.ts';
import { mappedPath } from './segments.ts';

/** Where the middle of a copy comes to lie, mm, how it is turned, radians counter-clockwise, and how many times as large it is. */
export interface CopyPlace {
  readonly at: Vec2;
  readonly turnRad: number;
  readonly scale: number;
}

/** The box round all lines of artwork, mm, exact where lines are. */
export function boxOfArtwork({ pieces }: Artwork): Box2 {
  const outlines = pieces.flatMap(({ regions }) => regions).flatMap(({ outline, holes }) => [outline, ...holes]);
  const paths = [
    ...outlines.map(({ path, ring }) => path ?? straight(ring)),
    ...pieces.flatMap(({ lines }) => lines.map(({ path }) => path)),
  ];
  return boxOfPaths(paths);
}

const straight = (ring: Float64Array): Parameters<typeof boxOfPaths>[0][number] => ({
  isClosed: true,
  segments: Array.from({ length: ring.length / 2 }, (_, i) => {
    const j = (2 * i + 2) % ring.length;
    return { kind: 'line', from: { x: ring[2 * i], y: ring[2 * i + 1] }, to: { x: ring[j], y: ring[j + 1] } } as const;
  }),
});

export const middleOfBox = ({ minX, minY, maxX, maxY }: Box2): Vec2 => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

/** Copies of artwork, each about the middle of its box; pieces are numbered where there is more than one copy. */
export function copiedArtwork(artwork: Artwork, places: readonly CopyPlace[]): Artwork {
  const middle = middleOfBox(boxOfArtwork(artwork));
  const pieces = places.flatMap((place, i) => {
    const map = mapTo(middle, place);
    return artwork.pieces.map((piece) => mappedPiece(piece, map, place.scale, places.length === 1 ? '' : ` ${i + 1}`));
  });
  const made = { ...artwork, pieces };
  const box = boxOfArtwork(made);
  const most = places.reduce((largest, { scale }) => Math.max(largest, scale), 0);
  return {
    ...made,
    widthMm: box.maxX - box.minX,
    heightMm: box.maxY - box.minY,
    deviationMm: artwork.deviationMm * most,
  };
}

function mapTo(middle: Vec2, { at, turnRad, scale }: CopyPlace): Affine {
  const [c, s] = [scale * Math.cos(turnRad), scale * Math.sin(turnRad)];
  return [c, s, -s, c, at.x - c * middle.x + s * middle.y, at.y - s * middle.x - c * middle.y];
}

function mappedPiece(piece: ArtPiece, map: Affine, scale: number, suffix: string): ArtPiece {
  const area = scale * scale;
  const outline = (one: ArtOutline): ArtOutline => ({
    ...one,
    path: one.path === null ? null : mappedPath(map, one.path),
    ring: mappedPoints(map, one.ring),
    lengthMm: one.lengthMm * scale,
    areaMm2: one.areaMm2 * area,
  });
  return {
    name: `${piece.name}${suffix}`,
    regions: piece.regions.map((region) => ({
      outline: outline(region.outline),
      holes: region.holes.map(outline),
      areaMm2: region.areaMm2 * area,
    })),
    lines: piece.lines.map((line) => ({
      ...line,
      path: mappedPath(map, line.path),
      points: mappedPoints(map, line.points),
      lengthMm: line.lengthMm * scale,
    })),
    areaMm2: piece.areaMm2 * area,
    lengthMm: piece.lengthMm * scale,
  };
}

function mappedPoints(map: Affine, points: Float64Array): Float64Array {
  const moved = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const { x, y } = mapped(map, { x: points[i], y: points[i + 1] });
    [moved[i], moved[i + 1]] = [x, y];
  }
  return moved;
}
