import type { FoamId } from '../base/ids.ts';
import type { FlatDrawing } from '../worker/drawing-api.ts';
import { addStockSheet } from '../project/stock-commands.ts';
import { cleanStockSheet, newStockId } from '../project/stock-sheet.ts';
import { findingText } from './finding-text.ts';
import { sizeOfShape } from './stock-shapes.ts';
import { sizeText, STOCK_WORDS } from './stock-words.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** Puts an offcut into stock that is drawn in an SVG file, in its true size: the largest closed line is its outline. */
export async function openOffcut(bench: Workbench, file: File, foam: FoamId): Promise<void> {
  const words = STOCK_WORDS.drawing;
  const text = await file.text().catch(() => null);
  if (text === null) return bench.setNotice({ tone: 'problem', text: WORDS.notice.unreadable(file.name) });
  const read = await bench.workshop.readDrawing(text);
  if (!read.ok) return bench.showProblem(read.problem);
  const points = largestClosed(read.value);
  if (points === null) return bench.setNotice({ tone: 'problem', text: words.none(file.name) });
  const name = file.name.replace(/\.[^.]*$/, '').replaceAll('_', ' ');
  const id = newStockId(bench.project?.stock);
  const clean = cleanStockSheet({ id, name, foam, count: 1, shape: { kind: 'outline', points } });
  if (!clean.ok) return bench.showProblem(clean.problem);
  bench.run(addStockSheet(clean.value));
  const { widthMm, heightMm } = sizeOfShape(clean.value.shape);
  const unit = bench.project?.lengthUnit ?? 'mm';
  const size = sizeText(widthMm, heightMm, unit);
  const notes = read.notes.map((note) => findingText(note, unit));
  bench.setNotice({ tone: 'note', text: [words.taken(file.name, size), ...notes].join(' ') });
}

/** The closed line with the largest box, packed x, y, to a hundredth of a millimetre; null where none is closed. */
function largestClosed({ strokes }: FlatDrawing): readonly number[] | null {
  let [best, most]: [readonly number[] | null, number] = [null, 0];
  for (const { points, closed } of strokes) {
    const [first, last] = [points[0], points.at(-1)];
    if (last === undefined || !(closed || Math.hypot(last.x - first.x, last.y - first.y) < CLOSED_MM)) continue;
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    const size = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
    if (size <= most) continue;
    const own = closed ? points : points.slice(0, -1);
    [best, most] = [own.flatMap(({ x, y }) => [hundredth(x), hundredth(y)]), size];
  }
  return best;
}

/** A line whose ends are no farther apart is closed, mm: they were drawn onto one another. */
const CLOSED_MM = 0.1;

const hundredth = (mm: number): number => Math.round(mm * 100) / 100;
