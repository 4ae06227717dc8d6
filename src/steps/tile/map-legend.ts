import type { FoamPiece } from '../../model/foam-piece.ts';
import type { LineRole, Template } from '../../model/template.ts';
import type { Flow, FlowItem } from './flow.ts';
import { LEADING, TYPE_MM } from './pen.ts';
import { wrapText } from './text-fit.ts';

/** Lines of pages, which explain themselves or have their words beside them. */
type PageRole = 'leader' | 'frame' | 'ruler' | 'map';

/** What every line of a template means, in the order it is told in. */
const MEANINGS: Readonly<Record<Exclude<LineRole, PageRole>, string>> = {
  cut: 'cut here, the blade on the middle of the line',
  bevel:
    'where the leaning cut comes out on the other side of the foam: in under, it lies inside the line you cut; out under, outside it',
  'fold-out': 'folds away from you: the printed side is outside the bend',
  'fold-in': 'folds towards you: the printed side is inside the bend',
  groove: 'a groove’s edges: cut a V between the two lines along the fold, as deep as the template says',
  'groove-behind': 'where a groove comes out that is cut from the other side: carry its two lines over to there',
  kerf: 'middle of a kerf: saw along it, as wide and as deep as the template says',
  'kerf-behind': 'middle of a kerf that is sawn from the other side: carry it over to there',
  score: 'score here, a slit in the face as deep as the template says; it opens when it is warmed',
  placement: 'a raised piece is glued on inside this line, on the face',
  engrave: 'a line of the artwork: burn or carve it into the face, do not cut through',
  hole: 'a round hole in its true size: punch it before you cut the slit that ends there, which then tears no farther',
  lap: 'from here to the cut line the foam laps its neighbour, over it or under it as its words say',
  mark: 'match mark: meets the mark of the same letter and number',
};

const SAMPLE_MM = 24;

const meanings = (): readonly (readonly [LineRole, string])[] => Object.entries(MEANINGS) as [LineRole, string][];

/** What the line kinds on these templates mean; kinds that are not used are not explained. */
export function putLegend(flow: Flow, templates: readonly Template[]): void {
  const used = new Set(templates.flatMap((template) => template.drawing.strokes.map((stroke) => stroke.role)));
  if (used.size === 0) return;
  flow.heading('Lines');
  for (const [role, text] of meanings()) if (used.has(role)) flow.put(legendItem(role, flow.say(text), flow.width));
}

function legendItem(role: LineRole, text: string, widthMm: number): FlowItem {
  const pitch = TYPE_MM.body * LEADING;
  const lines = wrapText(text, TYPE_MM.body, widthMm - SAMPLE_MM - 4);
  return {
    heightMm: lines.length * pitch,
    gapMm: 0.8,
    draw: (pen, left, top) => {
      const middle = top - TYPE_MM.body * 0.8;
      if (role === 'mark') {
        // As on a template: a tick that stands outside on the cut line.
        pen.line('cut', left, middle - 1.2, left + SAMPLE_MM, middle - 1.2);
        pen.line(role, left + SAMPLE_MM / 2, middle - 1.2, left + SAMPLE_MM / 2, middle + 1.6);
      } else {
        pen.line(role, left, middle, left + SAMPLE_MM, middle);
      }
      for (const [k, line] of lines.entries())
        pen.write(line, { x: left + SAMPLE_MM + 4, y: top - k * pitch - TYPE_MM.body * 1.3 });
    },
  };
}

/** Which side of the foam the paper lies on, said once for all pieces or for the two kinds apart. */
export function printedSideText(pieces: readonly FoamPiece[]): string {
  const back = pieces.filter((piece) => piece.tracedSide === 'back').length;
  const face = 'on the face of the foam, the side that will be seen';
  const other =
    'on the back of the foam, the inside of the prop; these templates are printed reversed, and so come out right';
  if (back === 0) return `Lay each template printed side up ${face}.`;
  if (back === pieces.length) return `Lay each template printed side up ${other}.`;
  return `Printed side up: a piece traced on its face lies ${face}; one traced on its back lies ${other}.`;
}

/** How a template that serves for two pieces is used and read. */
const TURNED: readonly string[] = [
  'A template with two numbers is cut twice: as it is printed for the first piece, and with the paper turned over, never the foam, for the one that mirrors it. Prick marks and folds through before you turn it.',
  'Of two readings the second is for the piece cut turned over: “A → 3 · turned: C → 4”, mark “A1/C1”. All else holds for both as the paper lies on the foam.',
];

/** What is to be known of templates that serve for two pieces; nothing where none does. */
export function putTurned(flow: Flow, templates: readonly Template[]): void {
  if (templates.every(({ turned }) => turned === undefined)) return;
  flow.heading('Turned over');
  for (const sentence of TURNED) flow.paragraph(sentence, {}, 0.8);
}
