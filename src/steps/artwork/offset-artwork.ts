import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { GRID_PER_MM } from '../../geom/polygon-grid.ts';
import { boxOfPoints, joinBoxes, type Ring } from '../../geom/ring.ts';
import type { ArtOutline, ArtPiece, ArtRegion, Artwork } from '../../model/artwork.ts';
import type { OffsetCorners } from '../../model/artwork-craft.ts';
import { circlesOf, outlineWithArcs } from './exact-offset.ts';
import { lossesInward, lossesOutward } from './offset-losses.ts';
import { regionOf } from './regions.ts';
import { flatPath } from './segments.ts';

/**
 * Artwork whose areas reach farther by one distance all round: outlines move outward, holes close in. Circles, and arcs of corners, stay exact.
 * What vanishes, parts or runs together by it is told with its place. Open lines stay.
 * @param distanceMm  inward where negative.
 * @returns its deviation is that of the source and the grid of 0.1 µm; of outlines that were known by straight parts alone, half as much more. Fails
 *   with `artwork/offset-nothing` where nothing is left.
 */
export function offsetArtwork(artwork: Artwork, distanceMm: number, corners: OffsetCorners): Result<Artwork> {
  if (distanceMm === 0) return ok(artwork);
  const { deviationMm } = artwork;
  const findings: Finding[] = [];
  let isRough = false;
  const pieces = artwork.pieces.map((piece): ArtPiece => {
    isRough ||= piece.regions.some(({ outline, holes }) => [outline, ...holes].some(({ path }) => path === null));
    const { regions, rings, grown } = grownPiece(piece, distanceMm, corners, deviationMm);
    const losses = distanceMm < 0 ? lossesInward : lossesOutward;
    findings.push(...losses(piece.name, piece.regions, rings, grown, Math.abs(distanceMm)));
    const outlines = regions.flatMap(({ outline, holes }) => [outline, ...holes]);
    return {
      ...piece,
      regions,
      areaMm2: regions.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
      lengthMm: [...outlines, ...piece.lines].reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    };
  });
  const left = pieces.filter(({ regions, lines }) => regions.length + lines.length > 0);
  if (left.every(({ regions }) => regions.length === 0))
    return fail(
      'artwork/offset-nothing',
      `Nothing of the artwork is left ${Math.abs(distanceMm)} mm inside its outlines: take a smaller distance, or make the artwork larger.`,
    );
  const box = left
    .flatMap(({ regions, lines }) => [
      ...regions.map(({ outline }) => outline.ring),
      ...lines.map(({ points }) => points),
    ])
    .map(boxOfPoints)
    .reduce(joinBoxes);
  return ok(
    {
      ...artwork,
      pieces: left,
      widthMm: box.maxX - box.minX,
      heightMm: box.maxY - box.minY,
      deviationMm: (isRough ? 1.5 : 1) * deviationMm + 1 / GRID_PER_MM,
    },
    findings,
  );
}

interface GrownPiece {
  readonly regions: readonly ArtRegion[];
  /** Of each region of the source its outline and holes as they were moved. */
  readonly rings: readonly (readonly Ring[])[];
  readonly grown: readonly Region[];
}

function grownPiece(
  { regions }: ArtPiece,
  distanceMm: number,
  corners: OffsetCorners,
  deviationMm: number,
): GrownPiece {
  // Half of the deviation is left to the curves, half to round corners.
  const half = deviationMm / 2;
  const ringOf = ({ path, ring }: ArtOutline): Ring => (path === null ? ring : flatPath(path, half));
  const rings = regions.map(({ outline, holes }) => [ringOf(outline), ...holes.map(ringOf)]);
  const grown = grownRegions(rings.flat(), distanceMm, corners === 'round' ? half : undefined);
  const circles = circlesOf(regions, distanceMm, corners === 'round');
  const outlineOf = (ring: Ring): ArtOutline => outlineWithArcs(ring, circles, deviationMm);
  return {
    regions: grown.map(({ outer, holes }) => regionOf(outlineOf(outer), holes.map(outlineOf))),
    rings,
    grown,
  };
}
