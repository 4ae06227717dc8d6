import { describe, expect, it } from 'vitest';
import { chainRing } from '../../../src/geom/outline.ts';
import { boxOfPoints, ringArea } from '../../../src/geom/ring.ts';
import { boxOfPoints3 } from '../../../src/mesh/measure.ts';
import type { InsertGround, InsertPiece, InsertWish } from '../../../src/model/insert.ts';
import { checkInsertSizes, findInsertSize, INSERT_SIZES } from '../../../src/model/insert-sizes.ts';
import { checkPlainDraft } from '../../../src/model/plain-piece.ts';
import { insertWork } from '../../../src/steps/inserts/insert-work.ts';
import { poleFindings } from '../../../src/steps/inserts/magnet-poles.ts';
import { hostFindings } from '../../../src/steps/inserts/on-piece.ts';
import { planInsert } from '../../../src/steps/inserts/plan-insert.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';

const ground = (wallMm: number[], sheetsMm: number[]): InsertGround => ({ wallMm, sheetsMm });
const plan = (wish: InsertWish, wallMm: number[] = [6], sheetsMm: number[] = [6]) =>
  expectOk(planInsert(wish, ground(wallMm, sheetsMm)));
const ringOf = (edges: InsertPiece['outline']) =>
  chainRing(
    edges.flatMap(({ segments }) => segments),
    1e-4,
  );
const sizeOf = (ring: Float64Array): [number, number] => {
  const { minX, minY, maxX, maxY } = boxOfPoints(ring);
  return [maxX - minX, maxY - minY];
};
const codes = (all: readonly { readonly code: string }[]): string[] => all.map(({ code }) => code);
const twoCells: InsertWish = { kind: 'battery', size: 'AA', count: 2 };

describe('sizes that are listed', () => {
  it('of cells follow from their names, by the rules of IEC 60086-1 and IEC 61960', () => {
    const named = INSERT_SIZES.flatMap(({ name, form, depthMm }) => {
      const round = /^(?:CR|ICR)(\d\d)(\d{2,3})$/.exec(name);
      if (round === null || form === null || depthMm === null) return [];
      const across = form.shape === 'round' ? form.diameterMm : depthMm;
      const high = form.shape === 'rectangle' ? form.lengthMm : depthMm;
      return [{ name, across, high, byName: [Number(round[1]), Number(round[2]) / 10] }];
    });
    expect(named.length).toBe(11);
    for (const { name, across, high, byName } of named) {
      // A sleeve adds up to 0.6 mm; half millimetres of diameters are left out of names.
      expect(across - byName[0], name).toBeGreaterThanOrEqual(0);
      expect(across - byName[0], name).toBeLessThan(0.61);
      expect(high - byName[1], name).toBeGreaterThanOrEqual(0);
      expect(high - byName[1], name).toBeLessThan(0.61);
    }
    expect(expectOk(findInsertSize('battery', 'icp103450'))).toMatchObject({
      form: { lengthMm: 50, widthMm: 34 },
      depthMm: 10,
      cell: 'lithium',
    });
  });

  it('are found by any way of writing, and others are refused with what there is', () => {
    for (const word of ['R6', 'lr6', 'AA']) expect(expectOk(findInsertSize('battery', word)).depthMm).toBe(14.5);
    expect(expectOk(findInsertSize('magnet', 'disc 10×2')).form).toEqual({ shape: 'round', diameterMm: 10 });
    expect(expectProblem(findInsertSize('magnet', 'AA'), 'insert/size').text).toContain('Disc 10 x 2');
    expect(() => checkInsertSizes([INSERT_SIZES[0], INSERT_SIZES[0]])).toThrow('twice');
  });
});

describe('a pocket', () => {
  // By hand: 50.5 + 8 for contacts and 2 x 14.5, half a mm of room all round: 59.5 by 30, 14.5 deep. 6 mm of wall and two frames of 6 leave 3.5.
  it('for two cells in a thin wall is as deep as frames make it', () => {
    const { pocketMm, frames, framesMm, leftMm, cuts, pieces, body, findings } = plan(twoCells);
    expect([pocketMm, frames, framesMm, leftMm]).toEqual([14.5, 2, 12, 3.5]);
    expect(cuts).toHaveLength(1);
    expect(cuts[0]).toMatchObject({ sheet: 1, what: 'pocket', side: 'back', depthMm: 2.5, isThrough: false });
    expect(ringArea(cuts[0].ring)).toBeCloseTo(59.5 * 30, 9);
    expect(pieces.map(({ key, quantity }) => [key, quantity])).toEqual([
      ['frame', 2],
      ['lid', 1],
    ]);
    expect(sizeOf(ringOf(pieces[0].outline))).toEqual([89.5, 60]);
    expect(sizeOf(ringOf(pieces[0].holes[0]))).toEqual([59.5, 30]);
    expect(sizeOf(ringOf(pieces[1].outline))).toEqual([79.5, 50]);
    const { min, max } = boxOfPoints3(body?.positions ?? new Float64Array(0));
    expect([min.z, max.z, max.x, max.y]).toEqual([-18, -3.5, 29.25, 14.5]);
    expect(codes(findings)).toEqual(['insert/framed']);
  });

  it('goes through sheets of a wall from the side it is let in from, and what is left is told', () => {
    const deep: InsertWish = { kind: 'magnet', size: 'Disc 10 x 5', pole: 'north', coverMm: 6 };
    const { cuts, leftMm, findings } = plan({ ...deep, hasFrames: false }, [2, 10]);
    expect(cuts.map(({ sheet, depthMm, isThrough }) => [sheet, depthMm, isThrough])).toEqual([
      [2, 10, true],
      [1, 1, false],
    ]);
    expect(leftMm).toBe(1);
    expect(findings[0]).toMatchObject({ code: 'insert/thin-left', value: 11, limit: 10 });
    // From the face no frame is laid of itself.
    expect(plan({ ...deep, coverMm: 8, side: 'face' }, [2, 10]).findings[0]).toMatchObject({
      code: 'insert/deeper-than-wall',
      value: 13,
    });
    expect(plan({ ...deep, coverMm: 0, side: 'face' }, [2, 10]).cuts.map(({ sheet }) => sheet)).toEqual([1, 2]);
  });

  it('with a lid let in level is deeper by the lid', () => {
    const { pocketMm, cuts, pieces, body } = plan(
      { kind: 'battery', size: 'CR2032', wayIn: 'flush-lid', side: 'face' },
      [10],
      [2],
    );
    expect(pocketMm).toBeCloseTo(5.2, 12);
    expect(cuts.map(({ what, depthMm }) => [what, Number(depthMm.toFixed(9))])).toEqual([
      ['pocket', 5.2],
      ['rebate', 2],
    ]);
    // 20 + 2 x 0.5 of room, 10 of lap all round, and room again round the lid.
    expect(sizeOf(ringOf(pieces[0].outline))[0]).toBeCloseTo(41, 9);
    expect(sizeOf(cuts[1].ring)[0]).toBeCloseTo(42, 9);
    expect(boxOfPoints3(body?.positions ?? new Float64Array(0)).max.z).toBeCloseTo(-2, 12);
  });

  it('of a pane is a rebate behind its window, and the pane the window grown', () => {
    const wish: InsertWish = {
      kind: 'pane',
      size: 'Clear 2',
      form: { shape: 'rectangle', lengthMm: 100, widthMm: 60, cornerMm: 5 },
    };
    const { cuts, pieces, leftMm } = plan(wish, [10], [10, 2]);
    const rounded = (l: number, w: number, r: number): number => l * w - (4 - Math.PI) * r * r;
    expect(cuts.map(({ what, depthMm, isThrough }) => [what, depthMm, isThrough])).toEqual([
      ['rebate', 2, false],
      ['opening', 10, true],
    ]);
    expect(ringArea(cuts[0].ring)).toBeCloseTo(rounded(117, 77, 13.5), -1);
    expect(ringArea(cuts[1].ring)).toBeCloseTo(rounded(100, 60, 5), -1);
    expect(leftMm).toBe(8);
    expect(pieces[0]).toMatchObject({ key: 'pane', thicknessMm: 2 });
    const work = insertWork(plan(wish, [10], [10, 2]));
    expect(work.pieces[0].areaMm2).toBeCloseTo(rounded(116, 76, 13), 9);
    expect(work.steps.flatMap(({ cautions }) => cautions)).toContain('clear-sheet');
    // Clear sheet that is not in stock has an outline in words.
    const without = plan(wish, [10], [10]);
    expect(codes(without.findings)).toEqual(['insert/no-sheet']);
    expect(insertWork(without).pieces).toEqual([]);
    expect(
      insertWork(without)
        .steps.map(({ text }) => text)
        .join(' '),
    ).toMatch(/116\s*mm by 76\s*mm/);
  });

  it('of a window of any outline grows all round, corners kept', () => {
    const points = [
      [0, 0],
      [60, 0],
      [0, 60],
    ] as const;
    const { cuts } = plan({ kind: 'pane', depthMm: 1, form: { shape: 'outline', points }, lapMm: 4.5 }, [10]);
    // A triangle grown by d: area + perimeter d + d² sum of the cotangents of its half angles.
    const cot = (deg: number): number => 1 / Math.tan((deg * Math.PI) / 360);
    const area = 1800 + (120 + 60 * Math.SQRT2) * 5 + 25 * (cot(90) + 2 * cot(45));
    expect(ringArea(cuts[0].ring)).toBeCloseTo(area, 6);
    expectProblem(
      planInsert(
        { kind: 'pane', depthMm: 1, form: { shape: 'outline', points: [...points].reverse() } },
        ground([6], [6]),
      ),
      'insert/form',
    );
  });

  it('has a way for wires through what of the wall it is deep', () => {
    const channel = {
      widthMm: 6,
      depthMm: 4,
      path: [
        [0, 0],
        [50, 0],
        [50, 40],
      ] as const,
    };
    const { cuts } = plan({ kind: 'lamp', size: 'Strip 10', lengthMm: 40, channel }, [2, 3]);
    const own = cuts.filter(({ what }) => what === 'channel');
    expect(own.map(({ sheet, depthMm, isThrough }) => [sheet, depthMm, isThrough])).toEqual([
      [2, 3, true],
      [1, 1, false],
    ]);
    // Two legs with a rounded corner and round ends.
    const square = 3 * 3 - (Math.PI * 9) / 4;
    expect(ringArea(own[0].ring)).toBeCloseTo(6 * 90 + Math.PI * 9 - square - (9 - (Math.PI * 9) / 4) + square, 0);
  });
});

describe('plates', () => {
  it('of a switch carry the hole of its panel, and the foam behind has room for its body', () => {
    const { cuts, pieces, findings } = plan({ kind: 'switch', size: 'Rocker 13 x 19' }, [10], [10, 2]);
    expect(sizeOf(cuts[0].ring).map((mm) => Number(mm.toFixed(9)))).toEqual([22.2, 16]);
    expect(pieces[0]).toMatchObject({ key: 'plate', thicknessMm: 2, liesOn: 'face' });
    expect(sizeOf(ringOf(pieces[0].holes[0])).map((mm) => Number(mm.toFixed(9)))).toEqual([19.2, 13]);
    expect(findings[0]).toMatchObject({ code: 'insert/room-behind', value: 12 });
    expect(codes(plan({ kind: 'switch', size: 'Push 12', hasPlate: false }, [10]).findings)).toContain('insert/panel');
  });

  it('of a strap anchor go round both slots', () => {
    const { cuts, pieces } = plan({ kind: 'anchor', size: 'Webbing 25' }, [10], [10, 4]);
    expect(cuts.map(({ ring }) => sizeOf(ring))).toEqual([
      [27, 4],
      [27, 4],
    ]);
    expect(cuts.map(({ ring }) => boxOfPoints(ring).minY)).toEqual([-13, 9]);
    expect(pieces[0]).toMatchObject({ thicknessMm: 4, liesOn: 'back' });
    expect(sizeOf(ringOf(pieces[0].outline))).toEqual([55, 54]);
    const [draft] = insertWork(plan({ kind: 'anchor', size: 'Webbing 25' }, [10], [10, 4])).pieces;
    expect(() => checkPlainDraft(draft)).not.toThrow();
    expect(draft.areaMm2).toBeCloseTo(55 * 54 - (4 - Math.PI) * 25 - 2 * 27 * 4, 9);
  });
});

describe('what an insert is held against', () => {
  const rings = [Float64Array.from([0, 0, 200, 0, 200, 100, 0, 100])];
  const at = (x: number, turnRad = 0, leastRadiusMm: number | null = null) =>
    hostFindings(plan(twoCells, [20]), { name: 'side', rings, leastRadiusMm }, { x, y: 50, turnRad });

  it('is the edge of its piece', () => {
    // The pocket is 59.5 long: from 40 its end is 10.25 from the edge.
    expect(at(40)).toEqual([]);
    expect(at(39)[0]).toMatchObject({ code: 'insert/near-edge', value: 9.25 });
    expect(at(20)[0]).toMatchObject({ code: 'insert/off-piece', value: 9.75 });
    expect(at(25.5, Math.PI / 2)).toEqual([]);
  });

  it('is the bend of its piece: the sagitta R - sqrt(R² - (w/2)²) of any circle', () => {
    expect(at(100, 0, 100)[0]).toMatchObject({ code: 'insert/on-bend' });
    expect(at(100, 0, 100)[0].value).toBeCloseTo(100 - Math.sqrt(100 ** 2 - 15 ** 2), 9);
    expect(at(100, 0, 1000)).toEqual([]);
  });

  it('is its other half, with the other pole', () => {
    const magnet = (name: string, pole: 'north' | 'south', pair = 'A') => ({
      part: name,
      name,
      wish: { kind: 'magnet', size: 'Disc 10 x 2', pole, pair } satisfies InsertWish,
    });
    expect(poleFindings([magnet('a', 'north'), magnet('b', 'south')])).toEqual([]);
    expect(codes(poleFindings([magnet('a', 'north'), magnet('b', 'north')]))).toEqual(['insert/same-poles']);
    expect(codes(poleFindings([magnet('a', 'north'), magnet('b', 'south', 'B')]))).toEqual([
      'insert/no-pair',
      'insert/no-pair',
    ]);
  });

  it('is care: cells with a way in, and cautions beside the work', () => {
    expect(codes(plan({ ...twoCells, wayIn: 'closed' }).findings)).toContain('insert/no-way-in');
    const button: InsertWish = { kind: 'battery', size: 'CR2032', wayIn: 'open' };
    expect(codes(plan(button).findings)).toEqual(['insert/open-button-cell']);
    const cautions = (wish: InsertWish): string[] => insertWork(plan(wish)).steps.flatMap((step) => [...step.cautions]);
    expect(cautions(button)).toEqual(expect.arrayContaining(['button-cells', 'lithium-cells']));
    expect(cautions({ kind: 'magnet', size: 'Disc 10 x 2', pole: 'north' })).toContain('magnets');
    expect(cautions({ kind: 'lamp', size: 'Strip 8', lengthMm: 50 })).toContain('lamp-heat');
  });

  it.each<[InsertWish, string]>([
    [{ kind: 'battery', size: 'AAAAA' }, 'insert/size'],
    [{ kind: 'lamp', size: 'Strip 8' }, 'insert/form'],
    [{ kind: 'pane', size: 'Clear 2' }, 'insert/form'],
    [{ kind: 'magnet', form: { shape: 'round', diameterMm: 10 } }, 'insert/depth'],
    [{ kind: 'battery', size: 'AA', count: 0 }, 'insert/count'],
    [{ kind: 'battery', size: 'AA', coverMm: -1 }, 'insert/wish'],
    [{ kind: 'battery', size: 'AA', form: { shape: 'round', diameterMm: -3 } }, 'insert/form'],
    [{ kind: 'lamp', size: 'Round 5', channel: { widthMm: 3, depthMm: 3, path: [[0, 0]] } }, 'insert/channel'],
  ])('is a figure that is missing: %j', (wish, code) => {
    expectProblem(planInsert(wish, ground([6], [6])), code);
  });
});
