import { pointAt3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';
import { isFree, type PictureView } from './hidden-lines.ts';
import type { SolidScene } from './solid-scene.ts';
import type { SeamToDraw } from './step-picture.ts';

/** Width of a seam where it is seen, of the dot at its first touch, length of an arrow head; height of its letter; mm on paper. */
const SEAM_MM = 0.9;
const DOT_MM = 1.3;
const HEAD_MM = 3.2;
const LETTER_MM = 3;
/** How far a letter stands from its seam, mm: as near as there is room; from the second on a thin line leads to it. */
const BESIDE_MM = [3.4, 6.2, 9, 12, 16, 20];
/** White between a letter's middle and what stands there, and what each letter more of its name adds, mm. */
const ROOM_MM = 3.1;
const MORE_ROOM_MM = 1.3;
/** White between a letter's middle and the edge of the picture, mm. */
const EDGE_MM = 3.5;

/** Seams of a step as they are drawn: thick where they are seen, dashed where they are not. */
export function seamStrokes(
  scene: SolidScene,
  view: PictureView,
  seams: readonly SeamToDraw[],
  onPaper: (p: Vec3) => Vec2,
  size: { readonly widthMm: number; readonly heightMm: number },
): Drawing & { readonly taken: readonly Vec2[] } {
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  const lines = seams.map(({ points }) =>
    Array.from({ length: points.length / 3 }, (_, i) => onPaper(pointAt3(points, i))),
  );
  // Letters, numbers and lines stand clear of one another.
  const taken = lines.flatMap((line) => finer(line));
  for (const [s, seam] of seams.entries()) {
    const count = seam.points.length / 3;
    const points = Array.from({ length: count }, (_, i) => pointAt3(seam.points, i));
    const line = lines[s];
    const seen = points.map((p) => isFree(scene, view, p));
    for (let i = 0; i + 1 < count; i += 1) {
      if (seen[i] || seen[i + 1]) strokes.push(ribbon(line[i], line[i + 1]));
    }
    strokes.push(...hiddenRuns(line, seen));
    strokes.push(dot(placeAt(line, seam.touchShare).at));
    if (seam.roll !== 'back') strokes.push(...head(line, 1));
    if (seam.roll !== 'ahead') strokes.push(...head(line, -1));
    if (seam.letter !== '') {
      const { at, from, isFar } = letterPlace(line, seam.letter, taken, size);
      // A name of two letters stands on either side of its middle.
      const half = (seam.letter.length - 1) * MORE_ROOM_MM;
      taken.push(at, ...(half > 0 ? [-half, half].map((x) => ({ x: at.x + x, y: at.y })) : []));
      if (isFar) strokes.push({ role: 'leader', points: shortened(from, at), closed: false });
      words.push({
        text: seam.letter,
        at: { x: at.x, y: at.y - LETTER_MM / 2 },
        angleRad: 0,
        heightMm: LETTER_MM,
        align: 'centre',
        bold: true,
      });
    }
  }
  return { strokes, words, taken };
}

/** A line with places no farther apart than a letter is wide. */
function finer(line: readonly Vec2[]): readonly Vec2[] {
  return line.flatMap((a, i) => {
    const b = line[i + 1] ?? a;
    const parts = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 2));
    return Array.from({ length: parts }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / parts,
      y: a.y + ((b.y - a.y) * k) / parts,
    }));
  });
}

/** A filled bar from a to b. */
function ribbon(a: Vec2, b: Vec2): Stroke {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [nx, ny] = [(-(b.y - a.y) / length) * (SEAM_MM / 2), ((b.x - a.x) / length) * (SEAM_MM / 2)];
  return filled([a.x + nx, a.y + ny, b.x + nx, b.y + ny, b.x - nx, b.y - ny, a.x - nx, a.y - ny]);
}

const filled = (xy: readonly number[]): Stroke => ({
  role: 'cut',
  points: Float64Array.from(xy),
  closed: true,
  filled: true,
});

/** Where a seam runs behind the foam. */
function hiddenRuns(line: readonly Vec2[], seen: readonly boolean[]): readonly Stroke[] {
  const runs: Stroke[] = [];
  let run: number[] = [];
  const end = (): void => {
    if (run.length >= 4) runs.push({ role: 'fold-in', points: Float64Array.from(run), closed: false });
    run = [];
  };
  for (let i = 0; i + 1 < line.length; i += 1) {
    if (seen[i] || seen[i + 1]) {
      end();
      continue;
    }
    if (run.length === 0) run.push(line[i].x, line[i].y);
    run.push(line[i + 1].x, line[i + 1].y);
  }
  end();
  return runs;
}

function dot({ x, y }: Vec2): Stroke {
  const xy = Array.from({ length: 16 }, (_, i) => {
    const turn = (2 * Math.PI * i) / 16;
    return [x + DOT_MM * Math.cos(turn), y + DOT_MM * Math.sin(turn)];
  });
  return filled(xy.flat());
}

/** An arrow head at the end of the seam (way 1) or at its beginning (way -1), pointing out of it. */
function head(line: readonly Vec2[], way: 1 | -1): readonly Stroke[] {
  const { at, dx, dy } = placeAt(line, way === 1 ? 1 : 0);
  const [x, y] = [way * dx, way * dy];
  const [tipX, tipY] = [at.x + (HEAD_MM / 2) * x, at.y + (HEAD_MM / 2) * y];
  const [footX, footY] = [tipX - HEAD_MM * x, tipY - HEAD_MM * y];
  const half = HEAD_MM / 2.4;
  return [filled([tipX, tipY, footX - half * y, footY + half * x, footX + half * y, footY - half * x])];
}

/** The place at a share of a line's length in the picture, and its way there. */
function placeAt(
  line: readonly Vec2[],
  share: number,
): { readonly at: Vec2; readonly dx: number; readonly dy: number } {
  const lengths = line.slice(1).map((b, i) => Math.hypot(b.x - line[i].x, b.y - line[i].y));
  let rest = share * lengths.reduce((sum, mm) => sum + mm, 0);
  let i = 0;
  while (i + 1 < lengths.length && rest > lengths[i]) {
    rest -= lengths[i];
    i += 1;
  }
  const [a, b, mm] = [line[i], line[i + 1] ?? line[i], lengths[i] > 0 ? lengths[i] : 1];
  const [dx, dy] = [(b.x - a.x) / mm, (b.y - a.y) / mm];
  return { at: { x: a.x + Math.min(rest, mm) * dx, y: a.y + Math.min(rest, mm) * dy }, dx, dy };
}

/** Beside the seam, as near as it has room; where it has none, where it has most. */
function letterPlace(
  line: readonly Vec2[],
  letter: string,
  taken: readonly Vec2[],
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): { readonly at: Vec2; readonly from: Vec2; readonly isFar: boolean } {
  let best = { at: line[0], from: line[0], isFar: false };
  let most = -1;
  const needed = ROOM_MM + MORE_ROOM_MM * (letter.length - 1);
  const isInside = ({ x, y }: Vec2): boolean =>
    x >= EDGE_MM && x <= widthMm - EDGE_MM && y >= EDGE_MM && y <= heightMm - EDGE_MM;
  for (const beside of BESIDE_MM) {
    for (const share of [0.35, 0.65, 0.5, 0.2, 0.8, 0.05, 0.95]) {
      const { at: from, dx, dy } = placeAt(line, share);
      for (const side of [1, -1]) {
        const at = { x: from.x - side * beside * dy, y: from.y + side * beside * dx };
        const room = taken.reduce((least, p) => Math.min(least, Math.hypot(p.x - at.x, p.y - at.y)), Infinity);
        if (room <= most || !isInside(at)) continue;
        most = room;
        best = { at, from, isFar: beside > BESIDE_MM[0] };
        if (room >= needed) return best;
      }
    }
  }
  return best;
}

/** From a seam to its letter, not into it. */
function shortened(from: Vec2, to: Vec2): Float64Array {
  const mm = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const share = Math.max(0, (mm - 2.2) / mm);
  return Float64Array.of(from.x, from.y, from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
}
