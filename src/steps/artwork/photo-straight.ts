import { fail, ok, type Fail, type Result } from '../../base/result.ts';
import {
  depthOf,
  fitHomography,
  inverseHomography,
  throughHomography,
  type Homography,
} from '../../geom/homography.ts';
import { cross2, length2, sub2, type Vec2 } from '../../geom/vec.ts';
import type { CameraCheck, KnownPlace, PhotoReport } from '../../model/picture-trace.ts';

/** A photograph set straight: mm of the flat, y up, from px of the picture, y down. */
export interface StraightPhoto {
  readonly mmFromPx: Homography;
  readonly report: PhotoReport;
}

/** Sine of a turn under which three places lie in one line: a degree and a half. */
const FLAT_TURN = 0.025;
/** How well a place is pointed out by hand, px, each way. */
const HAND_PX = 0.5;
/** Share of perspective over a picture under which it has none. */
const NO_PERSPECTIVE = 1e-9;

/** Known places of a rectangle's corners: upper left first and then clockwise as they are seen. */
export function rectanglePlaces(
  px: readonly [Vec2, Vec2, Vec2, Vec2],
  widthMm: number,
  heightMm: number,
): KnownPlace[] {
  const corners = [
    [0, heightMm],
    [widthMm, heightMm],
    [widthMm, 0],
    [0, 0],
  ];
  return corners.map(([x, y], i) => ({ px: px[i], mm: { x, y } }));
}

/**
 * Finds the map that sets a photograph of something flat straight, from four known places or more. It goes the way light went, from the flat to the
 * picture, so that with more than four the squared distances in the picture are least, which is where hands err (Hartley and Zisserman 2004, 4.2.3).
 * Lens distortion is not corrected.
 * @returns fails with `artwork/photo-…` where the places do not settle it.
 */
export function straightPhoto(places: readonly KnownPlace[], widthPx: number, heightPx: number): Result<StraightPhoto> {
  if (places.length < 4)
    return fail(
      'artwork/photo-few',
      `A photograph is set straight by four known places or more, not ${places.length}.`,
    );
  const outside = places.find(({ px }) => px.x < 0 || px.y < 0 || px.x > widthPx || px.y > heightPx);
  if (outside !== undefined)
    return fail(
      'artwork/photo-outside',
      `The place ${outside.px.x}, ${outside.px.y} is outside the picture, which is ${widthPx} x ${heightPx} pixels: count from its upper left corner.`,
    );
  if (places.length === 4) {
    const fault = fourFault(places);
    if (fault !== null) return fault;
  }
  const pxFromMm = fitHomography(
    places.map(({ mm }) => mm),
    places.map(({ px }) => px),
  );
  if (pxFromMm === null)
    return fail('artwork/photo-line', 'The known places lie in one line or on each other: take four that are corners.');
  const back = inverseHomography(pxFromMm);
  const depths = places.map(({ px }) => depthOf(back, px.x, px.y));
  const middle = depths.reduce((sum, depth) => sum + depth, 0) / depths.length;
  const mmFromPx = back.map((value) => value / middle);
  if (!mmFromPx.every(Number.isFinite) || !depths.every((depth) => depth / middle > 0))
    return fail(
      'artwork/photo-crossing',
      'No camera sees the known places so: check that each stands beside its own true place.',
    );
  // px count down and mm up, so a picture that is not mirrored turns over.
  const [a, b, c] = places.map(({ px }) => px);
  const [p, q, r] = [a, b, c].map((px) => throughHomography(mmFromPx, px));
  if (cross2(sub2(b, a), sub2(c, a)) * cross2(sub2(q, p), sub2(r, p)) > 0)
    return fail('artwork/photo-mirrored', MIRRORED);
  const residuals = places.map((place) => ({
    ...place,
    residualMm: length2(sub2(throughHomography(mmFromPx, place.px), place.mm)),
    residualPx: length2(sub2(throughHomography(pxFromMm, place.mm), place.px)),
  }));
  const squares = residuals.reduce((sum, { residualMm }) => sum + residualMm ** 2, 0);
  return ok({
    mmFromPx,
    report: {
      places: residuals,
      rmsMm: Math.sqrt(squares / places.length),
      isExact: places.length === 4,
      camera: cameraCheck(places, widthPx, heightPx),
    },
  });
}

const MIRRORED =
  'The known places would mirror the picture: name corners clockwise as they are seen, from the upper left one on, and count true places upward.';

/** Four places must be the corners of a figure without a dent, run the same way in the picture and in truth. */
function fourFault(places: readonly KnownPlace[]): Fail | null {
  const inPicture = turnsOf(places.map(({ px }) => px));
  const inTruth = turnsOf(places.map(({ mm }) => mm));
  if ([...inPicture, ...inTruth].some((turn) => !(Math.abs(turn) > FLAT_TURN)))
    return fail(
      'artwork/photo-line',
      'Three of the four known places lie in one line, or two on each other: take corners.',
    );
  const isRound = (turns: readonly number[]): boolean => turns.every((turn) => turn > 0 === turns[0] > 0);
  if (isRound(inPicture) !== isRound(inTruth))
    return fail(
      'artwork/photo-crossing',
      'The four known places cross: name them in order round the figure, as its corners are seen.',
    );
  if (isRound(inPicture) && inPicture[0] > 0 === inTruth[0] > 0) return fail('artwork/photo-mirrored', MIRRORED);
  return null;
}

/** Sines of the turns at each of four corners. */
function turnsOf(points: readonly Vec2[]): number[] {
  return points.map((b, i) => {
    const [u, v] = [sub2(b, points[(i + 3) % 4]), sub2(points[(i + 1) % 4], b)];
    return cross2(u, v) / (length2(u) * length2(v));
  });
}

/**
 * What the places say of the camera, if its pixels are square and it looks through the picture's middle (Zhang and He 2007, "Whiteboard scanning and image
 * enhancement", eq. 11 and 20): the two directions of the flat are square to each other only for one focal length, and their lengths then tell
 * the true shape. That shape beside the given one is a check that four places leave over.
 */
function cameraCheck(places: readonly KnownPlace[], widthPx: number, heightPx: number): CameraCheck | null {
  const seen = seenThrough(places, widthPx, heightPx);
  if (seen === null) return null;
  const [xs, ys] = [places.map(({ mm }) => mm.x), places.map(({ mm }) => mm.y)];
  const givenAspect = (Math.max(...xs) - Math.min(...xs)) / (Math.max(...ys) - Math.min(...ys));
  if (seen.ratio === null) return { givenAspect, impliedAspect: null, aspectDeviation: null, focalPx: null };
  let variance = 0;
  for (let i = 0; i < places.length; i += 1) {
    for (const axis of ['x', 'y'] as const) {
      const moved = places.map((one, k) =>
        k === i ? { ...one, px: { ...one.px, [axis]: one.px[axis] + HAND_PX } } : one,
      );
      const ratio = seenThrough(moved, widthPx, heightPx)?.ratio ?? Infinity;
      variance += (ratio - seen.ratio) ** 2;
    }
  }
  const spread = Math.sqrt(variance) * givenAspect;
  return {
    givenAspect,
    impliedAspect: givenAspect * seen.ratio,
    aspectDeviation: Number.isFinite(spread) ? spread : null,
    focalPx: seen.focalPx,
  };
}

/** How long the flat's x is beside its y to the camera, 1 where places are given rightly; null where that cannot be. */
function seenThrough(
  places: readonly KnownPlace[],
  widthPx: number,
  heightPx: number,
): { ratio: number | null; focalPx: number | null } | null {
  const map = fitHomography(
    places.map(({ mm }) => mm),
    places.map(({ px }) => ({ x: px.x - widthPx / 2, y: px.y - heightPx / 2 })),
  );
  if (map === null) return null;
  const [x, y] = [0, 1].map((i) => ({ along: Math.hypot(map[i], map[3 + i]), depth: map[6 + i] }));
  const size = Math.hypot(widthPx, heightPx);
  const hasNone = [x, y].every(({ along, depth }) => Math.abs(depth) * size < NO_PERSPECTIVE * along);
  if (hasNone) return { ratio: x.along / y.along, focalPx: null };
  const square = -(map[0] * map[1] + map[3] * map[4]) / (x.depth * y.depth);
  if (!(square > 0) || !Number.isFinite(square)) return { ratio: null, focalPx: null };
  const [lengthX, lengthY] = [x, y].map(({ along, depth }) => Math.hypot(along / Math.sqrt(square), depth));
  return { ratio: lengthX / lengthY, focalPx: Math.sqrt(square) };
}
