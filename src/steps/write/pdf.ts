import type { jsPDF } from 'jspdf';
import { QUIET_WORK, type Work } from '../../base/work.ts';
import { LINE_STYLES } from '../../model/line-style.ts';
import type { Page } from '../../model/page.ts';
import { PAPER_LAYERS } from '../../model/template.ts';
import { drawPdfStrokes, drawPdfWords, type PdfCanvas } from './pdf-drawing.ts';
import { addPaperLayers } from './pdf-layers.ts';

export interface PdfOptions {
  /** DejaVu Sans as a TrueType file. */
  readonly font: Uint8Array;
  readonly title: string;
  /** ISO 8601: a date or a date with a time (UTC). Goes into the file's information. */
  readonly date: string;
  /** Project revision, told in the subject. */
  readonly revision: number;
  /** What a reader finds in the list beside the pages, in order; `page` counts from 0. None if left out. */
  readonly bookmarks?: readonly { readonly title: string; readonly page: number }[];
}

const FONT = 'DejaVuSans';

/**
 * Writes pages to a PDF that prints true: every page has exactly its paper's size, the print dialogue is asked not to scale, lines and words
 * lie on layers that viewers can switch ({@link PAPER_LAYERS}), bookmarks lead to pieces, and the font is embedded. The same input gives the same
 * bytes.
 * The library is loaded when it is first needed. It pauses after each layer of a page. @throws when there are no pages or the date is none: that is our mistake.
 */
export async function writePdf(
  pages: readonly Page[],
  options: PdfOptions,
  work: Work = QUIET_WORK,
): Promise<Uint8Array> {
  const [first] = pages;
  if (first === undefined) throw new Error('writePdf: no pages');
  const { jsPDF } = await import('jspdf');
  await work.pause(0);
  const doc = new jsPDF({
    unit: 'mm',
    format: [first.widthMm, first.heightMm],
    orientation: orientationOf(first),
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: 6,
  });
  const titles = PAPER_LAYERS.map((layer) => `${layer.slice(0, 1).toUpperCase()}${layer.slice(1)}`);
  const { open, write } = addPaperLayers(doc, titles);
  describe(doc, pages, options);
  doc.addFileToVFS(`${FONT}.ttf`, binaryText(options.font));
  doc.addFont(`${FONT}.ttf`, FONT, 'normal');
  doc.setFont(FONT, 'normal');
  const canvas: PdfCanvas = { doc, write };
  for (const [i, page] of pages.entries()) {
    if (i > 0) doc.addPage([page.widthMm, page.heightMm], orientationOf(page));
    for (const [number, layer] of PAPER_LAYERS.entries()) {
      const strokes = page.drawing.strokes.filter(({ role }) => LINE_STYLES[role].layer === layer);
      const words = layer === 'words' ? page.drawing.words : [];
      if (strokes.length + words.length === 0) continue;
      const close = open(number);
      drawPdfStrokes(canvas, strokes);
      drawPdfWords(canvas, words, page.heightMm);
      close();
      await work.pause(i / pages.length);
    }
  }
  for (const { title, page } of options.bookmarks ?? []) {
    if (pages[page] === undefined)
      throw new Error(`writePdf: bookmark ${title} leads to page ${page} of ${pages.length}`);
    doc.outline.add(null, title, { pageNumber: page + 1 });
  }
  return new Uint8Array(doc.output('arraybuffer'));
}

function orientationOf({ widthMm, heightMm }: Page): 'portrait' | 'landscape' {
  return widthMm > heightMm ? 'landscape' : 'portrait';
}

/** Information, print wishes and identity, all from the input: jspdf would take the clock and chance. */
function describe(doc: jsPDF, pages: readonly Page[], { title, date, revision }: PdfOptions): void {
  const moment = new UtcDate(date.includes('T') ? date : `${date}T00:00:00Z`);
  if (Number.isNaN(moment.getTime())) throw new Error(`writePdf: ${date} is not an ISO 8601 date`);
  doc.setCreationDate(moment);
  doc.setFileId(fileId(title, date, revision, pages));
  doc.setDocumentProperties({
    title,
    subject: `Foam templates, revision ${revision}. Print at 100 %.`,
    creator: 'Foamloft',
  });
  doc.setLanguage('en-GB');
  doc.viewerPreferences({ PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true });
}

/** A moment whose clock reads UTC wherever the machine stands: jspdf writes what the clock reads. */
class UtcDate extends Date {
  override getFullYear(): number {
    return this.getUTCFullYear();
  }
  override getMonth(): number {
    return this.getUTCMonth();
  }
  override getDate(): number {
    return this.getUTCDate();
  }
  override getHours(): number {
    return this.getUTCHours();
  }
  override getMinutes(): number {
    return this.getUTCMinutes();
  }
  override getSeconds(): number {
    return this.getUTCSeconds();
  }
  override getTimezoneOffset(): number {
    return 0;
  }
}

/** 32 hex digits from what the file says, the same for the same (FNV-1a, four runs of 32 bits). */
function fileId(title: string, date: string, revision: number, pages: readonly Page[]): string {
  const text = [title, date, revision, ...pages.flatMap(({ name, pieces }) => [name, ...pieces])].join(' ');
  return [0, 1, 2, 3]
    .map((run) => {
      let hash = 0x811c9dc5 ^ run;
      for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
      return (hash >>> 0).toString(16).padStart(8, '0');
    })
    .join('')
    .toUpperCase();
}

/** Bytes as the one-character-a-byte text that jspdf's file store takes. */
function binaryText(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 0x8000) parts.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
  return parts.join('');
}
