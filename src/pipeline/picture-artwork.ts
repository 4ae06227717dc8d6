import type { Finding } from '../base/finding.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { depthOf, throughHomography, type Homography } from '../geom/homography.ts';
import { isInRings } from '../geom/in-rings.ts';
import { boxOfPoints, joinBoxes, type Box2 } from '../geom/ring.ts';
import { length2, sub2, type Vec2 } from '../geom/vec.ts';
import type { Artwork } from '../model/artwork.ts';
import type { Bitmap } from '../model/bitmap.ts';
import type { CheckedLength, PhotoReport, PictureTrace } from '../model/picture-trace.ts';
import type { PictureChoice } from '../model/artwork-choice.ts';
import {
  findLevel,
  inkField,
  isTwoTone,
  levelOfPercent,
  percentOfLevel,
  touchesEdge,
} from '../steps/artwork/bitmap-level.ts';
import { smoothBitmap } from '../steps/artwork/bitmap-smooth.ts';
import { makeArtwork } from '../steps/artwork/make-artwork.ts';
import { rectanglePlaces, straightPhoto } from '../steps/artwork/photo-straight.ts';
import { isPicture, readPicture } from '../steps/artwork/read-picture.ts';
import { boxOfPaths } from '../steps/artwork/segment-box.ts';
import { traceContours } from '../steps/artwork/trace-contours.ts';
import { SOFT_EDGES, TWO_TONE_EDGES } from '../steps/artwork/trace-corners.ts';
import { pictureLine, tracePicture, type PictureLine } from '../steps/artwork/trace-picture.ts';
import { photoFindings, traceFindings } from './picture-findings.ts';
import { mmPerPxOf } from './picture-scale.ts';

/** Greatest distance of curves from the picture's line unless told otherwise, mm: a fifth of what a hand knife strays. */
export const USUAL_TRACE_MM = 0.1;
/** Smaller than any spot that can be cut out of foam, mm². */
export const USUAL_SPECKS_MM2 = 1;

export const USUAL_PICTURE: PictureChoice = {
  size: { by: 'file' },
  thresholdPct: null,
  isInverted: false,
  smoothPx: 0,
  specksMm2: USUAL_SPECKS_MM2,
  traceMm: null,
  crop: null,
  light: null,
  checks: [],
  deviationMm: 0.05,
  regulariseMm: 0,
};

/** Flat artwork traced from a picture, and how. */
export interface PictureArtwork {
  readonly artwork: Artwork;
  readonly trace: PictureTrace;
}

/** Whether a file is a picture in pixels, of a kind that is read or not. */
export const isPictureFile = isPicture;

/** Known places of a rectangle's corners: upper left first and then clockwise as they are seen. */
export const rectangleAt = rectanglePlaces;

/** Artwork is no larger than this, mm. */
const MOST_MM = 100_000;
/** Share of the depth of known places under which a place is too far towards the horizon: it would be enlarged so many times more. */
const LEAST_DEPTH = 0.05;

/**
 * Flat artwork from a PNG or JPEG, in its true size: lines of one grey to a part of a pixel, set straight where it is a photograph, and fitted with curves.
 * @returns with what is to be told of it. Fails with `artwork/…`, telling what to do.
 */
export function artworkFromPicture(bytes: Uint8Array, choice: PictureChoice): Result<PictureArtwork> {
  const { size } = choice;
  const read = readPicture(bytes, choice.light ?? (size.by === 'photo' ? 'photo' : 'drawn'));
  if (!read.ok) return read;
  const bitmap = choice.smoothPx > 0 ? smoothBitmap(read.value, choice.smoothPx) : read.value;
  const found = findLevel(bitmap);
  if (found === null)
    return fail('artwork/picture-empty', 'The picture is of one grey all over: there is no line in it.');
  const level = choice.thresholdPct === null ? found.level : levelOfPercent(bitmap, choice.thresholdPct);
  const field = inkField(bitmap, level, choice.isInverted, keptBy(choice.crop));
  const contours = traceContours(field);
  if (!contours.ok) return contours;
  if (contours.value.length === 0)
    return fail(
      'artwork/picture-empty',
      'Nothing in the picture is on the dark side of the threshold: give another one, or take the light side.',
    );
  const placed = placedLines(contours.value, bitmap, choice);
  if (!placed.ok) return placed;
  const { lines, specks, photo, mmPerPx, mmOf } = placed.value;
  if (lines.length === 0)
    return fail(
      'artwork/picture-empty',
      `All ${specks} spots of the picture are smaller than ${choice.specksMm2} mm²: leave out smaller ones only, or check its size.`,
    );
  const isTwo = isTwoTone(bitmap, found);
  const usual = isTwo ? Math.max(USUAL_TRACE_MM, halfPixel(lines)) : USUAL_TRACE_MM;
  const limitMm = choice.traceMm ?? usual;
  const traced = tracePicture(lines, isTwo ? TWO_TONE_EDGES : SOFT_EDGES, limitMm);
  if (!traced.ok) return traced;
  // A corner that was brought out may make the whole a little wider than the picture's line.
  const box = boxOfPaths(traced.value.drawing.shapes.flatMap(({ paths }) => paths));
  const scale =
    size.by === 'width' ? size.mm / (box.maxX - box.minX) : size.by === 'height' ? size.mm / (box.maxY - box.minY) : 1;
  const made = makeArtwork(traced.value.drawing, {
    scale,
    deviationMm: choice.deviationMm,
    closeMm: 0,
    regulariseMm: choice.regulariseMm,
    symmetricMm: choice.symmetricMm ?? 0,
    strokes: 'centre',
  });
  if (!made.ok) return made;
  const checks = choice.checks.map(({ a, b, mm }): CheckedLength => ({
    a,
    b,
    givenMm: mm,
    foundMm: scale * length2(sub2(mmOf(a), mmOf(b))),
  }));
  const trace: PictureTrace = {
    widthPx: bitmap.widthPx,
    heightPx: bitmap.heightPx,
    light: bitmap.light,
    thresholdPct: percentOfLevel(bitmap, level),
    isThresholdGiven: choice.thresholdPct !== null,
    isTwoTone: isTwo,
    scaledBy: size.by,
    mmPerPx: mmPerPx === null ? null : [mmPerPx[0] * scale, mmPerPx[1] * scale],
    limitMm,
    deviationMm: traced.value.deviationMm * scale,
    cornerMm: traced.value.cornerMm * scale,
    corners: traced.value.corners,
    straightParts: traced.value.straightParts,
    curves: traced.value.curves,
    joinedLines: traced.value.joinedLines,
    specks,
    specksMm2: choice.specksMm2,
    checks,
    photo,
  };
  return ok({ artwork: { ...made.value, scale: 1 }, trace }, [
    ...placed.notes,
    ...traceFindings(trace, choice.traceMm !== null, touchesEdge(field)),
    ...made.notes,
  ] satisfies readonly Finding[]);
}

/** Half a pixel, mm, on the whole of the lines. */
function halfPixel(lines: readonly PictureLine[]): number {
  let [px, mm] = [0, 0];
  for (const line of lines) {
    for (let i = 2; i < line.px.length; i += 2) {
      px += Math.hypot(line.px[i] - line.px[i - 2], line.px[i + 1] - line.px[i - 1]);
      mm += Math.hypot(line.mm[i] - line.mm[i - 2], line.mm[i + 1] - line.mm[i - 1]);
    }
  }
  return mm / px / 2;
}

/** Two corners of a box, or all of a figure. */
function keptBy(crop: readonly Vec2[] | null): ((x: number, y: number) => boolean) | null {
  if (crop === null) return null;
  const [a, b] = crop;
  const corners = crop.length === 2 ? [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }] : crop;
  const ring = Float64Array.from(corners.flatMap(({ x, y }) => [x, y]));
  const box = boxOfPoints(ring);
  return (x, y) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY && isInRings([ring], x, y);
}

interface Placed {
  readonly lines: readonly PictureLine[];
  readonly specks: number;
  readonly photo: PhotoReport | null;
  readonly mmPerPx: readonly [number, number] | null;
  /** The true place of one of the picture, px, y down. */
  readonly mmOf: (px: Vec2) => Vec2;
}

/** Lines at their true size, without specks. */
function placedLines(contours: readonly Float64Array[], bitmap: Bitmap, choice: PictureChoice): Result<Placed> {
  const { size } = choice;
  if (size.by === 'photo') {
    const straight = straightPhoto(size.places, bitmap.widthPx, bitmap.heightPx);
    if (!straight.ok) return straight;
    const { mmFromPx, report } = straight.value;
    const lines = linesThrough(contours, mmFromPx, bitmap.heightPx, choice.specksMm2);
    if (!lines.ok) return lines;
    const mmOf = (px: Vec2): Vec2 => throughHomography(mmFromPx, px);
    return ok({ ...lines.value, photo: report, mmPerPx: null, mmOf }, photoFindings(report));
  }
  let kept = contours;
  for (;;) {
    const scale = mmPerPxOf(size, bitmap, sizeOf(kept));
    if (!scale.ok) return scale;
    const [x, y] = scale.value;
    const lines = kept.map((px) => pictureLine(px, (atX, atY) => [atX * x, atY * y]));
    const large = lines.filter(({ areaMm2 }) => Math.abs(areaMm2) >= choice.specksMm2);
    const isSettled =
      large.length === lines.length ||
      large.length === 0 ||
      size.by === 'file' ||
      size.by === 'points' ||
      size.by === 'dpi';
    if (isSettled) {
      const [widthPx, heightPx] = sizeOf(kept);
      if (!(Math.max(widthPx * x, heightPx * y) <= MOST_MM))
        return fail('artwork/known', 'The artwork would be over 100 m large: check the length that is known.');
      const mmOf = (px: Vec2): Vec2 => ({ x: px.x * x, y: (bitmap.heightPx - px.y) * y });
      const specks = contours.length - large.length;
      return ok({ lines: large, specks, photo: null, mmPerPx: scale.value, mmOf }, scale.notes);
    }
    // Without its specks the whole may be smaller, and so its scale another; what is left out stays so.
    kept = large.map(({ px }) => px);
  }
}

function sizeOf(lines: readonly Float64Array[]): [number, number] {
  let box: Box2 = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const line of lines) box = joinBoxes(box, boxOfPoints(line));
  return [box.maxX - box.minX, box.maxY - box.minY];
}

/** Lines through a map that keeps lines straight: exact, since straight parts between places stay straight. */
function linesThrough(
  contours: readonly Float64Array[],
  mmFromPx: Homography,
  heightPx: number,
  specksMm2: number,
): Result<{ lines: readonly PictureLine[]; specks: number }> {
  const lines: PictureLine[] = [];
  for (const px of contours) {
    for (let i = 0; i < px.length; i += 2)
      if (!(depthOf(mmFromPx, px[i], heightPx - px[i + 1]) >= LEAST_DEPTH))
        return fail(
          'artwork/photo-horizon',
          'Something in the photograph lies so far off that it cannot be set straight: crop the picture to what is wanted.',
        );
    const line = pictureLine(px, (x, y) => {
      const mm = throughHomography(mmFromPx, { x, y: heightPx - y });
      return [mm.x, mm.y];
    });
    if (Math.abs(line.areaMm2) < specksMm2) continue;
    if (line.mm.some((value) => Math.abs(value) > MOST_MM))
      return fail('artwork/known', 'The artwork would be over 100 m large: check the known places.');
    lines.push(line);
  }
  return ok({ lines, specks: contours.length - lines.length });
}
