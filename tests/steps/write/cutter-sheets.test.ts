import { describe, expect, it } from 'vitest';
import { foamId, pieceId, seamId } from '../../../src/base/ids.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import type { CutterChoice, CutterLine, CutterSheet } from '../../../src/model/cutter.ts';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import type { Stroke } from '../../../src/model/template.ts';
import { cutterSheets } from '../../../src/steps/write/cutter-sheets.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { handMadeTemplate, pieceOf, straight } from '../../support/hand-made-templates.ts';

interface Laid {
  readonly id: string;
  readonly outline: readonly number[];
  readonly strokes?: readonly Stroke[];
  readonly piece?: Partial<FoamPiece>;
  readonly at?: readonly [x: number, y: number, turnRad?: number];
}

const ring = (...xy: readonly number[]): Float64Array => Float64Array.from(xy);
const square = (side: number): readonly number[] => [0, 0, side, 0, side, side, 0, side];

function sheetOf(laid: readonly Laid[], change: Partial<CutterChoice> = {}) {
  const templates = laid.map(({ id, outline, strokes = [] }) => handMadeTemplate(id, outline, strokes));
  return cutterSheets({
    pieces: laid.map(({ piece = {} }, i) => pieceOf(templates[i], i + 1, piece)),
    templates,
    layout: {
      sheets: [
        {
          foam: foamId('eva-10'),
          name: { stock: 'buy', nth: 0 },
          fillAlong: 'y',
          filledMm: 0,
          thicknessMm: 10,
          widthMm: 600,
          heightMm: 900,
          usedShare: 0.1,
          placements: laid.map(({ id, at: [x, y, turnRad = 0] = [0, 0] }) => ({
            piece: pieceId(id),
            copy: 0,
            x,
            y,
            turnRad,
          })),
        },
      ],
      tooLarge: [],
    },
    choice: { kind: 'laser', cutWidthMm: 0, ...change },
  });
}

const linesOf = ([sheet]: readonly CutterSheet[]): readonly CutterLine[] => sheet.pieces.flatMap(({ lines }) => lines);
const only = (lines: readonly CutterLine[], ...roles: readonly string[]) =>
  lines.filter(({ role }) => roles.includes(role));
const lengthOf = ({ points, closed }: Pick<CutterLine, 'points' | 'closed'>): number => {
  let sum = 0;
  for (let i = 0; i + 1 < points.length; i += 2) {
    const j = (i + 2) % points.length;
    if (j > 0 || closed) sum += Math.hypot(points[j] - points[i], points[j + 1] - points[i + 1]);
  }
  return sum;
};
const total = (lines: readonly CutterLine[]): number => lines.reduce((sum, line) => sum + lengthOf(line), 0);

const HOLE = ring(40, 40, 40, 60, 60, 60, 60, 40);
const withHole = { holes: [HOLE], otherHoles: [HOLE] };

describe('cutterSheets', () => {
  it('cuts inside before outside and small before large', () => {
    const sheets = expectOk(
      sheetOf([
        { id: 'large', outline: square(100), piece: withHole, at: [10, 10] },
        { id: 'in the hole', outline: square(10), at: [55, 55] },
        { id: 'small', outline: square(30), at: [200, 10] },
      ]),
    );
    expect(sheets[0].pieces.map(({ piece }) => piece)).toEqual(['in the hole', 'small', 'large']);
    expect(only(sheets[0].pieces[2].lines, 'inside', 'outside').map(({ role }) => role)).toEqual(['inside', 'outside']);
  });

  it('moves lines outward by half the cut, inward in holes, and round tip holes keep round', () => {
    const tipHoles = [{ corner: 1, diameterMm: 6, at: { x: 20, y: 20 } }];
    const sheets = expectOk(
      sheetOf([{ id: 'p', outline: square(100), piece: { ...withHole, tipHoles }, at: [100, 0, Math.PI / 2] }], {
        cutWidthMm: 0.4,
      }),
    );
    const lines = linesOf(sheets);
    expect(ringArea(only(lines, 'outside')[0].points)).toBeCloseTo(100.4 ** 2, 3);
    expect(Math.abs(ringArea(only(lines, 'inside')[0].points))).toBeCloseTo(19.6 ** 2, 3);
    const [{ circle }] = only(lines, 'hole');
    expect(circle).toEqual({ centre: { x: 80, y: 20 }, radiusMm: 2.8 });
  });

  it.each([0.4, 0.02])('refuses an opening no wider than the cut, %s mm, by name', (side) => {
    const tiny = ring(40, 40, 40, 40 + side, 40 + side, 40 + side, 40 + side, 40);
    const made = sheetOf(
      [{ id: 'p', outline: square(100), piece: { holes: [tiny], otherHoles: [tiny], name: 'Visor' } }],
      {
        cutWidthMm: 0.4,
      },
    );
    expect(made.ok ? null : made.problem).toMatchObject({ code: 'cutter/opening-lost', where: { piece: 'p' } });
    expect(made.ok ? '' : made.problem.text).toMatch(
      /^An opening of 1 Visor, 0\.\d\d × 0\.\d\d mm across its box, leaves nothing/,
    );
  });

  it('leaves uncut what an outline shuts in that is narrower than the cut, and is no opening of the piece', () => {
    const darted = [0, 0, 100, 0, 100, 100, 50.15, 100, 50.1, 60, 49.9, 60, 49.85, 100, 0, 100];
    const band = ring(0, 90, 100, 90, 100, 100, 0, 100);
    const sheets = expectOk(
      sheetOf([{ id: 'p', outline: darted, piece: { otherOutline: band } }], { cutWidthMm: 0.4 }),
    );
    expect(only(linesOf(sheets), 'inside')).toEqual([]);
    expect(ringArea(only(linesOf(sheets), 'outside')[0].points)).toBeCloseTo(100.4 ** 2, 1);
  });

  it('refuses a tip hole no wider than the cut', () => {
    const tipHoles = [{ corner: 1, diameterMm: 2, at: { x: 20, y: 20 } }];
    const made = sheetOf([{ id: 'p', outline: square(100), piece: { tipHoles } }], { cutWidthMm: 2 });
    expect(made.ok ? null : made.problem.code).toBe('cutter/opening-lost');
  });

  it('cuts an edge that two pieces share once', () => {
    const sheets = expectOk(
      sheetOf([
        { id: 'a', outline: square(50), at: [10, 10] },
        { id: 'b', outline: square(60), at: [60, 20] },
      ]),
    );
    // 4 x 50 and 4 x 60, less the 40 mm at x = 60 from y = 20 to 60.
    expect(total(only(linesOf(sheets), 'outside'))).toBeCloseTo(440 - 40, 6);
  });

  it('cuts pieces that stand one cut apart by one line', () => {
    const sheets = expectOk(
      sheetOf(
        [
          { id: 'a', outline: square(50), at: [10, 10] },
          { id: 'b', outline: square(50), at: [60.2, 10] },
        ],
        { cutWidthMm: 0.2 },
      ),
    );
    expect(total(only(linesOf(sheets), 'outside'))).toBeCloseTo(8 * 50.2 - 50.2, 3);
  });

  it('leaves bridges of the width asked for, on straight stretches, on both sides of a shared edge', () => {
    const bridges = { count: 4, widthMm: 2 };
    const one = expectOk(sheetOf([{ id: 'a', outline: square(50), at: [10, 10] }], { cutWidthMm: 0.2, bridges }));
    const cuts = only(linesOf(one), 'outside');
    expect(cuts).toHaveLength(4);
    // The beam takes half its width at either end of a gap.
    expect(total(cuts)).toBeCloseTo(4 * 50.2 - 4 * 2.2, 3);
    for (const { points } of cuts) {
      const [x, y, endX, endY] = [points[0], points[1], points[points.length - 2], points[points.length - 1]];
      for (const [px, py] of [
        [x, y],
        [endX, endY],
      ]) {
        const corner = Math.min(...[9.9, 60.1].flatMap((cx) => [9.9, 60.1].map((cy) => Math.hypot(px - cx, py - cy))));
        expect(corner).toBeGreaterThan(2);
      }
    }
    const two = expectOk(
      sheetOf(
        [
          { id: 'a', outline: square(50), at: [10, 10] },
          { id: 'b', outline: square(50), at: [60, 10] },
        ],
        { bridges },
      ),
    );
    // 7 edges of 50 mm; four bridges on each, one pair of them at the same place.
    expect(total(only(linesOf(two), 'outside'))).toBeCloseTo(7 * 50 - 7 * 2, 3);
  });

  it('moves a bridge off a corner', () => {
    const made = sheetOf([{ id: 'a', outline: square(50) }], { bridges: { count: 2, widthMm: 2 } });
    const cuts = only(linesOf(expectOk(made)), 'outside');
    // Evenly they would stand at (50, 0) and (0, 50).
    for (const { points } of cuts) {
      const end = Math.hypot(points[points.length - 2] - points[0], points[points.length - 1] - points[1]);
      expect(Math.min(Math.hypot(points[0] - 50, points[1]), Math.hypot(points[0], points[1] - 50))).toBeGreaterThan(2);
      expect(end).toBeGreaterThan(50);
    }
    expect(total(cuts)).toBeCloseTo(196, 6);
  });

  it('tells a piece too small for its bridges', () => {
    const made = sheetOf([{ id: 'a', outline: square(6), piece: { name: 'Stud' } }], {
      bridges: { count: 8, widthMm: 2 },
    });
    expect(made.ok && made.notes.map(({ code, text }) => [code, text])).toEqual([
      ['cutter/few-bridges', '1 Stud is too small for 8 bridges of 2 mm and gets 3.'],
    ]);
  });

  it('cuts a bevelled piece at its larger face and leaves the finished edge to the knife', () => {
    const wide = ring(-3, 0, 100, 0, 100, 100, -3, 100);
    const bevel = straight('bevel', 0, 100, -3, 100, -3, 0, 0, 0);
    const made = sheetOf([
      { id: 'p', outline: square(100), strokes: [bevel], piece: { otherOutline: wide }, at: [10, 10] },
    ]);
    const lines = linesOf(expectOk(made));
    expect(ringArea(only(lines, 'outside')[0].points)).toBeCloseTo(103 * 100, 6);
    const knife = only(lines, 'knife');
    expect(knife).toHaveLength(1);
    expect([...knife[0].points].map((v) => Math.round(v))).toEqual([10, 110, 10, 10]);
    expect(made.ok && made.notes.map(({ code }) => code)).toEqual(['cutter/knife']);
  });

  it('keeps the outline itself, to the last bit, where the other side lies within it', () => {
    const third = square(100 / 3);
    const inner = ring(1, 1, 30, 1, 30, 30, 1, 30);
    const [line] = only(
      linesOf(expectOk(sheetOf([{ id: 'p', outline: third, piece: { otherOutline: inner } }]))),
      'outside',
    );
    expect([...line.points]).toEqual(third);
  });

  it('cuts a dart that is one line, once, whatever the width of the cut', () => {
    const slit = [0, 0, 50, 0, 50, 30, 50, 0, 100, 0, 100, 100, 0, 100];
    for (const cutWidthMm of [0, 0.2]) {
      const lines = linesOf(expectOk(sheetOf([{ id: 'p', outline: slit }], { cutWidthMm })));
      const inside = only(lines, 'slit', 'outside').filter(({ points }) =>
        points.some((v, i) => i % 2 === 1 && v > 1 && v < 99 && Math.abs(points[i - 1] - 50) < 1),
      );
      const reach = inside.flatMap(({ points }) =>
        [...points].filter((_, i) => i % 2 === 1 && Math.abs(points[i - 1] - 50) < 1),
      );
      expect(Math.max(...reach)).toBeCloseTo(30, 0);
      expect(total(only(lines, 'slit', 'outside'))).toBeCloseTo(4 * (100 + cutWidthMm) + 30, 0);
    }
  });

  it('draws marks as foam shows them, arrows with the words, the grain by itself', () => {
    const head = (x: number): Stroke => ({
      role: 'mark',
      points: ring(x, 50, x + 2, 49, x + 2, 51),
      closed: true,
      filled: true,
    });
    const strokes = [
      straight('mark', 50, 98, 50, 100),
      straight('mark', 20, 20, 30, 20),
      head(30),
      straight('mark', 20, 50, 30, 50),
      head(18),
      head(30),
      straight('leader', 10, 10, -10, -10),
    ];
    const lines = linesOf(expectOk(sheetOf([{ id: 'p', outline: square(100), strokes }])));
    const [tick] = only(lines, 'mark');
    expect([...tick.points]).toEqual([50, 98, 50, 100]);
    expect(only(lines, 'mark')).toHaveLength(1);
    // Without a grain, arrows with one head and with two belong to words, and so do leaders.
    expect(only(lines, 'words')).toHaveLength(6);
  });

  it('puts copies of what fits no sheet on ground of their own', () => {
    const template = handMadeTemplate('huge', square(2000));
    const made = cutterSheets({
      pieces: [pieceOf(template, 1, { quantity: 2 })],
      templates: [template],
      layout: { sheets: [], tooLarge: [template.piece] },
      choice: { kind: 'blade', cutWidthMm: 0 },
    });
    expect(
      expectOk(made).map(({ number, isTooLarge, widthMm, pieces }) => [number, isTooLarge, widthMm, pieces[0].copy]),
    ).toEqual([
      [1, true, 2020, 0],
      [2, true, 2020, 1],
    ]);
  });

  it('knows strips, whose back may be the wider', () => {
    const outline = [0, 0, 80, 0, 80, 10, 0, 10];
    const template = handMadeTemplate('strip-s1', outline, [
      straight('bevel', 0, -2, 80, -2),
      straight('bevel', 0, 12, 80, 12),
    ]);
    const { id, number, name, foam, layer, thicknessMm, revision } = pieceOf(template, 7);
    const made = cutterSheets({
      pieces: [
        {
          ...{
            id,
            number,
            name,
            foam,
            layer,
            thicknessMm,
            revision,
            quantity: 1,
            tracedSide: 'face',
            seam: seamId('s1'),
          },
          ...{ letter: 'A', use: 'between', lengthMm: 80, bevelDeg: -11, areaMm2: 800 },
          faceMm: { min: 10, max: 10 },
          backMm: { min: 14, max: 14 },
        },
      ],
      templates: [template],
      layout: { sheets: [], tooLarge: [template.piece] },
      choice: { kind: 'blade', cutWidthMm: 0 },
    });
    const lines = linesOf(expectOk(made));
    expect(ringArea(only(lines, 'outside')[0].points)).toBeCloseTo(80 * 14, 6);
    expect(total(only(lines, 'knife'))).toBeCloseTo(160, 6);
  });
});
