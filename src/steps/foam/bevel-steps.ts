import type { Say } from '../../base/paper-language.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { PieceEdge } from '../../model/foam-piece.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Stroke } from '../../model/template.ts';
import { chordAt, lengthOf, pointAlong, walkedLine } from './edge-places.ts';
import { edgeLine, type PaperPiece } from './template-lines.ts';
import { BEVEL_STEP_DEG, leanOnPaper, leanText } from './template-words.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine } from './word-block.ts';

/** A place along an edge where its bevel is told. */
export interface BevelStep {
  /** On the line to cut, and straight across on the other edge. */
  readonly at: Vec2;
  readonly end: Vec2;
  readonly outward: Vec2;
  /** Lean there as the printed side shows it, degrees. */
  readonly leanDeg: number;
}

/** Places told along an edge stand at least this far apart, mm: no blade is set anew more often [J]. */
const LEAST_STEP_MM = 15;

/** The first and the last place told stand this far inside the edge, mm, so that they are not taken for its neighbour's. */
const END_MM = 4;

/**
 * Where along an edge its bevel is told: at its start, at its end, and wherever it has changed by another five degrees (foam model 4). Nowhere
 * where it hardly changes, and on an edge too short for two places: its own words tell all of that. An edge without ends is told from its
 * first point on.
 */
export function bevelSteps(paper: PaperPiece, edge: PieceEdge): readonly BevelStep[] {
  const leans = Array.from(edge.bevelDeg, (lean) => leanOnPaper(paper.piece, lean));
  const line = walkedLine(edgeLine(paper, edge, 'traced'));
  const other = walkedLine(edgeLine(paper, edge, 'other'));
  const { stations } = line;
  const whole = lengthOf(line);
  if (Math.max(...leans) - Math.min(...leans) < BEVEL_STEP_DEG || whole < LEAST_STEP_MM + 2 * END_MM) return [];
  const start = END_MM;
  const end = whole - (edge.from === edge.to ? LEAST_STEP_MM : END_MM);
  const told = [start];
  let last = leanAlong(stations, leans, start);
  for (let j = 1; j + 1 < leans.length; j += 1) {
    const s = stations[j];
    const isFar = s - told[told.length - 1] >= LEAST_STEP_MM && end - s >= LEAST_STEP_MM;
    if (!isFar || Math.abs(leans[j] - last) < BEVEL_STEP_DEG) continue;
    told.push(s);
    last = leans[j];
  }
  if (edge.from !== edge.to) told.push(end);
  return told.flatMap((s): BevelStep[] => {
    const right = chordAt(line, s, 2)?.right;
    if (right === undefined) return [];
    return [
      {
        at: pointAlong(line, s),
        end: pointAlong(other, lengthUpTo(other.stations, stations, s)),
        outward: { x: paper.flip * right.x, y: paper.flip * right.y },
        leanDeg: leanAlong(stations, leans, s),
      },
    ];
  });
}

/** Index of the stretch of a line that holds a length along it, and how far into it, 0 to 1. */
function stretchAt(stations: Float64Array, s: number): readonly [index: number, share: number] {
  let i = 0;
  while (i + 2 < stations.length && stations[i + 1] < s) i += 1;
  const length = stations[i + 1] - stations[i];
  return [i, length > 0 ? Math.min(1, Math.max(0, (s - stations[i]) / length)) : 0];
}

const between = (values: ArrayLike<number>, [i, share]: readonly [number, number]): number =>
  values[i] + share * (values[i + 1] - values[i]);

const leanAlong = (stations: Float64Array, leans: readonly number[], s: number): number =>
  between(leans, stretchAt(stations, s));

/** The length along one line of the place that lies across from a length along another with as many points. */
const lengthUpTo = (own: Float64Array, stations: Float64Array, s: number): number =>
  between(own, stretchAt(stations, s));

/** A thin line across the bevel at each step. */
export const bevelStepStroke = ({ at, end }: BevelStep): Stroke => ({
  role: 'bevel',
  points: Float64Array.of(at.x, at.y, end.x, end.y),
  closed: false,
});

/** How far aside of its place along the edge a lean may be told, mm. */
const ASIDE_MM = [0, 3, -3];

/** The lean at each step, inside the piece behind its line, else on a leader. */
export function tellBevelSteps(board: WordBoard, steps: readonly BevelStep[], say: Say): void {
  for (const { at, end, outward, leanDeg } of steps) {
    const block = oneLine(say(leanText(leanDeg).replace(' under', '')), SMALLEST_WORDS_MM);
    const reach = (Math.abs(outward.x) * block.widthMm + Math.abs(outward.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const depth = Math.max(0, (at.x - end.x) * outward.x + (at.y - end.y) * outward.y);
    const isIn = [0, 1, 2, 4, 6].some((step) =>
      ASIDE_MM.some((aside) => {
        const away = reach + depth + step;
        const [x, y] = [at.x - away * outward.x - aside * outward.y, at.y - away * outward.y + aside * outward.x];
        return board.tryInside(block, boxAt(block, x, y, 0));
      }),
    );
    if (!isIn) board.writeBeside(block, [{ target: at, outward }]);
  }
}
