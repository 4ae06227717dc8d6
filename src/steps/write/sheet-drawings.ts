import { layPoints, layWords, type Lay2 } from '../../geom/lay-over.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { Sheet } from '../../model/sheet.ts';
import type { Drawing, FoamDrawing, Stroke, Template, Words } from '../../model/template.ts';
import { PlacesBeside } from './places-beside.ts';
import { rightWayUp } from './right-way-up.ts';

/** A sheet as every writer shows it: each piece with its number, and nowhere words on lines or on one another. */
export interface SheetDrawings {
  /** Of each placement, in their order, where it lies on the sheet. */
  readonly drawings: readonly Drawing[];
  /** Right of the sheet: pieces whose number has room neither inside nor beside them, and where they lie. Mostly none. */
  readonly list: readonly Words[];
  /** How far the list reaches to the right of the sheet, mm; 0 where there is none. */
  readonly listMm: number;
}

/** What foam shows of a piece. */
export const onFoam = ({ onFoam: own, drawing }: Template): FoamDrawing => own ?? { ...drawing, blocks: [] };

/** What foam shows of a piece where it lies on a sheet, its words the right way up. */
export function laidOnFoam(template: Template, lay: Lay2): Drawing {
  const { strokes, words, blocks } = onFoam(template);
  const laid = laidDrawing({ strokes, words }, lay);
  return blocks.length === 0 ? laid : { ...laid, words: rightWayUp(laid.words, blocks) };
}

/** All that is drawn, laid. */
export const laidDrawing = ({ strokes, words }: Drawing, lay: Lay2): Drawing => ({
  strokes: strokes.map((stroke) => ({ ...stroke, points: layPoints(stroke.points, lay) })),
  words: words.map((line) => layWords(line, lay)),
});

/**
 * @param sheet     its edge, and what is kept clear on it.
 * @param templates one for each of its placements, in their order.
 */
export function sheetDrawings(
  sheet: Pick<Sheet, 'widthMm' | 'heightMm' | 'outline' | 'keepOut' | 'placements'>,
  templates: readonly Template[],
): SheetDrawings {
  const drawings = sheet.placements.map((place, i) => laidOnFoam(templates[i], place));
  const numbers = templates.map((template) => onFoam(template).beside);
  if (numbers.every((number) => number === undefined)) return { drawings, list: [], listMm: 0 };
  const places = new PlacesBeside([...edgesOf(sheet), ...drawings.flatMap(({ strokes }) => strokes)], drawings);
  const listed: string[] = [];
  const numbered = drawings.map((drawing, i): Drawing => {
    const number = numbers[i];
    if (number === undefined) return drawing;
    const found = places.take(number, drawing.strokes);
    if (found !== null) return { strokes: [...drawing.strokes, found.leader], words: [...drawing.words, found.words] };
    const { x, y } = middleOf(drawing);
    listed.push(`${number}: ${Math.round(x)} mm from the left, ${Math.round(y)} mm from below`);
    return drawing;
  });
  return { drawings: numbered, ...listBeside(listed, sheet) };
}

/** The edge of a sheet, as it was traced, and what is kept clear on it. */
export function edgesOf({
  widthMm,
  heightMm,
  outline,
  keepOut = [],
}: Pick<Sheet, 'widthMm' | 'heightMm' | 'outline' | 'keepOut'>): readonly Stroke[] {
  const edge = outline ?? [0, 0, widthMm, 0, widthMm, heightMm, 0, heightMm];
  return [edge, ...keepOut].map((ring): Stroke => ({ role: 'frame', points: Float64Array.from(ring), closed: true }));
}

function middleOf({ strokes }: Drawing): { readonly x: number; readonly y: number } {
  const { points } = strokes[0];
  let [x, y] = [0, 0];
  for (let i = 0; i < points.length; i += 2) {
    x += points[i];
    y += points[i + 1];
  }
  return { x: (2 * x) / points.length, y: (2 * y) / points.length };
}

/** Letters of the list, its lines and its distance from the sheet, mm. */
const LIST_MM = 4;
const LINE_MM = 7;
const AWAY_MM = 6;

/** Columns right of the sheet, each as high as it is. */
function listBeside(
  texts: readonly string[],
  { widthMm, heightMm }: Pick<Sheet, 'widthMm' | 'heightMm'>,
): Pick<SheetDrawings, 'list' | 'listMm'> {
  if (texts.length === 0) return { list: [], listMm: 0 };
  const rows = Math.max(1, Math.floor(heightMm / LINE_MM));
  const columnMm = AWAY_MM + Math.max(...texts.map((text) => textWidthMm(text, LIST_MM)));
  const list = texts.map((text, i): Words => ({
    text,
    at: {
      x: widthMm + AWAY_MM + Math.floor(i / rows) * columnMm,
      y: Math.max(LIST_MM, heightMm - LIST_MM * 1.2 - (i % rows) * LINE_MM),
    },
    angleRad: 0,
    heightMm: LIST_MM,
    align: 'left',
  }));
  return { list, listMm: Math.ceil(texts.length / rows) * columnMm + AWAY_MM };
}
