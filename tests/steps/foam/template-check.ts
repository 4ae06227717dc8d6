import { textWidthMm } from '../../../src/geom/text-width.ts';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import type { Stroke, Template, Words } from '../../../src/model/template.ts';

/** Corner points of a line of words as printed: DejaVu Sans reaches 0.33 capitals under the baseline and 1.1 over it. */
export function wordsCorners({ text, at, angleRad, heightMm, align }: Words): number[][] {
  const width = textWidthMm(text, heightMm);
  const left = align === 'left' ? 0 : align === 'right' ? -width : -width / 2;
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  return [
    [left, -0.33 * heightMm],
    [left + width, -0.33 * heightMm],
    [left + width, 1.1 * heightMm],
    [left, 1.1 * heightMm],
  ].map(([x, y]) => [at.x + c * x - s * y, at.y + s * x + c * y]);
}

const edgesOf = (corners: readonly (readonly number[])[], closed = true): (readonly (readonly number[])[])[] =>
  corners.slice(0, closed ? undefined : -1).map((p, i) => [p, corners[(i + 1) % corners.length]]);

const turn = (p: readonly number[], q: readonly number[], r: readonly number[]): number =>
  (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);

const doCross = ([a, b]: readonly (readonly number[])[], [c, d]: readonly (readonly number[])[]): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

export function isInsidePolygon([x, y]: readonly number[], corners: readonly (readonly number[])[]): boolean {
  let inside = false;
  for (const [[ax, ay], [bx, by]] of edgesOf(corners)) {
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

const pointsOf = ({ points }: Stroke): number[][] =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]]);

/** Pairs of words that share a place, and words that share one with a line, each as a text. An independent count: plain polygons, every pair. */
export function collisionsOf({ drawing }: Template): string[] {
  const found: string[] = [];
  const polygons = drawing.words.map(wordsCorners);
  drawing.words.forEach(({ text }, i) => {
    for (let j = i + 1; j < polygons.length; j += 1) {
      const isApart = !edgesOf(polygons[i]).some((e) => edgesOf(polygons[j]).some((f) => doCross(e, f)));
      if (!isApart || isInsidePolygon(polygons[i][0], polygons[j]) || isInsidePolygon(polygons[j][0], polygons[i])) {
        found.push(`“${text}” on “${drawing.words[j].text}”`);
      }
    }
    for (const stroke of drawing.strokes) {
      const points = pointsOf(stroke);
      const isHit =
        edgesOf(points, stroke.closed).some((e) => edgesOf(polygons[i]).some((f) => doCross(e, f))) ||
        isInsidePolygon(points[0], polygons[i]);
      if (isHit) found.push(`“${text}” on a ${stroke.role} line`);
    }
  });
  return found;
}

/** True when the middle of the words lies inside the cut line. */
export function isWithin(template: Template, words: Words): boolean {
  const corners = wordsCorners(words);
  const middle = [0, 1].map((axis) => corners.reduce((sum, p) => sum + p[axis] / 4, 0));
  const rings = template.drawing.strokes.filter(({ role }) => role === 'cut').map(pointsOf);
  return rings.filter((ring) => isInsidePolygon(middle, ring)).length % 2 === 1;
}

export const textsOf = ({ drawing }: Template): string[] => drawing.words.map(({ text }) => text);

/** Ticks as from and to. */
export const ticksOf = ({ drawing }: Template, piece: FoamPiece): number[][][] =>
  drawing.strokes
    .filter(({ role, closed }) => role === 'mark' && !closed)
    .slice(0, piece.marks.length)
    .map(pointsOf);
