import type { PieceId } from '../../base/ids.ts';
import { emFromCapHeight } from '../../geom/text-width.ts';
import { layWords, type Lay2 } from '../../geom/lay-over.ts';
import { BOLD_OUTLINE_SHARE, LINE_STYLES } from '../../model/line-style.ts';
import type { CopyName, Sheet, SheetLayout } from '../../model/sheet.ts';
import {
  PAPER_LAYERS,
  type Drawing,
  type LineRole,
  type Stroke,
  type Template,
  type Words,
} from '../../model/template.ts';
import { plainText } from './plain-text.ts';
import { edgesOf, laidDrawing, laidOnFoam, sheetDrawings } from './sheet-drawings.ts';

/** Between two sheets laid side by side, mm. */
const SHEET_GAP_MM = 50;

/**
 * All pieces laid on their sheets, true to scale: width and height in mm and a viewBox in mm, so one user unit is one mm
 * (SVG 2, 8.2). Every sheet is a group, every piece a group in it, and its lines and words lie in groups named after the layers.
 * A piece has its number and as much of its name as it has room for inside; all else is on its paper template. Pieces too large for any sheet, and those for which the sheets in hand have no room, stand in a row after the last sheet, in groups of their own,
 * so that nothing is missing.
 */
export function writePiecesSvg(templates: readonly Template[], layout: SheetLayout): string {
  const byPiece = new Map(templates.map((template) => [template.piece, template]));
  const parts: string[] = [];
  const need = (id: PieceId): Template => {
    const template = byPiece.get(id);
    if (template === undefined) throw new Error(`writePiecesSvg: no template of ${id}`);
    return template;
  };
  let left = 0;
  let height = 0;
  for (const [i, sheet] of layout.sheets.entries()) {
    const move = { x: left, y: 0, turnRad: 0 };
    const { drawings, list, listMm } = sheetDrawings(
      sheet,
      sheet.placements.map(({ piece: id }) => need(id)),
    );
    parts.push(`<g id="sheet-${i + 1}">`, sheetOutline(i + 1, left, sheet));
    for (const [k, { piece: id, copy, isFlipped }] of sheet.placements.entries())
      parts.push(piece(id, laidDrawing(drawings[k], move), copy, isFlipped));
    if (list.length > 0)
      parts.push(`<g id="sheet-${i + 1}-list">`, ...list.map((line) => svgWords(line, move)), '</g>');
    parts.push('</g>');
    left += sheet.widthMm + Math.max(SHEET_GAP_MM, listMm);
    height = Math.max(height, sheet.heightMm);
  }
  const row = (name: string, title: string, copies: readonly CopyName[]): void => {
    if (copies.length === 0) return;
    parts.push(`<g id="${name}">`, `<title>${title}</title>`);
    for (const { piece: id, copy } of copies) {
      const template = need(id);
      const { minX, minY, maxX, maxY } = template.foamBox;
      parts.push(piece(id, laidOnFoam(template, { x: left - minX, y: -minY, turnRad: 0 }), copy));
      left += maxX - minX + SHEET_GAP_MM;
      height = Math.max(height, maxY - minY);
    }
    parts.push('</g>');
  };
  row(
    'too-large',
    'Larger than any sheet',
    layout.tooLarge.map((id) => ({ piece: id, copy: 0 })),
  );
  row('no-room', 'No room on the sheets in hand', layout.odd?.unlaid ?? []);
  const width = Math.max(0, left - SHEET_GAP_MM);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xml:space="preserve" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 ${mm(-height)} ${mm(width)} ${mm(height)}">`,
    `<title>Foam pieces, 1 unit = 1 mm</title>`,
    `<style>${STYLE}</style>`,
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}

/** The edge of a sheet, as it was traced, and what is kept clear on it. */
function sheetOutline(number: number, x: number, sheet: Sheet): string {
  const lines = laidDrawing({ strokes: edgesOf(sheet), words: [] }, { x, y: 0, turnRad: 0 }).strokes.map(path);
  return `<g id="sheet-${number}-outline">${lines.join('\n')}</g>`;
}

function piece(of: PieceId, { strokes: all, words: lines }: Drawing, copy: number, isFlipped = false): string {
  const id = `piece-${of.replace(/[^A-Za-z0-9.-]/g, '-')}${copy === 0 ? '' : `-copy-${copy + 1}`}`;
  const groups = PAPER_LAYERS.map((layer) => {
    const strokes = all.filter(({ role }) => LINE_STYLES[role].layer === layer).map(path);
    const words = layer === 'words' ? lines.map((line) => svgWords(line, STILL)) : [];
    return strokes.length + words.length === 0
      ? ''
      : `<g id="${id}-${layer}" class="layer-${layer}">\n${[...strokes, ...words].join('\n')}\n</g>\n`;
  });
  const over = isFlipped ? '<title>turned over: its traced side lies down</title>\n' : '';
  return `<g id="${id}">\n${over}${groups.join('')}</g>`;
}

/** y is turned here and nowhere else: the page's runs up, SVG's runs down. */
function path({ role, points, closed, filled }: Stroke): string {
  const places = Array.from({ length: points.length / 2 }, (_, i) => `${mm(points[2 * i])} ${mm(-points[2 * i + 1])}`);
  const fill = filled === true ? ` style="fill:${colourOf(role)};stroke:none"` : '';
  return `<path class="${role}"${fill} d="M${places.join('L')}${closed || filled === true ? 'Z' : ''}"/>`;
}

const STILL: Lay2 = { x: 0, y: 0, turnRad: 0 };

/** Words at their place, in plain letters. */
export function svgWords(words: Words, move: Lay2): string {
  const { at, angleRad, align } = layWords(words, move);
  const turn = (angleRad * 180) / Math.PI;
  const anchor = { left: 'start', centre: 'middle', right: 'end' }[align];
  const [x, y] = [mm(at.x), mm(-at.y)];
  const turned = Math.abs(turn) < 1e-9 ? '' : ` transform="rotate(${mm(-turn)} ${x} ${y})"`;
  // As on paper: the plain letters with an outline, so that bold words run no longer.
  const bold = words.bold === true ? ` stroke="#000" stroke-width="${mm(BOLD_OUTLINE_SHARE * words.heightMm)}"` : '';
  const size = mm(emFromCapHeight(words.heightMm));
  return `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}"${bold}${turned}>${escaped(plainText(words.text))}</text>`;
}

/** How each line kind looks, from the table that paper and screen use; lines end square where they say. */
function ruleOf(role: LineRole): string {
  const { widthMm, dashMm } = LINE_STYLES[role];
  const dash = dashMm.length === 0 ? '' : `;stroke-dasharray:${dashMm.join(' ')}`;
  return `.${role}{stroke:${colourOf(role)};stroke-width:${widthMm}${dash}}`;
}

function colourOf(role: LineRole): string {
  const grey = Math.round(LINE_STYLES[role].grey * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${grey}${grey}${grey}`;
}

/** Four decimals: a tenth of a micrometre, without a trailing zero or a minus nought. */
export function mm(value: number): string {
  const rounded = Math.round(value * 1e4) / 1e4;
  return String(rounded === 0 ? 0 : rounded);
}

const STYLE = [
  'path{fill:none;stroke-linecap:butt;stroke-linejoin:round}',
  ...Object.keys(LINE_STYLES).map((role) => ruleOf(role as LineRole)),
  'text{font-family:"DejaVu Sans",sans-serif;font-kerning:none;stroke-linejoin:round;white-space:pre}',
].join('');

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** Words between tags. */
export const escaped = (plain: string): string => plain.replace(/[&<>"]/g, (character) => ESCAPES[character]);
