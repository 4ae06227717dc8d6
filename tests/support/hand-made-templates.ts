import { foamId, layerId, partId, pieceId, seamId } from '../../src/base/ids.ts';
import { boxOfPoints, joinBoxes, type Ring } from '../../src/geom/ring.ts';
import { textWidthMm } from '../../src/geom/text-width.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import type { Stroke, Template, Words } from '../../src/model/template.ts';

/** A template drawn by hand: an outline with whatever lines and words it is given. */
export function handMadeTemplate(
  id: string,
  outline: readonly number[],
  strokes: readonly Stroke[] = [],
  words: readonly Words[] = [],
): Template {
  const cut: Stroke = { role: 'cut', points: Float64Array.from(outline), closed: true };
  const all = [cut, ...strokes];
  // Room round each line of words whichever way it is turned.
  const round = words.map(({ at, text, heightMm }) => {
    const reach = textWidthMm(text, heightMm) + 2 * heightMm;
    return { minX: at.x - reach, minY: at.y - reach, maxX: at.x + reach, maxY: at.y + reach };
  });
  const foamBox = boxOfPoints(cut.points);
  const drawn = all.map(({ points }) => boxOfPoints(points)).reduce(joinBoxes);
  return {
    piece: pieceId(id),
    drawing: { strokes: all, words },
    box: words.length > 0 && words.some((line) => line.angleRad !== 0) ? round.reduce(joinBoxes, drawn) : drawn,
    foamBox,
    reversed: false,
  };
}

/** A line of words, level and centred unless said otherwise. */
export function handMadeWords(text: string, x: number, y: number, change: Partial<Words> = {}): Words {
  return { text, at: { x, y }, angleRad: 0, heightMm: 2.5, align: 'centre', ...change };
}

export const straight = (role: Stroke['role'], ...xy: readonly number[]): Stroke => ({
  role,
  points: Float64Array.from(xy),
  closed: false,
});

/** A rectangle with its number, name and edge letters, lower left corner at the origin. */
export function stripTemplate(id: string, width: number, height: number): Template {
  const [x, y] = [width / 2, height / 2];
  return handMadeTemplate(
    id,
    [0, 0, width, 0, width, height, 0, height],
    [straight('bevel', 1, 1, width - 1, 1, width - 1, height - 1), straight('mark', x, height, x, height + 3)],
    [handMadeWords(id, x, y), handMadeWords('A', x + 4, height - 4)],
  );
}

/** A shield 300 × 420 mm of many points with a bevel, folds, marks, an arrow, a block of words and a word on a leader. */
export function shieldTemplate(id: string, pointCount = 240): Template {
  const outline = shieldRing(300, 420, pointCount);
  const inner = shieldRing(290, 408, pointCount).map((value, i) => value + (i % 2 === 0 ? 5 : 6));
  const strokes: Stroke[] = [
    { role: 'bevel', points: inner, closed: true },
    straight('fold-out', 150, 10, 150, 410),
    straight('fold-in', 20, 260, 280, 260),
    { role: 'mark', points: Float64Array.of(60, 60, 64, 60, 62, 68), closed: true, filled: true },
    straight('mark', 62, 40, 62, 60),
    straight('leader', 318, 300, 296, 300),
  ];
  const title = ['1  Lamplighter shield', 'cut 1 · EVA 10 mm', 'traced on the face, this side out', 'piece 7Q2F'];
  const words = [
    ...title.map((text, i) => handMadeWords(text, 160, 245 - 6 * i, { heightMm: 3, align: 'left' })),
    handMadeWords('fold out 24°', 153, 330, { angleRad: Math.PI / 2 }),
    handMadeWords('fold in 31°', 210, 262),
    handMadeWords('K1', 24, 330),
    handMadeWords('K2', 62, 190),
    handMadeWords('up', 70, 48),
    handMadeWords('B → 4 · bevel 12° in under', 319, 300, { align: 'left' }),
  ];
  return handMadeTemplate(id, Array.from(outline), strokes, words);
}

/** Straight top, round flanks that meet in a point: counter-clockwise from the upper right corner. */
function shieldRing(width: number, height: number, pointCount: number): Ring {
  const half = pointCount / 2;
  const side = Array.from({ length: half }, (_, i) => {
    const t = i / (half - 1);
    return [0.5 + 0.5 * Math.cos((t * Math.PI) / 2) ** 0.8, 1 - t];
  });
  const points = [...side.map(([x, y]) => [1 - x, y]), ...side.slice(0, -1).reverse()];
  return Float64Array.from(points.flatMap(([x, y]) => [x * width, y * height]));
}

/** The piece a template is of, with what the page needs to know. */
export function pieceOf(template: Template, number: number, change: Partial<FoamPiece> = {}): FoamPiece {
  const [cut] = template.drawing.strokes;
  return {
    id: template.piece,
    number,
    name: `Piece ${number}`,
    part: partId('part-1'),
    layer: layerId('layer-1'),
    foam: foamId('eva-10'),
    thicknessMm: 10,
    quantity: 1,
    bendStyle: 'rolled',
    bendReason: 'Smooth.',
    tracedSide: 'face',
    revision: `R${number}`,
    patch: number - 1,
    uv: new Float64Array(0),
    neutralOutline: cut.points,
    neutralHoles: [],
    outline: cut.points,
    holes: [],
    otherOutline: cut.points,
    otherHoles: [],
    edges: [],
    folds: [],
    marks: [
      { seam: seamId('s1'), letter: 'A', index: 1, side: 0, stationMm: 0, at: { x: 0, y: 0 }, outward: { x: 1, y: 0 } },
    ],
    up: null,
    areaMm2: 1,
    surfaceAreaMm2: 1,
    findings: [],
    ...change,
  };
}
