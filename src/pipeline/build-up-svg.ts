import { boxOfPoints } from '../geom/ring.ts';
import type { BuildUp, SideLine } from '../model/build-up.ts';
import { LINE_STYLES } from '../model/line-style.ts';
import type { PlainDraft } from '../model/plain-piece.ts';
import { escaped } from '../steps/write/svg.ts';
import { ringOf } from './build-up-json.ts';
import { mm, svgInMm } from './svg-in-mm.ts';

/** Between pieces, and round the drawing, mm. */
const GAP_MM = 10;
/** Pieces stand in rows about so wide, mm, unless one is wider. */
const ROW_MM = 1000;
/** Head of the drawing, and words under a piece, mm. */
const HEAD_MM = 16;
const WORDS_MM = 5;

/** All pieces in true size, in mm, seen from the face. */
export function buildUpPiecesSvg(built: BuildUp, title: string): string {
  const drawn: string[] = [];
  let [x, y, row, right] = [GAP_MM, HEAD_MM + GAP_MM, 0, 190];
  for (const piece of built.work.pieces) {
    const ring = ringOf(piece);
    const { minX, maxX, minY, maxY } = boxOfPoints(Float64Array.from(ring.flatMap((p) => [p.x, p.y])));
    const [width, height] = [Math.max(maxX - minX, 40), maxY - minY + WORDS_MM * (1 + piece.notes.length)];
    if (x > GAP_MM && x + width > ROW_MM + GAP_MM) {
      x = GAP_MM;
      y += row + GAP_MM;
      row = 0;
    }
    drawn.push(pieceSvg(piece, x - minX, y + maxY, x, y + maxY - minY));
    x += width + GAP_MM;
    row = Math.max(row, height);
    right = Math.max(right, x);
  }
  return svgInMm(right, y + row + GAP_MM, [
    words(GAP_MM, 8, 4.5, `${title}: pieces in true size, seen from the face`),
    words(
      GAP_MM,
      14,
      3.5,
      'Full line: cut. Dotted: where the next layer has its seam or its end. Arrow: to the end of the core.',
    ),
    ...drawn,
  ]);
}

function pieceSvg(piece: PlainDraft, dx: number, dy: number, left: number, bottom: number): string {
  const at = (px: number, py: number): string => `${mm(px + dx)} ${mm(dy - py)}`;
  const cut = `<path d="M${ringOf(piece)
    .map(({ x, y }) => at(x, y))
    .join('L')}Z" fill="#f4f1ea" stroke="#111" stroke-width="0.25"/>`;
  const lines = piece.lines.flatMap(({ role, points, closed, text }) => {
    const corners = Array.from({ length: points.length / 2 }, (_, i) => at(points[2 * i], points[2 * i + 1]));
    const { widthMm, dashMm } = LINE_STYLES[role];
    const dash = dashMm.length > 0 ? ` stroke-dasharray="${dashMm.join(' ')}"` : '';
    const [x, y] = [points[0] + dx + 1, dy - points[1] - 1];
    return [
      `<path d="M${corners.join('L')}${closed ? 'Z' : ''}" fill="none" stroke="#16a" stroke-width="${widthMm}"${dash}/>`,
      ...(text === undefined ? [] : [words(x, y, 2.5, text)]),
    ];
  });
  const named = `${piece.name}: ${piece.quantity} of ${mm(piece.thicknessMm)} mm`;
  return [
    `<g id="${escaped(piece.key)}">`,
    cut,
    ...lines,
    ...[named, ...piece.notes].map((text, i) => words(left, bottom + 4 + WORDS_MM * i, 3, text)),
    '</g>',
  ].join('\n');
}

const LOOKS: Readonly<Record<SideLine['role'], string>> = {
  core: 'fill="#d8dde2" stroke="#333" stroke-width="0.25"',
  layer: 'fill="#e8e4da" stroke="#333" stroke-width="0.2"',
  skin: 'fill="#cfdccb" stroke="#333" stroke-width="0.2"',
  stave: 'fill="#e6d3b1" stroke="#333" stroke-width="0.2"',
  cap: 'fill="#e8e4da" stroke="#333" stroke-width="0.25"',
  seat: 'fill="none" stroke="#16a" stroke-width="0.3" stroke-dasharray="2 1.5"',
  profile: 'fill="none" stroke="#c22" stroke-width="0.35"',
  winding: 'fill="none" stroke="#777" stroke-width="0.2"',
};

/** The core cut open along its axis, in true size, in mm: its start on the left. */
export function buildUpSideSvg({ sideView }: BuildUp, title: string): string {
  const box = boxOfPoints(Float64Array.from(sideView.flatMap(({ points }) => points.flat())));
  const [dx, dy] = [GAP_MM - box.minX, HEAD_MM + GAP_MM + box.maxY];
  const lines = sideView.flatMap(({ role, points, closed, text }) => {
    const path = points.map(([x, y]) => `${mm(x + dx)} ${mm(dy - y)}`).join('L');
    const drawn = `<path d="M${path}${closed ? 'Z' : ''}" ${LOOKS[role]}/>`;
    if (text === undefined || points.length < 3) return [drawn];
    const [x, y] = [(points[0][0] + points[2][0]) / 2, (points[0][1] + points[2][1]) / 2];
    const high = Math.min(3.5, 0.8 * Math.abs(points[2][1] - points[0][1]));
    return [
      drawn,
      `<text x="${mm(x + dx)}" y="${mm(dy - y + 0.35 * high)}" font-size="${mm(high)}" text-anchor="middle">${escaped(text)}</text>`,
    ];
  });
  return svgInMm(Math.max(190, box.maxX - box.minX + 2 * GAP_MM), HEAD_MM + 2 * GAP_MM + box.maxY - box.minY, [
    words(GAP_MM, 8, 4.5, `${title}: cut along the axis, true size`),
    words(
      GAP_MM,
      14,
      3.5,
      'Boxes: layers, with their numbers. Red: the finished surface. Dashed: what sits on the core.',
    ),
    ...lines,
  ]);
}

const words = (x: number, y: number, size: number, text: string): string =>
  `<text x="${mm(x)}" y="${mm(y)}" font-size="${size}">${escaped(text)}</text>`;
