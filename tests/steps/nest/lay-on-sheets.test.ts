import { describe, expect, it } from 'vitest';
import { foamId } from '../../../src/base/ids.ts';
import { boxOfPoints } from '../../../src/geom/ring.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import type { FoamSheet } from '../../../src/model/foam-stock.ts';
import { layOnSheets, PIECE_GAP_MM, SHEET_BORDER_MM, type SheetItem } from '../../../src/steps/nest/lay-on-sheets.ts';
import { forAll } from '../../support/for-all.ts';
import { handMadeTemplate } from '../../support/hand-made-templates.ts';

const foam = (id: string, sheetWidthMm: number, sheetHeightMm: number): FoamSheet => ({
  id: foamId(id),
  name: id,
  thicknessMm: 10,
  sheetWidthMm,
  sheetHeightMm,
  neutralFraction: 0.5,
  densityKgM3: 100,
  stretchLimits: { noticePct: 3, tooMuchPct: 8 },
});
const LARGE = foam('large', 1000, 2000);
const SMALL = foam('small', 600, 900);

function item(id: string, width: number, height: number, of: FoamSheet, quantity = 1, x = 0, y = 0): SheetItem {
  const template = handMadeTemplate(id, [x, y, x + width, y, x + width, y + height, x, y + height]);
  return { piece: template.piece, template, quantity, foam: of.id };
}

describe('layOnSheets', () => {
  it('lays a piece inside the border, wherever its drawing stands', () => {
    const { sheets, tooLarge } = layOnSheets([item('a', 300, 200, LARGE, 1, -70, 33)], [LARGE]);
    expect(tooLarge).toEqual([]);
    expect(sheets).toMatchObject([{ foam: 'large', thicknessMm: 10, widthMm: 1000, heightMm: 2000, usedShare: 0.03 }]);
    expect(sheets[0].placements).toEqual([{ piece: 'a', copy: 0, x: 80, y: -23, turnRad: 0 }]);
  });

  it('turns a piece that fits no other way, and names one that fits in no way', () => {
    const { sheets, tooLarge } = layOnSheets([item('long', 880, 100, SMALL), item('huge', 900, 580, SMALL)], [SMALL]);
    expect(sheets[0].placements).toMatchObject([{ piece: 'long', turnRad: Math.PI / 2 }]);
    expect(tooLarge).toEqual(['huge']);
  });

  describe('of a piece with a grain', () => {
    const rightAngle = Math.PI / 2;
    const grained = (grainRad: number, of: FoamSheet, width = 300, height = 40): SheetItem => {
      const plain = item('g', width, height, of, 2, 15, -8);
      return { ...plain, template: { ...plain.template, grainRad } };
    };

    it.each([0, 0.3, -0.3, 1.2, 2, 3, -3, rightAngle, -rightAngle])(
      'lays it along the longer side of the sheet, grain at %f',
      (grainRad) => {
        for (const of of [LARGE, foam('wide', 2000, 1000)]) {
          const { sheets, tooLarge } = layOnSheets([grained(grainRad, of), item('a', 700, 30, of)], [of]);
          expect(tooLarge).toEqual([]);
          const places = sheets.flatMap(({ placements }) => placements).filter(({ piece }) => piece === 'g');
          expect(places).toHaveLength(2);
          for (const place of places) {
            const along = grainRad + place.turnRad - (of === LARGE ? rightAngle : 0);
            expect(Math.abs(Math.sin(along))).toBeLessThan(1e-12);
            const { points } = grained(grainRad, of).template.drawing.strokes[0];
            const box = boxOfPoints(movePoints(points, place));
            expect(box.minX).toBeGreaterThanOrEqual(SHEET_BORDER_MM - 1e-9);
            expect(box.minY).toBeGreaterThanOrEqual(SHEET_BORDER_MM - 1e-9);
            expect(box.maxX).toBeLessThanOrEqual(of.sheetWidthMm - SHEET_BORDER_MM + 1e-9);
            expect(box.maxY).toBeLessThanOrEqual(of.sheetHeightMm - SHEET_BORDER_MM + 1e-9);
          }
        }
      },
    );

    it('turns it by whole quarters where its grain is level or upright', () => {
      for (const [grainRad, turnRad] of [
        [0, rightAngle],
        [rightAngle, 0],
        [-rightAngle + 1e-12, 0],
        [Math.PI, -rightAngle],
      ]) {
        const [{ placements }] = layOnSheets([grained(grainRad, LARGE)], [LARGE]).sheets;
        expect(Math.abs(placements[0].turnRad)).toBe(Math.abs(turnRad));
      }
    });

    it('names it where it fits the sheet only across its grain', () => {
      const long = grained(rightAngle, SMALL, 880, 100);
      expect(layOnSheets([long], [SMALL]).tooLarge).toEqual(['g']);
      const { grainRad: _, ...plain } = long.template;
      expect(layOnSheets([{ ...long, template: plain }], [SMALL]).tooLarge).toEqual([]);
    });
  });

  it('counts copies and starts a sheet when one is full', () => {
    // Inside the border 580 × 880: four of 285 × 435 with 5 between them fill it exactly (2 × 285 + 5 = 575).
    const { sheets } = layOnSheets([item('q', 285, 435, SMALL, 5)], [SMALL]);
    expect(sheets.map((sheet) => sheet.placements.length)).toEqual([4, 1]);
    expect(sheets.flatMap((sheet) => sheet.placements.map(({ copy }) => copy)).sort()).toEqual([0, 1, 2, 3, 4]);
  });

  it('keeps each foam to its own sheets, and holes out of the used share', () => {
    const ring = handMadeTemplate(
      'ring',
      [0, 0, 100, 0, 100, 100, 0, 100],
      [{ role: 'cut', points: Float64Array.of(25, 25, 25, 75, 75, 75, 75, 25), closed: true }],
    );
    const items = [item('a', 100, 100, SMALL), { piece: ring.piece, template: ring, quantity: 2, foam: LARGE.id }];
    const { sheets } = layOnSheets(items, [LARGE, SMALL]);
    expect(sheets.map((sheet) => sheet.foam)).toEqual(['large', 'small']);
    expect(sheets[0].usedShare).toBeCloseTo((2 * 7500) / 2e6, 12);
  });

  it('refuses a piece of a foam that is not there: our mistake', () => {
    expect(() => layOnSheets([item('a', 1, 1, SMALL)], [LARGE])).toThrow('small');
  });

  it('loses nothing, and keeps borders and gaps, whatever the pieces', () =>
    forAll(
      (rand) =>
        Array.from({ length: 1 + Math.floor(12 * rand()) }, (_, i) =>
          item(
            `p${i}`,
            5 + 700 * rand(),
            5 + 700 * rand(),
            SMALL,
            1 + Math.floor(3 * rand()),
            100 * rand(),
            -50 * rand(),
          ),
        ),
      (items) => {
        const { sheets, tooLarge } = layOnSheets(items, [SMALL]);
        for (const { piece, quantity } of items) {
          const laid = sheets.flatMap((sheet) => sheet.placements).filter((place) => place.piece === piece).length;
          expect(laid).toBe(tooLarge.includes(piece) ? 0 : quantity);
        }
        for (const sheet of sheets) {
          const boxes = sheet.placements.map((place) => {
            const found = items.find((one) => one.piece === place.piece);
            if (found === undefined) throw new Error('unknown piece');
            return boxOfPoints(movePoints(found.template.drawing.strokes[0].points, place));
          });
          for (const [i, a] of boxes.entries()) {
            expect(Math.min(a.minX, a.minY)).toBeGreaterThan(SHEET_BORDER_MM - 1e-6);
            expect(a.maxX).toBeLessThan(sheet.widthMm - SHEET_BORDER_MM + 1e-6);
            expect(a.maxY).toBeLessThan(sheet.heightMm - SHEET_BORDER_MM + 1e-6);
            for (const b of boxes.slice(i + 1)) {
              const dx = Math.max(a.minX - b.maxX, b.minX - a.maxX);
              const dy = Math.max(a.minY - b.maxY, b.minY - a.maxY);
              expect(Math.max(dx, dy)).toBeGreaterThan(PIECE_GAP_MM - 1e-6);
            }
          }
        }
      },
    ));
});
