import type { PieceId } from '../../base/ids.ts';
import { formatThickness } from '../../base/format-length.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import {
  ruledLeansText,
  ruledLength,
  ruledMarksText,
  ruledSizeText,
  type RuledStrip,
} from '../../model/ruled-strip.ts';
import type { Flow, FlowItem } from './flow.ts';
import { LEADING, TYPE_MM } from './pen.ts';

/** Size of the drawing of a strip, the white that its figures have at both sides, and how far its ends may lean in it, mm. */
const DRAWN = { width: 100, height: 9, side: 16, lean: 12 } as const;

/** Strips that have no paper: each with its figures and a drawing of it that is not to scale. Nothing where there is none. */
export function putRuled(flow: Flow, strips: readonly RuledStrip[], pieces: ReadonlyMap<PieceId, CutThing>): void {
  if (strips.length === 0) return;
  flow.heading('Cut by the ruler');
  flow.paragraph(
    'Straight strips of one width have no template: rule them on the foam, on the side that will be seen. The drawings show how they lie and are not to scale; left, right, lower and upper are as drawn.',
    {},
    0.8,
  );
  const { unit = 'mm' } = flow.say;
  for (const strip of strips) {
    const piece = pieces.get(strip.piece);
    if (piece === undefined) throw new Error(`putRuled: no piece ${strip.piece}`);
    flow.put(ruledItem(strip, `${piece.number}  ${piece.name}`, flow.width, (mm) => flow.say(ruledLength(mm, unit))));
    const sentences = [
      `Cut ${piece.quantity} from ${formatThickness(piece.thicknessMm, unit)} foam, revision ${piece.revision}: ${ruledSizeText(strip, unit)}.`,
      ...leansOf(strip),
      ...(strip.marks.length === 0
        ? []
        : [`Marks, from the left end of its lower side: ${ruledMarksText(strip, unit)}.`]),
      ...strip.notes.map((note) => `${note.slice(0, 1).toUpperCase()}${note.slice(1)}${note.endsWith('.') ? '' : '.'}`),
    ];
    for (const sentence of sentences) flow.paragraph(sentence, {}, 0.6);
  }
}

function leansOf(strip: RuledStrip): readonly string[] {
  const text = ruledLeansText(strip);
  return text === '' ? [] : [`Leans, seen from the face: ${text}.`];
}

/**
 * Name and drawing of a strip, its corners where its ends lean, a tick at each mark.
 *
 *      12  Handle winding strip
 *              12 mm                     2092 mm
 *                ┌───────────┤├────────────┐
 *             /  ╷   25 mm       ╷    /
 *              └───────────┤├────────────┘
 *              0                       2080 mm
 */
function ruledItem(strip: RuledStrip, name: string, widthMm: number, length: (mm: number) => string): FlowItem {
  const pitch = TYPE_MM.body * LEADING;
  const { width: widest, height, side, lean } = DRAWN;
  const width = Math.min(widest, widthMm - 2 * (side + lean));
  const { widthMm: wide, lowerMm, upperFromMm, upperToMm, marks } = strip;
  const drawnShift = (mm: number): number => Math.max(-lean, Math.min(lean, (mm / wide) * height));
  return {
    heightMm: height + 3.4 * pitch,
    gapMm: 3,
    draw: (pen, left, top) => {
      const title = { x: left, y: top - TYPE_MM.body * 1.3 };
      pen.write(name, title, { bold: true });
      const [x, y] = [left + side + lean, top - 2.3 * pitch - height];
      const [from, to] = [x + drawnShift(upperFromMm), x + width + drawnShift(upperToMm - lowerMm)];
      const high = y + height;
      const middle = x + width / 2;
      const gap = 1.2;
      pen.line('map', middle - gap, y, x, y, from, high, middle - gap, high);
      pen.line('map', middle + gap, y, x + width, y, to, high, middle + gap, high);
      for (const at of [middle - gap, middle + gap]) pen.line('map', at - 0.8, y - 1.4, at + 0.8, y + 1.4);
      for (const at of [middle - gap, middle + gap]) pen.line('map', at - 0.8, high - 1.4, at + 0.8, high + 1.4);
      const place = (p: { readonly x: number; readonly y: number }): readonly [number, number] => {
        const share = Math.max(0, Math.min(1, p.y / wide));
        return [x + (p.x / lowerMm) * width, y + share * height];
      };
      for (const mark of marks) {
        const [[ax, ay], [bx, by]] = [place(mark.from), place(mark.to)];
        // A tick outside the edge has no height in the drawing.
        pen.line('leader', ax, ay, bx, Math.hypot(bx - ax, by - ay) < 0.5 ? by + (by > y ? 1.2 : -1.2) : by);
      }
      const under = y - TYPE_MM.body * 1.5;
      pen.write('0', { x, y: under }, { align: 'centre' });
      pen.write(length(lowerMm), { x: x + width, y: under }, { align: 'centre' });
      const over = high + TYPE_MM.body * 0.6;
      pen.write(length(upperFromMm), { x: from, y: over }, { align: 'centre' });
      pen.write(length(upperToMm), { x: to, y: over }, { align: 'centre' });
      const inside = { x: x + width / 4, y: y + height / 2 - TYPE_MM.body / 2 };
      pen.write(length(wide), inside, { align: 'centre' });
    },
  };
}
