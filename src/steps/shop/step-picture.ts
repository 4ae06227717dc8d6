import { add3, cross3, dot3, pointAt3, rad, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';
import { inPicture, isFree, seenLines, type PictureView } from './hidden-lines.ts';
import { joinedLines } from './joined-lines.ts';
import { onPaper, pointsOnPaper, type OnPaper } from './on-paper.ts';
import { LEAST_APART_MM, PictureRoom } from './picture-room.ts';
import { seamStrokes } from './seam-strokes.ts';
import { solidScene, type ScenePlate, type SolidScene } from './solid-scene.ts';

/** What a picture of a step shows. */
export interface StepScene {
  readonly plates: readonly (ScenePlate & {
    /** Printed on it where it is seen. */
    readonly number: number;
    /** Added in this step: drawn heavy. */
    readonly isNew: boolean;
  })[];
  readonly seams: readonly SeamToDraw[];
  readonly upAxis: 'x' | 'y' | 'z';
}

export interface SeamToDraw {
  readonly letter: string;
  /** x y z along the seam on its outside, mm. */
  readonly points: Float64Array;
  /** Where it is touched first, as a share of its length, and where it is rolled from there. */
  readonly touchShare: number;
  readonly roll: 'ahead' | 'back' | 'both';
}

/** Letters and numbers, mm capital height: the smallest that is printed anywhere. */
const WORDS_MM = 2.5;

/**
 * A step as it is seen, in a box: what is added in heavy lines, the rest in light ones, each seam as a thick line with its letter, a dot where it is
 * touched first, and arrows the way it is rolled shut. Lower left corner at 0, mm.
 * @param seen  how it is looked at; left out: so that most of the seams is seen.
 */
export function stepPicture(
  { plates, seams, upAxis }: StepScene,
  widthMm: number,
  heightMm: number,
  seen?: PictureView,
): Drawing {
  const scene = solidScene(plates);
  const view = seen ?? bestView(scene, seams, upAxis);
  const lines = seenLines(scene, view);
  const room = onPaper(scene, view, { widthMm, heightMm, edgeMm: EDGE_MM });
  const strokes = (isNew: boolean): readonly Stroke[] =>
    joinedLines(lines.filter(({ plate }) => plates[plate].isNew === isNew)).map((points) => ({
      role: isNew ? ('cut' as const) : ('map' as const),
      points: pointsOnPaper(room, points),
      closed: false,
    }));
  const free = new PictureRoom({ widthMm, heightMm });
  const marks = seamStrokes(scene, view, seams, (p) => room.at(inPicture(view, p)), free);
  return {
    strokes: [...strokes(false), ...strokes(true), ...marks.strokes],
    words: [...numbers(scene, view, plates, room, free), ...marks.words],
  };
}

/** White round the body for letters and arrows, mm. */
const EDGE_MM = 5;

/** Turns about the upright axis, from the front, and heights over the horizon, that are tried, degrees; the first is kept unless another shows more. */
const TURNS_DEG = [35, -35, 80, -80, 0, 145, -145, 180];
const HEIGHTS_DEG = [24, -24, 62];
/** What the first view is given ahead, as a share of the seams: a prop that turns between two pictures is hard to follow [J]. */
const AHEAD = 0.25;
const LATER = 0.004;

function bestView(scene: SolidScene, seams: readonly SeamToDraw[], upAxis: StepScene['upAxis']): PictureView {
  const places = seams.flatMap(({ points }) => placesOn(points));
  let best = viewFrom(upAxis, TURNS_DEG[0], HEIGHTS_DEG[0]);
  let most = -1;
  HEIGHTS_DEG.forEach((height, i) => {
    TURNS_DEG.forEach((turn, j) => {
      const view = viewFrom(upAxis, turn, height);
      const seen = places.filter((place) => isFree(scene, view, place)).length / Math.max(1, places.length);
      const score = seen + (i === 0 && j === 0 ? AHEAD : 0) - LATER * (TURNS_DEG.length * i + j);
      if (score > most) [best, most] = [view, score];
    });
  });
  return best;
}

/** Places looked at along a seam. */
const MOST_PLACES = 13;

function placesOn(points: Float64Array): readonly Vec3[] {
  const count = points.length / 3;
  const asked = Math.min(MOST_PLACES, count);
  return Array.from({ length: asked }, (_, i) =>
    pointAt3(points, Math.round((i * (count - 1)) / Math.max(1, asked - 1))),
  );
}

/** @param turnDeg 0 from the front, counter-clockwise seen from above. */
export function viewFrom(upAxis: StepScene['upAxis'], turnDeg: number, heightDeg: number): PictureView {
  const up = { x: upAxis === 'x' ? 1 : 0, y: upAxis === 'y' ? 1 : 0, z: upAxis === 'z' ? 1 : 0 };
  // The front looks along +z where y is up, along -y where z is, along +z where x is.
  const front = upAxis === 'z' ? { x: 0, y: -1, z: 0 } : { x: 0, y: 0, z: 1 };
  const side = cross3(up, front);
  const [c, s] = [Math.cos(rad(turnDeg)), Math.sin(rad(turnDeg))];
  const level = add3(scale3(front, c), scale3(side, s));
  const eye = add3(scale3(level, Math.cos(rad(heightDeg))), scale3(up, Math.sin(rad(heightDeg))));
  const right = unit3(cross3(up, eye));
  return { right, up: cross3(eye, right), eye };
}

/** The number of each piece near the middle of what is seen of it, clear of what stands there; left out where it has no room. */
function numbers(
  scene: SolidScene,
  view: PictureView,
  plates: StepScene['plates'],
  room: OnPaper,
  free: PictureRoom,
): readonly Words[] {
  return plates.flatMap(({ number, isNew }, p): Words[] => {
    const places = numberPlaces(scene, view, p).map((point): Words => {
      const { x, y } = room.at(inPicture(view, point));
      const at = { x, y: y - WORDS_MM / 2 };
      const text = String(number);
      return { text, at, angleRad: 0, heightMm: WORDS_MM, align: 'centre', ...(isNew ? { bold: true } : {}) };
    });
    const words = places.find((place) => free.take(place)) ?? places.find((place) => free.take(place, LEAST_APART_MM));
    return words === undefined ? [] : [words];
  });
}

/** Middles of triangles of a plate's face that are seen, those nearest the middle of all of them first. */
function numberPlaces(scene: SolidScene, view: PictureView, plate: number): readonly Vec3[] {
  const { faceTriangles, positions, triangles } = scene;
  const { first, count } = faceTriangles[plate];
  const seen = Array.from({ length: count }, (_, i) => {
    const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * (first + i) + k]));
    // Its area in the picture, positive where it faces the eye.
    const area = dot3(cross3(sub3(b, a), sub3(c, a)), view.eye);
    return { place: scale3(add3(add3(a, b), c), 1 / 3), area };
  })
    .filter(({ area }) => area > 0)
    .sort((p, q) => q.area - p.area)
    .slice(0, MOST_TRIED)
    .filter(({ place }) => isFree(scene, view, place));
  const total = seen.reduce((sum, { area }) => sum + area, 0);
  const middle = seen.reduce((sum, { place, area }) => add3(sum, scale3(place, area / total)), { x: 0, y: 0, z: 0 });
  const c = inPicture(view, middle);
  const apart = (p: Vec3): number => {
    const { x, y } = inPicture(view, p);
    return Math.hypot(x - c.x, y - c.y);
  };
  return seen.map(({ place }) => place).sort((p, q) => apart(p) - apart(q));
}

/** Triangles that are asked for a place for the number, the largest in the picture. */
const MOST_TRIED = 40;
