import { boxOfPoints, type Ring } from '../geom/ring.ts';
import { depthInside } from '../geom/widest-spot.ts';
import type { Stack, StackHole, StackLayer, StackPiece, StackSideView } from '../model/stack.ts';
import { escaped } from '../steps/write/svg.ts';
import { mm, svgInMm } from './svg-in-mm.ts';

/** Between pieces on the drawing, and round it, mm. */
const GAP_MM = 8;

/** Pieces stand in rows about so wide, mm, unless one piece is wider. */
const ROW_MM = 600;

/** Head of the drawing: two lines of words, mm. */
const HEAD_MM = 16;

/** Tallest and smallest numbers, mm; under the smallest the number stands beside its piece. */
const NUMBER_MM = 9;
const SMALLEST_NUMBER_MM = 2.5;

/** Width of a letter, and of the arrow with its gap, in heights of the number. */
const LETTER_SHARE = 0.65;
const ARROW_SHARE = 0.75;

/**
 * All layers in true size, in mm, seen from the last layer: what the knife follows is drawn full and dark, where the next layer is set down dashed,
 * the finished surface at either face thin and red.
 * The up mark, an arrow beside the number, points to y of the frame in every layer.
 */
export function stackSvg(stack: Stack, title: string): string {
  const pieces = stack.layers.flatMap((layer) => layer.pieces.map((piece) => ({ piece, layer })));
  const sizes = pieces.map(({ piece }) => boxOfPoints(piece.outer));
  const widest = Math.max(ROW_MM, ...sizes.map(({ minX, maxX }) => maxX - minX));
  const drawn: string[] = [];
  let [x, y, row, right] = [GAP_MM, HEAD_MM + GAP_MM, 0, 0];
  for (const [i, { piece, layer }] of pieces.entries()) {
    const { minX, maxX, minY, maxY } = sizes[i];
    const [width, height] = [Math.max(maxX - minX, 14), maxY - minY + 5];
    if (x > GAP_MM && x + width > widest + GAP_MM) {
      x = GAP_MM;
      y += row + GAP_MM;
      row = 0;
    }
    drawn.push(pieceSvg(piece, layer, x - minX, y + maxY, y + maxY - minY + 4));
    x += width + GAP_MM;
    row = Math.max(row, height);
    right = Math.max(right, x);
  }
  const words = [
    `${title}: ${stack.layers.length} layers by the ${stack.rule === 'middle' ? 'middle' : `${stack.rule} face`}, true size, seen from the last layer`,
    'Full line: cut. Dashed: set the next layer down here. Red: the finished surface at the lower face, dash-dotted at the upper. Arrow: up mark, the same way in every layer.',
  ];
  return svgInMm(Math.max(right, 190), y + row + GAP_MM, [
    ...words.map(
      (line, i) => `<text x="${GAP_MM}" y="${8 + 6 * i}" font-size="${i === 0 ? 4.5 : 3.5}">${escaped(line)}</text>`,
    ),
    ...drawn,
  ]);
}

/** The stack cut along its axis, in true size, in mm: steps of the layers, and the finished surface over them. */
export function stackSectionsSvg(stack: Stack, title: string): string {
  const drawn: string[] = [];
  let x = GAP_MM + 8;
  let bottom = 0;
  for (const view of stack.sideViews) {
    const points = [
      ...view.solid,
      ...view.steps.map(({ left, right, from, to }) => Float64Array.from([left, from, right, to])),
    ];
    if (points.length === 0) continue;
    const box = boxOfPoints(points.flatMap((one) => [...one]));
    drawn.push(viewSvg(view, x - box.minX, HEAD_MM + GAP_MM + box.maxY));
    x += Math.max(box.maxX - box.minX, 40) + 3 * GAP_MM;
    bottom = Math.max(bottom, HEAD_MM + GAP_MM + box.maxY - box.minY);
  }
  return svgInMm(Math.max(x, 190), bottom + 2 * GAP_MM, [
    `<text x="${GAP_MM}" y="8" font-size="4.5">${escaped(`${title}: cut along the axis, true size`)}</text>`,
    `<text x="${GAP_MM}" y="14" font-size="3.5">Boxes: layers, with their numbers. Red: the finished surface.</text>`,
    ...drawn,
  ]);
}

function viewSvg({ solid, steps, across, atMm }: StackSideView, dx: number, dy: number): string {
  const boxes = steps.map(
    ({ left, right, from, to }) =>
      `<rect x="${mm(left + dx)}" y="${mm(dy - to)}" width="${mm(right - left)}" height="${mm(to - from)}" fill="#e8e4da" stroke="#333" stroke-width="0.2"/>`,
  );
  const numbered = new Set<number>();
  const leftmost = Math.min(...steps.map(({ left }) => left), ...solid.flatMap((ring) => boxOfPoints(ring).minX));
  const numbers = steps.flatMap(({ layer, from, to }) => {
    if (numbered.has(layer)) return [];
    numbered.add(layer);
    return [
      `<text x="${mm(leftmost + dx - 1.5)}" y="${mm(dy - (from + to) / 2 + 1.2)}" font-size="${Math.min(3.5, 0.8 * (to - from))}" text-anchor="end">${layer}</text>`,
    ];
  });
  const outline = solid.map(
    (ring) => `<path d="${path(ring, dx, dy, true)}" fill="none" stroke="#c22" stroke-width="0.35"/>`,
  );
  const lowest = Math.min(...steps.map(({ from }) => from), ...solid.map((ring) => boxOfPoints(ring).minY));
  const label = `<text x="${mm(leftmost + dx)}" y="${mm(dy - lowest + 6)}" font-size="3.5">along ${across}, at ${across === 'x' ? 'y' : 'x'} = ${mm(atMm)} mm</text>`;
  return `<g>${[...boxes, ...outline, ...numbers, label].join('\n')}</g>`;
}

function pieceSvg(piece: StackPiece, layer: StackLayer, dx: number, dy: number, under: number): string {
  const { outer, openings, holes, placing, labelAt, name } = piece;
  const room = roomFor(piece);
  // Number, gap and arrow side by side, as wide as they are drawn, within the circle of the room.
  const wide = LETTER_SHARE * name.length + ARROW_SHARE;
  const size = Math.min(NUMBER_MM, (2 * room) / Math.hypot(wide, 1));
  const cut = [outer, ...openings].map((ring) => path(ring, dx, dy, true)).join(' ');
  const isInside = size >= SMALLEST_NUMBER_MM;
  const [cx, cy] = [labelAt.x + dx, dy - labelAt.y];
  const words = isInside
    ? [
        `<text x="${mm(cx - (wide * size) / 2)}" y="${mm(cy + 0.35 * size)}" font-size="${mm(size)}">${name}</text>`,
        upMark(cx + (wide / 2 - 0.3) * size, cy, size),
      ]
    : [];
  const box = boxOfPoints(outer);
  return [
    `<g id="layer-${name}">`,
    `<path d="${cut}" fill="#f4f1ea" fill-rule="evenodd" stroke="#111" stroke-width="0.25"/>`,
    ...placing.map(
      (line) =>
        `<path d="${path(line, dx, dy, false)}" fill="none" stroke="#16a" stroke-width="0.25" stroke-dasharray="2 1.5"/>`,
    ),
    ...sectionsSvg(piece, layer, dx, dy),
    ...holes.map((hole) => holeSvg(hole, dx, dy)),
    ...words,
    `<text x="${mm(box.minX + dx)}" y="${mm(under)}" font-size="3">${name}: ${String(layer.thicknessMm)} mm${isInside ? '' : ' ↑'}</text>`,
    '</g>',
  ].join('\n');
}

/** The finished surface at both faces of the layer, where it runs within the piece's own box. */
function sectionsSvg({ outer }: StackPiece, layer: StackLayer, dx: number, dy: number): readonly string[] {
  const box = boxOfPoints(outer);
  const meets = (ring: Ring): boolean => {
    const own = boxOfPoints(ring);
    return own.minX < box.maxX && own.maxX > box.minX && own.minY < box.maxY && own.maxY > box.minY;
  };
  const drawn = (rings: readonly Ring[], dash: string): readonly string[] =>
    rings
      .filter(meets)
      .map((ring) => `<path d="${path(ring, dx, dy, true)}" fill="none" stroke="#c22" stroke-width="0.12"${dash}/>`);
  return [...drawn(layer.lowerSection, ''), ...drawn(layer.upperSection, ' stroke-dasharray="4 1 0.6 1"')];
}

/** Room for words round the label: most of the way to the nearest edge or hole. */
function roomFor({ outer, openings, holes, labelAt }: StackPiece): number {
  const clear = depthInside([outer, ...openings], labelAt.x, labelAt.y);
  const fromHoles = holes.map(({ x, y, radiusMm }) => Math.hypot(x - labelAt.x, y - labelAt.y) - radiusMm);
  return Math.max(0, Math.min(clear, ...fromHoles)) * 0.8;
}

/** An arrow that points up the drawing: y of the frame. */
function upMark(x: number, y: number, size: number): string {
  const [half, head] = [size / 2, size / 4];
  return `<path d="M${mm(x)} ${mm(y + half)}V${mm(y - half)}M${mm(x - head)} ${mm(y - half + head)}L${mm(x)} ${mm(y - half)}L${mm(x + head)} ${mm(y - half + head)}" fill="none" stroke="#111" stroke-width="0.35"/>`;
}

function holeSvg({ x, y, radiusMm }: StackHole, dx: number, dy: number): string {
  const [cx, cy, arm] = [x + dx, dy - y, radiusMm / 2];
  return `<circle cx="${mm(cx)}" cy="${mm(cy)}" r="${mm(radiusMm)}" fill="#fff" stroke="#111" stroke-width="0.25"/><path d="M${mm(cx - arm)} ${mm(cy)}h${mm(2 * arm)}M${mm(cx)} ${mm(cy - arm)}v${mm(2 * arm)}" stroke="#111" stroke-width="0.15"/>`;
}

function path(ring: Ring, dx: number, dy: number, isClosed: boolean): string {
  const points: string[] = [];
  for (let i = 0; i < ring.length; i += 2) points.push(`${mm(ring[i] + dx)} ${mm(dy - ring[i + 1])}`);
  return `M${points.join('L')}${isClosed ? 'Z' : ''}`;
}
