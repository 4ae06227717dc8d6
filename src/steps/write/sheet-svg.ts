import type { CutterLine, CutterPiece, CutterRole, CutterSheet } from '../../model/cutter.ts';
import { plainText } from './plain-text.ts';
import { escaped, mm, svgWords } from './svg.ts';

/** hairline: every line as thin as a machine follows it. filled: pieces as areas, to look at, or for a plotter that follows areas. */
export type SheetSvgLook = 'hairline' | 'filled';

/** A thousandth of an inch: what laser drivers take for a line to cut along, and not for an area. */
const HAIRLINE_MM = 0.025;
const DRAWN_MM = 0.2;

/** Groups of a piece in the order they are worked: name, colour, which lines. Each has a colour of its own, so that a machine can be told by it. */
const GROUPS: readonly { readonly name: string; readonly colour: string; readonly roles: readonly CutterRole[] }[] = [
  { name: 'words', colour: '#777777', roles: ['words'] },
  { name: 'marks', colour: '#007a3d', roles: ['mark', 'grain'] },
  { name: 'folds', colour: '#0060c0', roles: ['fold'] },
  { name: 'drawn', colour: '#00a0b0', roles: ['groove', 'placement', 'lap'] },
  { name: 'engrave', colour: '#806000', roles: ['engrave'] },
  { name: 'other-side', colour: '#b0a000', roles: ['behind'] },
  { name: 'bevel', colour: '#a030a0', roles: ['knife'] },
  { name: 'part-way', colour: '#e07000', roles: ['kerf', 'score'] },
  { name: 'cut-inside', colour: '#d00020', roles: ['hole', 'inside', 'slit'] },
  { name: 'cut-outside', colour: '#000000', roles: ['outside'] },
];

/**
 * One sheet of foam as SVG: width, height and viewBox in mm, a group for each piece in the order of cutting, in it a group for each kind of
 * line. Words stand in a group of their own, never among lines that are cut.
 * @param about  title; @param notes  what whoever opens it should know.
 */
export function writeSheetSvg(
  sheet: CutterSheet,
  look: SheetSvgLook,
  about: string,
  notes: readonly string[] = [],
): string {
  const { widthMm: w, heightMm: h, list, listMm } = sheet;
  const all = w + listMm;
  const taken = new Set<string>();
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xml:space="preserve" width="${mm(all)}mm" height="${mm(h)}mm" viewBox="0 ${mm(-h)} ${mm(all)} ${mm(h)}">`,
    `<title>${escaped(plainText(about))}</title>`,
    ...(notes.length === 0 ? [] : [`<desc>${escaped(plainText(notes.join(' ')))}</desc>`]),
    `<style>${styleOf(look)}</style>`,
    `<g id="edge-of-sheet"><path class="edge" d="M0 0L${mm(w)} 0L${mm(w)} ${mm(-h)}L0 ${mm(-h)}Z"/></g>`,
    ...(list.length === 0 ? [] : ['<g id="list" class="words">', ...list.map((line) => svgWords(line, STILL)), '</g>']),
    ...sheet.pieces.flatMap((piece) => pieceGroup(piece, idOf(piece, taken), look)),
    '</svg>',
    '',
  ].join('\n');
}

function styleOf(look: SheetSvgLook): string {
  const width = look === 'hairline' ? HAIRLINE_MM : DRAWN_MM;
  return [
    `path,circle{fill:none;stroke-width:${width};stroke-linejoin:round}`,
    '.edge{stroke:#bbbbbb}',
    '.area{fill:#d4d4d4;stroke:none;fill-rule:evenodd}',
    ...GROUPS.map(({ name, colour }) => `.${name} path,.${name} circle{stroke:${colour}}`),
    'text{font-family:"DejaVu Sans",sans-serif;font-kerning:none;white-space:pre;fill:#555555}',
  ].join('');
}

/** Letters, digits and hyphens alone, each once in a file. */
function idOf({ number, name, copy }: CutterPiece, taken: Set<string>): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  const first = ['piece', String(number), plain, copy === 0 ? '' : `copy-${copy + 1}`]
    .filter((part) => part !== '')
    .join('-');
  let id = first;
  for (let again = 2; taken.has(id); again += 1) id = `${first}-${again}`;
  taken.add(id);
  return id;
}

const STILL = { x: 0, y: 0, turnRad: 0 };

function pieceGroup(piece: CutterPiece, id: string, look: SheetSvgLook): readonly string[] {
  const groups = GROUPS.flatMap(({ name, roles }) => {
    const lines = piece.lines.filter(({ role }) => roles.includes(role) && !(look === 'filled' && isArea(role)));
    const words = name === 'words' ? piece.words.map((line) => svgWords(line, STILL)) : [];
    if (lines.length + words.length === 0) return [];
    return [`<g id="${id}-${name}" class="${name}">`, ...lines.map(lineTag), ...words, '</g>'];
  });
  const areas = look === 'filled' ? [areaTag(piece, id)] : [];
  const title = `<title>${escaped(plainText(`${piece.number} ${piece.name}`))}</title>`;
  return [`<g id="${id}">`, title, ...areas, ...groups, '</g>'];
}

/** In the filled look an area says what these lines say. */
const isArea = (role: CutterRole): boolean => role === 'outside' || role === 'inside';

function areaTag({ shape }: CutterPiece, id: string): string {
  const rings = shape.flatMap(({ outer, holes }) => [outer, ...holes]);
  return `<path id="${id}-area" class="area" d="${rings.map((ring) => pathData(ring, true)).join('')}"/>`;
}

function lineTag({ points, closed, circle }: CutterLine): string {
  if (circle === undefined) return `<path d="${pathData(points, closed)}"/>`;
  const { centre, radiusMm } = circle;
  return `<circle cx="${mm(centre.x)}" cy="${mm(-centre.y)}" r="${mm(radiusMm)}"/>`;
}

/** y runs up on a sheet and down in SVG. */
function pathData(points: ArrayLike<number>, closed: boolean): string {
  const places = Array.from({ length: points.length / 2 }, (_, i) => `${mm(points[2 * i])} ${mm(-points[2 * i + 1])}`);
  return `M${places.join('L')}${closed ? 'Z' : ''}`;
}
