import { doesSegmentMeetBox, growTurnedBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';
import { turnedWordsBox } from './words-box.ts';

/** Lines of words that belong together, and the thin line that leads from them to what they speak of. */
export interface Label {
  readonly lines: readonly Words[];
  /** Round all its lines. */
  readonly box: TurnedBox;
  readonly leader: Stroke | null;
}

/** A drawing with its labels told apart from its other lines. */
export interface LabelledDrawing {
  /** All but the leaders of the labels. */
  readonly strokes: readonly Stroke[];
  readonly labels: readonly Label[];
}

/** A leader ends this near to the box of its words, mm. */
const LEADER_REACH_MM = 1;

/** The next line of a block stands this near under the one before, in capital heights. */
const LINE_REACH = 1.2;

/** Lines of one block begin, or have their middles, this near to one line, mm. */
const SAME_START_MM = 0.05;

/** Finds blocks of lines and their leaders in a drawing; every line of words and every stroke ends up in exactly one place. */
export function labelsOf({ strokes, words }: Drawing): LabelledDrawing {
  const blocks: Words[][] = [];
  for (const line of words) {
    const block = blocks.at(-1);
    if (block !== undefined && isNextLine(block[block.length - 1], line)) block.push(line);
    else blocks.push([line]);
  }
  const free = new Set(strokes.filter(({ role }) => role === 'leader'));
  const labels = blocks.map((lines): Label => {
    const box = boxOfLines(lines);
    const leader = [...free].find((stroke) => doesTouch(stroke, box)) ?? null;
    if (leader !== null) free.delete(leader);
    return { lines, box, leader };
  });
  const taken = new Set(labels.flatMap(({ leader }) => (leader === null ? [] : [leader])));
  return { strokes: strokes.filter((stroke) => !taken.has(stroke)), labels };
}

/** The same drawing put together again. */
export function drawingOf({ strokes, labels }: LabelledDrawing): Drawing {
  return {
    strokes: [...strokes, ...labels.flatMap(({ leader }) => (leader === null ? [] : [leader]))],
    words: labels.flatMap(({ lines }) => lines),
  };
}

/** Each line as a label of its own; the first keeps the leader. */
export function brokenLabel({ lines, leader }: Label): readonly Label[] {
  return lines.map((line, i) => ({ lines: [line], box: turnedWordsBox(line), leader: i === 0 ? leader : null }));
}

function isNextLine(above: Words, below: Words): boolean {
  if (above.angleRad !== below.angleRad || above.align !== below.align) return false;
  const [c, s] = [Math.cos(above.angleRad), Math.sin(above.angleRad)];
  const [dx, dy] = [below.at.x - above.at.x, below.at.y - above.at.y];
  const along = c * dx + s * dy;
  const down = s * dx - c * dy;
  const pitch = below.heightMm + LINE_REACH * Math.max(above.heightMm, below.heightMm);
  return Math.abs(along) < SAME_START_MM && down > 0 && down < pitch;
}

/** The box round lines of one angle. */
export function boxOfLines(lines: readonly Words[]): TurnedBox {
  const [first] = lines;
  const boxes = lines.map(turnedWordsBox);
  const [c, s] = [Math.cos(first.angleRad), Math.sin(first.angleRad)];
  let [minU, minV, maxU, maxV] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y, halfWidth, halfHeight } of boxes) {
    const [u, v] = [c * x + s * y, c * y - s * x];
    minU = Math.min(minU, u - halfWidth);
    maxU = Math.max(maxU, u + halfWidth);
    minV = Math.min(minV, v - halfHeight);
    maxV = Math.max(maxV, v + halfHeight);
  }
  const [u, v] = [(minU + maxU) / 2, (minV + maxV) / 2];
  return {
    x: c * u - s * v,
    y: s * u + c * v,
    halfWidth: (maxU - minU) / 2,
    halfHeight: (maxV - minV) / 2,
    angleRad: first.angleRad,
  };
}

/** True when the stroke begins or ends at the box. */
function doesTouch({ points }: Stroke, box: TurnedBox): boolean {
  const wide = growTurnedBox(box, LEADER_REACH_MM);
  const [x0, y0, x1, y1] = [points[0], points[1], points[points.length - 2], points[points.length - 1]];
  return doesSegmentMeetBox(x0, y0, x0, y0, wide) || doesSegmentMeetBox(x1, y1, x1, y1, wide);
}
