import type { OutlineSegment } from '../../geom/outline.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { PlainDraft, PlainLine } from '../../model/plain-piece.ts';
import { outlineSheet, wordsOfLine, type LaidDraft } from './outline-sheet.ts';
import { plainText } from './plain-text.ts';
import { escaped, mm, svgWords } from './svg.ts';

const STILL = { x: 0, y: 0, turnRad: 0 };
/** Longer arcs are drawn in parts, radians: near a half turn a rounded coordinate moves the middle far, and at a whole one both ends are one place. */
const LONGEST_ARC = Math.PI / 2;

/** Drafts in true size as SVG in mm: arcs as arcs, other curves as fine polylines; a group for each piece, in it one for each kind of line. @param about  title. */
export function writeOutlineSvg(drafts: readonly PlainDraft[], about: string): string {
  const { widthMm: w, heightMm: h, pieces } = outlineSheet(drafts);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xml:space="preserve" width="${mm(w)}mm" height="${mm(h)}mm" viewBox="0 ${mm(-h)} ${mm(w)} ${mm(h)}">`,
    `<title>${escaped(plainText(about))}</title>`,
    '<style>path{fill:none;stroke:#000;stroke-width:0.2}.drawn path{stroke:#0060c0}text{font-family:"DejaVu Sans",sans-serif}</style>',
    ...pieces.flatMap(pieceGroup),
    '</svg>',
    '',
  ].join('\n');
}

function pieceGroup({ draft, outline, holes, lines, words }: LaidDraft): readonly string[] {
  return [
    `<g id="${draft.key}">`,
    `<title>${escaped(plainText(`${draft.name}, cut ${draft.quantity}`))}</title>`,
    `<g class="words">${[...words.map((line) => svgWords(line, STILL)), ...lines.flatMap(wordsOfLine).map((line) => svgWords(line, STILL))].join('\n')}</g>`,
    `<g class="drawn">${lines.map((line) => `<path class="${line.role}" d="${linePath(line)}"/>`).join('\n')}</g>`,
    `<g class="cut-inside">${holes.map((hole) => `<path class="cut" d="${chainPath(hole)}"/>`).join('\n')}</g>`,
    `<g class="cut-outside"><path class="cut" d="${chainPath(outline)}"/></g>`,
    '</g>',
  ];
}

/** y is turned here: the drawing's runs up, SVG's down. */
const place = ({ x, y }: Vec2): string => `${mm(x)} ${mm(-y)}`;

function linePath({ points, closed }: PlainLine): string {
  const places = Array.from({ length: points.length / 2 }, (_, i) => place({ x: points[2 * i], y: points[2 * i + 1] }));
  return `M${places.join('L')}${closed ? 'Z' : ''}`;
}

/** A closed chain as path data. */
export function chainPath(chain: readonly OutlineSegment[]): string {
  return `M${place(chain[0].from)}${chain.map(segmentPath).join('')}Z`;
}

function segmentPath(segment: OutlineSegment): string {
  if (segment.kind === 'line') return `L${place(segment.to)}`;
  if (segment.kind === 'curve')
    return segment.points
      .slice(1)
      .map((p) => `L${place(p)}`)
      .join('');
  const { centre, radius, turn, from, to } = segment;
  const parts = Math.ceil(Math.abs(turn) / LONGEST_ARC - 1e-9);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  // With y down a turn to the left sweeps the other way.
  const sweep = turn > 0 ? 0 : 1;
  return Array.from({ length: parts }, (_, i) => {
    const angle = start + (turn * (i + 1)) / parts;
    const end =
      i + 1 === parts ? to : { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return `A${mm(radius)} ${mm(radius)} 0 0 ${sweep} ${place(end)}`;
  }).join('');
}
