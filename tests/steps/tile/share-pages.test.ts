import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { boxOfPoints } from '../../../src/geom/ring.ts';
import type { Template } from '../../../src/model/template.ts';
import type { Block } from '../../../src/steps/tile/block.ts';
import { oneTile } from '../../../src/steps/tile/lattice.ts';
import { paperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { sharedPages } from '../../../src/steps/tile/share-pages.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { handMadeTemplate } from '../../support/hand-made-templates.ts';

/** Tiles of 190 × 265 mm; on a roll as high as they must be. */
const frameOf = (roll: boolean) =>
  expectOk(paperFrame({ name: 'own', widthMm: 210, heightMm: 297, roll }, 'portrait', 10, 10));

/** A rectangle whose lower left corner does not lie at the origin. */
const plate = (id: string, width: number, height: number): Template =>
  handMadeTemplate(id, [7, -4, 7 + width, -4, 7 + width, height - 4, 7, height - 4]);

const shared = (templates: readonly Template[], blocks: readonly Block[] = [], roll = false): readonly Block[] =>
  runAtOnce(sharedPages(templates, blocks, frameOf(roll), undefined));

/** Where templates lie on each page: name, left, bottom, right, top. */
const placesOn = (blocks: readonly Block[]): readonly (readonly string[])[] =>
  blocks.map(({ templates }) =>
    templates.map(({ piece, drawing }) => {
      const { minX, minY, maxX, maxY } = boxOfPoints(drawing.strokes[0].points);
      return [piece, ...[minX, minY, maxX, maxY].map((mm) => +mm.toFixed(6))].join(' ');
    }),
  );

describe('templates that share pages', () => {
  it('stand on shelves that reach up to the top of the page, 4 mm apart', () => {
    const blocks = shared([plate('a', 100, 80), plate('b', 80, 60), plate('c', 150, 50)]);
    expect(placesOn(blocks)).toEqual([['a 0 131 100 211', 'b 104 131 184 191', 'c 0 215 150 265']]);
    expect(blocks[0].lattice).toEqual(oneTile(190, 265));
    expect(blocks[0].isPrinted).toEqual([true]);
  });

  it('go on to another page where they do not fit', () => {
    const blocks = shared([plate('a', 180, 140), plate('b', 180, 130)]);
    expect(blocks.map(({ templates }) => templates.map(({ piece }) => piece))).toEqual([['a'], ['b']]);
    // 140 and 121 mm with 4 mm between fill 265.
    expect(shared([plate('a', 180, 140), plate('b', 180, 121)])).toHaveLength(1);
    expect(shared([plate('a', 180, 140), plate('b', 180, 121.1)])).toHaveLength(2);
  });

  it('are turned where they fit only so', () => {
    const [page] = shared([plate('a', 240, 90)]);
    const { minX, minY, maxX, maxY } = boxOfPoints(page.templates[0].drawing.strokes[0].points);
    expect([maxX - minX, maxY - minY]).toEqual([90, 240]);
    expect(page.templates[0].move.turnRad).toBeCloseTo(Math.PI / 2, 12);
  });

  it('take on a roll a page as long as they fill', () => {
    const [page, ...others] = shared([plate('a', 180, 80), plate('b', 180, 70)], [], true);
    expect(others).toEqual([]);
    expect(page.lattice).toEqual(oneTile(190, 154));
    const boxes = page.templates.map(({ drawing }) => boxOfPoints(drawing.strokes[0].points));
    expect(Math.max(...boxes.map(({ maxY }) => maxY))).toBeCloseTo(154, 9);
    expect(Math.min(...boxes.map(({ minY }) => minY))).toBeCloseTo(0, 9);
  });

  it('come after what is on paper already, which stays as it is', () => {
    const [before] = shared([plate('a', 180, 140)]);
    expect(shared([], [before])).toEqual([before]);
    const blocks = shared([plate('b', 50, 50)], [before]);
    expect(blocks).toHaveLength(2);
    expect(blocks[0]).toBe(before);
  });
});
