import { fail, ok, type Result } from '../base/result.ts';
import { length3, sub3, vec3, type Vec2, type Vec3 } from '../geom/vec.ts';
import type { MeshPoint } from '../mesh/lines/mesh-line.ts';
import { trianglesAt } from '../mesh/lines/mesh-point.ts';
import type { Surface } from '../mesh/surface.ts';
import type { Artwork, ArtOutline } from '../model/artwork.ts';
import type { SurfaceTrace } from '../model/trace.ts';
import type { ArtSeat, ArtStroke, WrappedArt } from '../model/wrapped-art.ts';
import { boxOfArtwork, middleOfBox } from '../steps/artwork/copied-artwork.ts';
import { tracesOnPieces, type FlatGround, type FlatTrace } from '../steps/assembly/on-pieces.ts';
import { drawOnPiece, wrapArt } from '../steps/wrap-art/wrap-art.ts';
import { traceOf } from './trace-of-line.ts';

/** Artwork for a surface, to be engraved, let in or glued on. */
export interface WrapWish {
  /** Place of the surface it sits at. */
  readonly at: MeshPoint;
  /** Direction its x points to there, any length but 0. */
  readonly along: Vec3;
  /** Radians, counter-clockwise. */
  readonly turnRad: number;
  /** Place of the artwork that comes to lie there, mm; left out, the middle of the box round it. */
  readonly origin?: Vec2;
  /** `surface`: true to size on the surface about its place; `piece`: true to size on the flat piece it sits on. */
  readonly trueOn: 'surface' | 'piece';
}

/** The same on the surface and on the flat pieces. */
export interface ArtOnSculpt {
  readonly art: WrappedArt;
  /** What lies on each piece, in its frame; `trace` is the number of the line in `art`. */
  readonly onPieces: readonly FlatTrace[];
  /** Length of its lines on triangles of no piece, mm. */
  readonly bareMm: number;
}

/**
 * Lays artwork on a surface and brings its lines to the flat pieces that are cut for it: the outlines of a badge are what it is glued to, open lines what is
 * engraved.
 * @param pieces  flat pieces whose patches are of the surface's triangles; none where only the surface is asked for.
 * @returns fails with `wrap-art/…`.
 */
export function wrapArtwork(
  surface: Surface,
  pieces: readonly FlatGround[],
  artwork: Artwork,
  { at, along, turnRad, origin, trueOn }: WrapWish,
): Result<ArtOnSculpt> {
  const seat: ArtSeat = {
    at,
    along,
    turnRad,
    origin: origin ?? middleOfBox(boxOfArtwork(artwork)),
  };
  const strokes = strokesOf(artwork);
  const near = trianglesAt(surface, at);
  const own = pieces.find(({ patch }) => near.some((t) => patch.meshTriangles.includes(t)));
  if (trueOn === 'piece' && own === undefined)
    return fail('wrap-art/place', 'No flat piece lies at that place: choose one on a piece.');
  const made =
    trueOn === 'surface' || own === undefined
      ? wrapArt(surface, strokes, seat)
      : drawOnPiece(surface, { own: own.patch.meshTriangles, corners: own.patch.triangles, uv: own.uv }, strokes, seat);
  if (!made.ok) return made;
  const traces = made.value.lines.map(({ line }) => traceOf(surface, line));
  const bareMm = lengthBeside(traces, pieces);
  return ok({ art: made.value, onPieces: tracesOnPieces(traces, pieces).traces, bareMm }, made.notes);
}

function lengthBeside(traces: readonly SurfaceTrace[], pieces: readonly FlatGround[]): number {
  const covered = new Set(pieces.flatMap(({ patch }) => Array.from(patch.meshTriangles)));
  let sum = 0;
  for (const { triangles, places } of traces)
    triangles.forEach((t, i) => {
      const [a, b] = [i, i + 1].map((at) => vec3At(places, (3 * at) % places.length));
      if (!covered.has(t)) sum += length3(sub3(a, b));
    });
  return sum;
}

const vec3At = (places: Float64Array, i: number): Vec3 => vec3(places[i], places[i + 1], places[i + 2]);

/** All lines of artwork: outlines, holes and open lines, by the name of their piece. */
export function strokesOf({ pieces }: Artwork): readonly ArtStroke[] {
  const ring =
    (name: string) =>
    (outline: ArtOutline): ArtStroke => ({ name, points: outline.ring, closed: true });
  return pieces.flatMap(({ name, regions, lines }) => [
    ...regions.flatMap(({ outline, holes }) => [outline, ...holes]).map(ring(name)),
    ...lines.map(({ points }): ArtStroke => ({ name, points, closed: false })),
  ]);
}
