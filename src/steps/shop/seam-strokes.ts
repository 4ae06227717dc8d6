import { pointAt3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';
import { isFree, type PictureView } from './hidden-lines.ts';
import type { PictureRoom } from './picture-room.ts';
import type { SolidScene } from './solid-scene.ts';
import type { SeamToDraw } from './step-picture.ts';

/** Width of a seam where it is seen, of the dot at its first touch, length of an arrow head; height of its letter; mm on paper. */
const SEAM_MM = 0.9;
const DOT_MM = 1.3;
const HEAD_MM = 3.2;
const LETTER_MM = 3;
/** How far a letter's middle stands from its seam, mm: as near as there is room; and from where on a thin line leads to it. */
const BESIDE_MM = [3.2, 3.8, 4.6, 6.2, 9, 12, 16, 20, 25, 31, 38];
const LEADER_FROM_MM = 5;
/** Where along the seam, and which way off it, radians. */
const SHARES = [0.35, 0.65, 0.5, 0.2, 0.8, 0.05, 0.95];
const NEAR_TURNS = [Math.PI / 2, -Math.PI / 2];
const FAR_TURNS = [0.5, -0.5, 0.3, -0.3, 0.7, -0.7, 0.1, -0.1, 0.9, -0.9].map((turn) => turn * Math.PI);

/**
 * Seams of a step as they are drawn: thick where they are seen, dashed where they are not. Letters stand clear of all that is filled, and take their
 * room.
 */
export function seamStrokes(
  scene: SolidScene,
  view: PictureView,
  seams: readonly SeamToDraw[],
  onPaper: (p: Vec3) => Vec2,
  room: PictureRoom,
): Drawing {
  const lines = seams.map(({ points }) =>
    Array.from({ length: points.length / 3 }, (_, i) => onPaper(pointAt3(points, i))),
  );
  const strokes = seams.flatMap((seam, s): Stroke[] => {
    const line = lines[s];
    const seen = line.map((_, i) => isFree(scene, view, pointAt3(seam.points, i)));
    return [
      ...line.slice(1).flatMap((b, i) => (seen[i] || seen[i + 1] ? [ribbon(line[i], b)] : [])),
      ...hiddenRuns(line, seen),
      dot(placeAt(line, seam.touchShare).at),
      ...(seam.roll === 'back' ? [] : head(line, 1)),
      ...(seam.roll === 'ahead' ? [] : head(line, -1)),
    ];
  });
  room.addFilled(strokes);
  const words: Words[] = [];
  for (const [s, { letter }] of seams.entries()) {
    const named = letter === '' ? null : letterOf(lines[s], letter, room);
    if (named === null) continue;
    words.push(named.words);
    if (named.leader !== null) strokes.push(named.leader);
  }
  return { strokes, words };
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

/** Beside the seam, as near as it has room, from a little way off with a thin line to it; null where the picture is full. */
function letterOf(
  line: readonly Vec2[],
  letter: string,
  room: PictureRoom,
): { readonly words: Words; readonly leader: Stroke | null } | null {
  for (const beside of BESIDE_MM) {
    for (const share of SHARES) {
      const { at: from, dx, dy } = placeAt(line, share);
      for (const turn of beside > LEADER_FROM_MM ? FAR_TURNS : NEAR_TURNS) {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const at = { x: from.x + beside * (c * dx - s * dy), y: from.y + beside * (s * dx + c * dy) };
        const words: Words = {
          text: letter,
          at: { x: at.x, y: at.y - LETTER_MM / 2 },
          angleRad: 0,
          heightMm: LETTER_MM,
          align: 'centre',
          bold: true,
        };
        if (!room.take(words)) continue;
        const leader: Stroke = { role: 'leader', points: shortened(from, at), closed: false };
        return { words, leader: beside > LEADER_FROM_MM ? leader : null };
      }
    }
  }
  return null;
}

/** From a seam to its letter, not into it. */
function shortened(from: Vec2, to: Vec2): Float64Array {
  const mm = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const share = Math.max(0, (mm - 2.2) / mm);
  return Float64Array.of(from.x, from.y, from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
}
