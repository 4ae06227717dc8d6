import { chainPoints, layChain, type OutlineSegment } from '../../geom/outline.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import { movePoints } from '../../geom/turn-and-move.ts';
import { edgeLeans, type PlainDraft, type PlainLine } from '../../model/plain-piece.ts';
import type { Words } from '../../model/template.ts';

/** Between pieces and round all of them, mm. */
const GAP_MM = 15;
const TITLE_MM = 4;
const WORDS_MM = 2.5;
/** Lines from here on have their words beside their middle, mm. */
const LONG_MM = 20;
/** Lines of words stand this many letter heights apart. */
const LINE_SPACING = 1.7;

/** A draft where it lies beside others, mm, its outlines in their exact parts. */
export interface LaidDraft {
  readonly draft: PlainDraft;
  readonly outline: readonly OutlineSegment[];
  readonly holes: readonly (readonly OutlineSegment[])[];
  readonly lines: readonly PlainLine[];
  readonly words: readonly Words[];
}

export interface OutlineSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pieces: readonly LaidDraft[];
}

/** Drafts side by side in true size, none turned, in rows about as wide as all are high; under each what it is and how its edges lean. */
export function outlineSheet(drafts: readonly PlainDraft[]): OutlineSheet {
  const sized = drafts.map((draft) => {
    const box = boxOfPoints(chainPoints(chainOf(draft.outline)).flatMap(({ x, y }) => [x, y]));
    const texts = textsOf(draft);
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    const words = TITLE_MM * LINE_SPACING + texts.length * WORDS_MM * LINE_SPACING;
    return { draft, box, texts, width, height: height + words, words };
  });
  const area = sized.reduce((sum, { width, height }) => sum + (width + GAP_MM) * (height + GAP_MM), 0);
  const rowWidth = Math.max(1.3 * Math.sqrt(area), ...sized.map(({ width }) => width));
  const pieces: LaidDraft[] = [];
  let [x, y, rowHeight, widest] = [GAP_MM, GAP_MM, 0, 0];
  for (const { draft, box, texts, width, height, words } of sized) {
    if (x > GAP_MM && x + width > GAP_MM + rowWidth) [x, y, rowHeight] = [GAP_MM, y + rowHeight + GAP_MM, 0];
    const move = { x: x - box.minX, y: y + words - box.minY, turnRad: 0 };
    pieces.push({
      draft,
      outline: layChain(chainOf(draft.outline), move),
      holes: draft.holes.map((hole) => layChain(chainOf(hole), move)),
      lines: draft.lines.map((line) => ({ ...line, points: movePoints(line.points, move) })),
      words: wordsAt(draft, texts, x, y + words),
    });
    [x, rowHeight, widest] = [x + width + GAP_MM, Math.max(rowHeight, height), Math.max(widest, x + width + GAP_MM)];
  }
  return { widthMm: widest, heightMm: y + rowHeight + GAP_MM, pieces };
}

/** The words of a line: beside its end, or beside its middle where it is long. */
export function wordsOfLine({ text, points }: PlainLine): readonly Words[] {
  if (text === undefined) return [];
  const [x0, y0, x1, y1] = points;
  const isLong = Math.hypot(x1 - x0, y1 - y0) > LONG_MM;
  const at = isLong ? { x: (x0 + x1) / 2 + 1, y: (y0 + y1) / 2 } : { x: x1 + 1, y: y1 };
  return [{ text, at, angleRad: 0, heightMm: WORDS_MM, align: 'left' }];
}

const chainOf = (edges: PlainDraft['outline']): readonly OutlineSegment[] => edges.flatMap(({ segments }) => segments);

const textsOf = (draft: PlainDraft): readonly string[] => [...edgeLeans(draft), ...draft.notes];

function wordsAt(
  { name, quantity, thicknessMm }: PlainDraft,
  texts: readonly string[],
  x: number,
  top: number,
): readonly Words[] {
  const foam = thicknessMm > 0 ? `, foam ${thicknessMm} mm` : '';
  const title = { text: `${name}, cut ${quantity}${foam}`, heightMm: TITLE_MM, bold: true };
  let y = top;
  return [title, ...texts.map((text) => ({ text, heightMm: WORDS_MM }))].map((line): Words => {
    y -= line.heightMm * LINE_SPACING;
    return { ...line, at: { x, y }, angleRad: 0, align: 'left' };
  });
}
