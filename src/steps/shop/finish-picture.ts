import { add3, pointAt3, rad, scale3 } from '../../geom/vec.ts';
import { HATCHINGS } from '../../model/hatching.ts';
import type { Drawing, Stroke } from '../../model/template.ts';
import { inPicture, isFree, seenLines, type PictureView } from './hidden-lines.ts';
import { joinedLines } from './joined-lines.ts';
import { onPaper, pointsOnPaper, type OnPaper } from './on-paper.ts';
import { solidScene, type ScenePlate, type SolidScene } from './solid-scene.ts';
import { viewFrom } from './step-picture.ts';

/** A piece with the hatching of each triangle of its face, -1 for none. */
export interface PaintedPlate extends ScenePlate {
  readonly hatchingOf: ArrayLike<number>;
}

/** Ways the prop is looked at, one picture each, degrees from the front and over the horizon: between them all sides are seen. */
const TURNS_DEG = [35, 215];
const HEIGHT_DEG = 24;

/** White round each picture, mm. */
const EDGE_MM = 3;

/** How far apart places on a line of hatching are asked about, and how often an end is halved between two, mm on paper. */
const ASKED_MM = 0.8;
const HALVINGS = 4;

/** Shorter strokes of hatching are specks, mm. */
const SPECK_MM = 0.3;

/**
 * The finished prop from both sides, next to each other, each area hatched as its colour is; borders of areas are drawn. Lower left corner at 0, mm.
 * Hidden parts are left out: a line of hatching is where sight through it first meets its colour.
 */
export function finishPicture(
  plates: readonly PaintedPlate[],
  upAxis: 'x' | 'y' | 'z',
  widthMm: number,
  heightMm: number,
): Drawing {
  const scene = solidScene(plates);
  const hatchings = hatchingsOf(scene, plates);
  const own = widthMm / TURNS_DEG.length;
  return {
    strokes: TURNS_DEG.flatMap((turn, i) => {
      const view = viewFrom(upAxis, turn, HEIGHT_DEG);
      const paper = onPaper(scene, view, { widthMm: own, heightMm, edgeMm: EDGE_MM, leftMm: i * own });
      return [
        ...hatchLines(scene, view, hatchings, paper),
        ...borderLines(scene, view, hatchings, paper),
        ...joinedLines(seenLines(scene, view)).map((points) => stroke('cut', paper, points)),
      ];
    }),
    words: [],
  };
}

/** Of each triangle of the scene; -1 off the faces. */
function hatchingsOf({ triangles, faceTriangles }: SolidScene, plates: readonly PaintedPlate[]): Int32Array {
  const found = new Int32Array(triangles.length / 3).fill(-1);
  faceTriangles.forEach(({ first, count }, p) => {
    for (let i = 0; i < count; i += 1) found[first + i] = plates[p].hatchingOf[i];
  });
  return found;
}

const stroke = (role: Stroke['role'], paper: OnPaper, points: ArrayLike<number>): Stroke => ({
  role,
  points: pointsOnPaper(paper, points),
  closed: false,
});

function hatchLines(
  { tree, positions }: SolidScene,
  view: PictureView,
  hatchings: Int32Array,
  paper: OnPaper,
): readonly Stroke[] {
  const { box, scale } = paper;
  const far = 1 + positions.reduce((most, x) => Math.max(most, Math.abs(x)), 0) * 2;
  const seenAt = (x: number, y: number): number => {
    const place = add3(add3(scale3(view.right, x), scale3(view.up, y)), scale3(view.eye, far));
    const hit = tree.raycast(place, scale3(view.eye, -1));
    return hit === null ? -1 : hatchings[hit.triangle];
  };
  const used = [...new Set(hatchings)].filter((hatching) => hatching >= 0).sort((a, b) => a - b);
  const [midX, midY] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const half = Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / 2;
  return used.flatMap((hatching) => {
    const { anglesDeg, spacingMm } = HATCHINGS[hatching];
    return anglesDeg.flatMap((deg) => {
      const [c, s] = [Math.cos(rad(deg)), Math.sin(rad(deg))];
      const rows = Math.ceil((half * scale) / spacingMm);
      const strokes: Stroke[] = [];
      for (let row = -rows; row <= rows; row += 1) {
        const off = ((row + 0.5) * spacingMm) / scale;
        const [x0, y0] = [midX - off * s, midY + off * c];
        const isOwn = (along: number): boolean => seenAt(x0 + along * c, y0 + along * s) === hatching;
        for (const [from, to] of runsAlong(isOwn, half, ASKED_MM / scale))
          if ((to - from) * scale >= SPECK_MM)
            strokes.push(stroke('map', paper, [x0 + from * c, y0 + from * s, x0 + to * c, y0 + to * s]));
      }
      return strokes;
    });
  });
}

/** Stretches of -half to half where something holds, asked step by step and their ends halved. */
function runsAlong(
  holds: (along: number) => boolean,
  half: number,
  step: number,
): readonly (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  const endBetween = (inside: number, outside: number): number => {
    let [a, b] = [inside, outside];
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = (a + b) / 2;
      if (holds(middle)) a = middle;
      else b = middle;
    }
    return a;
  };
  let from: number | null = null;
  for (let at = -half; at <= half; at += step) {
    const isIn = holds(at);
    if (isIn) from ??= endBetween(at, at - step);
    else if (from !== null) {
      runs.push([from, endBetween(at - step, at)]);
      from = null;
    }
  }
  if (from !== null) runs.push([from, half]);
  return runs;
}

/** Edges inside pieces between two areas, as far as they are seen. */
function borderLines(scene: SolidScene, view: PictureView, hatchings: Int32Array, paper: OnPaper): readonly Stroke[] {
  const { edgeVertices, edgeTriangles, positions } = scene;
  const strokes: Stroke[] = [];
  for (let e = 0; e < edgeTriangles.length / 2; e += 1) {
    const [s, t] = [edgeTriangles[2 * e], edgeTriangles[2 * e + 1]];
    if (t < 0 || hatchings[s] === hatchings[t] || !isOnFace(scene, s) || !isOnFace(scene, t)) continue;
    const [a, b] = [0, 1].map((k) => pointAt3(positions, edgeVertices[2 * e + k]));
    if (!isFree(scene, view, scale3(add3(a, b), 0.5))) continue;
    const [p, q] = [a, b].map((point) => inPicture(view, point));
    strokes.push(stroke('mark', paper, [p.x, p.y, q.x, q.y]));
  }
  return strokes;
}

const isOnFace = ({ faceTriangles }: SolidScene, t: number): boolean =>
  faceTriangles.some(({ first, count }) => t >= first && t < first + count);
