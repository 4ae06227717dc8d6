import { jsPDF } from 'jspdf';
import { emFromCapHeight } from '../../geom/text-width.ts';
import { LINE_STYLES } from '../../model/line-style.ts';
import type { Page } from '../../model/page.ts';
import type { PaperLayer, Stroke, Words } from '../../model/template.ts';
import { addPaperLayers } from './pdf-layers.ts';

export interface PdfOptions {
  /** DejaVu Sans as a TrueType file. */
  readonly font: Uint8Array;
  readonly title: string;
  /** ISO 8601: a date or a date with a time (UTC). Goes into the file's information. */
  readonly date: string;
  /** Project revision, told in the subject. */
  readonly revision: number;
}

/** Layers from the lowest to the highest; `cut` is drawn last, over everything. */
const LAYERS: readonly { readonly layer: PaperLayer; readonly title: string }[] = [
  { layer: 'words', title: 'Words' },
  { layer: 'marks', title: 'Marks' },
  { layer: 'fold', title: 'Fold' },
  { layer: 'cut', title: 'Cut' },
];

const FONT = 'DejaVuSans';

/** 1 PDF unit is 1/72 in (ISO 32000-1). */
const PT_PER_MM = 72 / 25.4;

/**
 * Writes pages to a PDF that prints true: every page has exactly its paper's size, the print dialogue is asked not to scale, lines and words
 * lie on four layers that viewers can switch, and the font is embedded. The same pages and date give the same bytes.
 * @throws when there are no pages: that is our mistake.
 */
export function writePdf(pages: readonly Page[], options: PdfOptions): Uint8Array {
  const [first] = pages;
  if (first === undefined) throw new Error('writePdf: no pages');
  const doc = new jsPDF({
    unit: 'mm',
    format: [first.widthMm, first.heightMm],
    orientation: orientationOf(first),
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: 6,
  });
  const open = addPaperLayers(
    doc,
    LAYERS.map(({ title }) => title),
  );
  describe(doc, pages, options);
  doc.addFileToVFS(`${FONT}.ttf`, binaryText(options.font));
  doc.addFont(`${FONT}.ttf`, FONT, 'normal');
  doc.setFont(FONT, 'normal');
  doc.setLineCap('round');
  doc.setLineJoin('round');
  for (const [i, page] of pages.entries()) {
    if (i > 0) doc.addPage([page.widthMm, page.heightMm], orientationOf(page));
    for (const [number, { layer }] of LAYERS.entries()) {
      const strokes = page.drawing.strokes.filter(({ role }) => LINE_STYLES[role].layer === layer);
      const words = layer === 'words' ? page.drawing.words : [];
      if (strokes.length + words.length === 0) continue;
      const close = open(number);
      for (const stroke of strokes) drawStroke(doc, stroke, page.heightMm);
      for (const line of words) drawWords(doc, line, page.heightMm);
      close();
    }
  }
  return new Uint8Array(doc.output('arraybuffer'));
}

const orientationOf = ({ widthMm, heightMm }: Page): 'portrait' | 'landscape' =>
  widthMm > heightMm ? 'landscape' : 'portrait';

/** Information, print wishes and identity, all from the input: jspdf would take the clock and chance. */
function describe(doc: jsPDF, pages: readonly Page[], { title, date, revision }: PdfOptions): void {
  const moment = date.includes('T') ? date : `${date}T00:00:00Z`;
  doc.setCreationDate(new Date(moment));
  doc.setFileId(fileId(`${title} ${date} ${revision} ${pages.length}`));
  doc.setDocumentProperties({
    title,
    subject: `Foam templates, revision ${revision}. Print at 100 %.`,
    creator: 'Foamloft',
  });
  doc.setLanguage('en-GB');
  doc.viewerPreferences({ PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true });
}

/** 32 hex digits from a text, the same for the same text (FNV-1a, four runs of 32 bits). */
function fileId(text: string): string {
  return [0, 1, 2, 3]
    .map((run) => {
      let hash = 0x811c9dc5 ^ run;
      for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
      return (hash >>> 0).toString(16).padStart(8, '0');
    })
    .join('')
    .toUpperCase();
}

/** jspdf's y runs down from the top. */
function drawStroke(doc: jsPDF, { role, points, closed, filled }: Stroke, heightMm: number): void {
  if (points.length < 4) return;
  const style = LINE_STYLES[role];
  const grey = Math.round(style.grey * 255);
  doc.setLineWidth(style.widthMm);
  doc.setLineDashPattern([...style.dashMm], 0);
  doc.setDrawColor(String(grey));
  doc.setFillColor(String(grey));
  doc.moveTo(points[0], heightMm - points[1]);
  for (let i = 2; i < points.length; i += 2) doc.lineTo(points[i], heightMm - points[i + 1]);
  if (closed || filled === true) doc.close();
  if (filled === true) doc.fill();
  else doc.stroke();
}

function drawWords(doc: jsPDF, { text, at, angleRad, heightMm, align, bold }: Words, pageHeightMm: number): void {
  if (text === '') return;
  doc.setFontSize(emFromCapHeight(heightMm) * PT_PER_MM);
  doc.setTextColor(0);
  // One weight is embedded; a thin outline makes it bold.
  doc.setLineWidth(0.05 * heightMm);
  doc.setLineDashPattern([], 0);
  doc.setDrawColor(0);
  const [x, y] = startOf(doc, text, at.x, at.y, angleRad, align);
  doc.text(text, x, pageHeightMm - y, {
    angle: (angleRad * 180) / Math.PI,
    renderingMode: bold === true ? 'fillThenStroke' : 'fill',
  });
}

/** jspdf aligns turned text by its unturned width, so the beginning of the line is found here. */
function startOf(
  doc: jsPDF,
  text: string,
  x: number,
  y: number,
  angleRad: number,
  align: Words['align'],
): readonly [number, number] {
  if (align === 'left') return [x, y];
  const back = doc.getTextWidth(text) * (align === 'centre' ? 0.5 : 1);
  return [x - back * Math.cos(angleRad), y - back * Math.sin(angleRad)];
}

/** Bytes as the one-character-a-byte text that jspdf's file store takes. */
function binaryText(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 0x8000) parts.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
  return parts.join('');
}
