import { describe, expect, it } from 'vitest';
import { foamId } from '../../../src/base/ids.ts';
import { boxOfPoints } from '../../../src/geom/ring.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import type { FoamSheet } from '../../../src/model/foam-stock.ts';
import type { SheetLayout } from '../../../src/model/sheet.ts';
import type { FillRule, StockChoices } from '../../../src/model/stock.ts';
import { USUAL_FILL } from '../../../src/project/fill-rule.ts';
import { layOnSheets, type SheetItem } from '../../../src/steps/nest/lay-on-sheets.ts';
import { boxRing } from '../../../src/steps/nest/foam-area.ts';
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

const BORDER_MM = USUAL_FILL.borderMm;

const lay = (
  items: readonly SheetItem[],
  foams: readonly FoamSheet[],
  fill: Partial<FillRule> = {},
  stock: StockChoices = {},
): SheetLayout =>
  layOnSheets({ items, foams, fills: foams.map(({ id }) => ({ ...USUAL_FILL, ...fill, foam: id })), stock });

function item(id: string, width: number, height: number, of: FoamSheet, quantity = 1, x = 0, y = 0): SheetItem {
  const template = handMadeTemplate(id, [x, y, x + width, y, x + width, y + height, x, y + height]);
  return { piece: template.piece, template, quantity, foam: of.id };
}

describe('layOnSheets', () => {
  it('lays a piece inside the border, wherever its drawing stands', () => {
    const { sheets, tooLarge } = lay([item('a', 300, 200, LARGE, 1, -70, 33)], [LARGE]);
    expect(tooLarge).toEqual([]);
    expect(sheets).toMatchObject([{ foam: 'large', thicknessMm: 10, widthMm: 1000, heightMm: 2000, usedShare: 0.03 }]);
    const [{ x, y, ...place }] = sheets[0].placements;
    expect(place).toEqual({ piece: 'a', copy: 0, turnRad: 0 });
    expect(x).toBeCloseTo(80, 6);
    expect(y).toBeCloseTo(-23, 6);
    expect(sheets[0]).toMatchObject({ name: { stock: 'buy', nth: 0 }, fillAlong: 'y' });
    expect(sheets[0].filledMm).toBeCloseTo(210, 6);
    expect(sheets[0].offcut?.heightMm).toBeCloseTo(1790, 6);
  });

  it('turns a piece that fits no other way, and names one that fits in no way', () => {
    const { sheets, tooLarge } = lay([item('long', 880, 100, SMALL), item('huge', 900, 580, SMALL)], [SMALL]);
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
          const { sheets, tooLarge } = lay([grained(grainRad, of), item('a', 700, 30, of)], [of]);
          expect(tooLarge).toEqual([]);
          const places = sheets.flatMap(({ placements }) => placements).filter(({ piece }) => piece === 'g');
          expect(places).toHaveLength(2);
          for (const place of places) {
            const along = grainRad + place.turnRad - (of === LARGE ? rightAngle : 0);
            expect(Math.abs(Math.sin(along))).toBeLessThan(1e-12);
            const ring = boxRing(grained(grainRad, of).template.foamBox);
            const box = boxOfPoints(movePoints(ring, place));
            expect(box.minX).toBeGreaterThanOrEqual(BORDER_MM - 1e-3);
            expect(box.minY).toBeGreaterThanOrEqual(BORDER_MM - 1e-3);
            expect(box.maxX).toBeLessThanOrEqual(of.sheetWidthMm - BORDER_MM + 1e-3);
            expect(box.maxY).toBeLessThanOrEqual(of.sheetHeightMm - BORDER_MM + 1e-3);
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
        const [{ placements }] = lay([grained(grainRad, LARGE)], [LARGE]).sheets;
        expect(Math.abs(placements[0].turnRad)).toBe(Math.abs(turnRad));
      }
    });

    it('names it where it fits the sheet only across its grain', () => {
      const long = grained(rightAngle, SMALL, 880, 100);
      expect(lay([long], [SMALL]).tooLarge).toEqual(['g']);
      const { grainRad: _, ...plain } = long.template;
      expect(lay([{ ...long, template: plain }], [SMALL]).tooLarge).toEqual([]);
    });
  });

  it('counts copies and starts a sheet when one is full', () => {
    // Inside the border 580 × 880: four of 285 × 435 with 5 between them fill it (2 × 285 + 5 = 575).
    const { sheets } = lay([item('q', 285, 435, SMALL, 5)], [SMALL], { spacingMm: 5 });
    expect(sheets.map((sheet) => sheet.placements.length)).toEqual([4, 1]);
    expect(sheets.flatMap((sheet) => sheet.placements.map(({ copy }) => copy)).sort()).toEqual([0, 1, 2, 3, 4]);
  });

  it('keeps each foam to its own sheets, and holes out of the used share', () => {
    const ring = handMadeTemplate(
      'ring',
      [0, 0, 100, 0, 100, 100, 0, 100],
      [{ role: 'cut', points: Float64Array.of(25, 25, 25, 75, 75, 75, 75, 25), closed: true }],
    );
    const template = { ...ring, foamRings: ring.drawing.strokes.map(({ points }) => points) };
    const items = [item('a', 100, 100, SMALL), { piece: ring.piece, template, quantity: 2, foam: LARGE.id }];
    const { sheets } = lay(items, [LARGE, SMALL]);
    expect(sheets.map((sheet) => sheet.foam)).toEqual(['large', 'small']);
    expect(sheets[0].usedShare).toBeCloseTo((2 * 7500) / 2e6, 12);
  });

  it('refuses a piece of a foam that is not there: our mistake', () => {
    expect(() => lay([item('a', 1, 1, SMALL)], [LARGE])).toThrow('small');
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
        const { sheets, tooLarge } = lay(items, [SMALL], { spacingMm: 5, turns: 'any' });
        for (const { piece, quantity } of items) {
          const laid = sheets.flatMap((sheet) => sheet.placements).filter((place) => place.piece === piece).length;
          expect(laid).toBe(tooLarge.includes(piece) ? 0 : quantity);
        }
        for (const sheet of sheets) {
          const boxes = sheet.placements.map((place) => {
            const found = items.find((one) => one.piece === place.piece);
            if (found === undefined) throw new Error('unknown piece');
            return boxOfPoints(movePoints(boxRing(found.template.foamBox), place));
          });
          for (const [i, a] of boxes.entries()) {
            expect(Math.min(a.minX, a.minY)).toBeGreaterThan(BORDER_MM - 1e-3);
            expect(a.maxX).toBeLessThan(sheet.widthMm - BORDER_MM + 1e-3);
            expect(a.maxY).toBeLessThan(sheet.heightMm - BORDER_MM + 1e-3);
            for (const b of boxes.slice(i + 1)) {
              const dx = Math.max(a.minX - b.maxX, b.minX - a.maxX);
              const dy = Math.max(a.minY - b.maxY, b.minY - a.maxY);
              expect(Math.max(dx, dy)).toBeGreaterThan(5 - 1e-3);
            }
          }
        }
      },
    ));
});
