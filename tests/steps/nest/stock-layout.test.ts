import { describe, expect, it } from 'vitest';
import { foamId } from '../../../src/base/ids.ts';
import { layRing } from '../../../src/geom/lay-over.ts';
import { grownRegions } from '../../../src/geom/polygon-boolean.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import { meetingOfWhole } from '../../../src/geom/whole-union.ts';
import type { FoamSheet } from '../../../src/model/foam-stock.ts';
import type { Sheet, SheetLayout } from '../../../src/model/sheet.ts';
import type { FillRule, HeldCopy, StockChoices, StockSheet } from '../../../src/model/stock.ts';
import { keptOfLayout } from '../../../src/pipeline/kept-layout.ts';
import { SheetCrew } from '../../../src/pipeline/sheet-crew.ts';
import { USUAL_FILL } from '../../../src/project/fill-rule.ts';
import { layOnSheets, type SheetItem, type SheetTask } from '../../../src/steps/nest/lay-on-sheets.ts';
import { handMadeTemplate } from '../../support/hand-made-templates.ts';

const EVA: FoamSheet = {
  id: foamId('eva'),
  name: 'eva',
  thicknessMm: 10,
  sheetWidthMm: 600,
  sheetHeightMm: 900,
  neutralFraction: 0.5,
  densityKgM3: 100,
  stretchLimits: { noticePct: 3, tooMuchPct: 8 },
};

function item(
  id: string,
  outline: readonly number[],
  quantity = 1,
  ...holes: readonly (readonly number[])[]
): SheetItem {
  const template = handMadeTemplate(id, outline);
  const foamRings = [outline, ...holes].map((ring) => Float64Array.from(ring));
  return { piece: template.piece, template: { ...template, foamRings }, quantity, foam: EVA.id };
}
const box = (width: number, height: number): number[] => [0, 0, width, 0, width, height, 0, height];
/** A hook that no turn makes its own mirror. */
const HOOK = [0, 0, 200, 0, 200, 40, 40, 40, 40, 120, 0, 120];

const taskOf = (items: readonly SheetItem[], stock: StockChoices, fill: Partial<FillRule> = {}): SheetTask => ({
  items,
  foams: [EVA],
  fills: [{ ...USUAL_FILL, ...fill, foam: EVA.id }],
  stock,
});
const lay = (...args: Parameters<typeof taskOf>): SheetLayout => layOnSheets(taskOf(...args));

const inHand = (id: string, width: number, height: number, more: Partial<StockSheet> = {}): StockSheet => ({
  id,
  name: `sheet ${id}`,
  foam: EVA.id,
  shape: { kind: 'rectangle', widthMm: width, heightMm: height },
  count: 1,
  ...more,
});

const namesOf = ({ sheets }: SheetLayout): string[] => sheets.map(({ name }) => `${name.stock} ${name.nth}`);

/** What lies on a sheet, in thousandths of a mm. */
const ringsOn = (items: readonly SheetItem[], sheet: Sheet): Float64Array[][] =>
  sheet.placements.map((place) => {
    const rings = items.find(({ piece }) => piece === place.piece)?.template.foamRings ?? [];
    return rings.map((ring) => layRing(ring, place).map((mm) => Math.round(1000 * mm)));
  });

const meetMm2 = (a: Float64Array[], b: Float64Array[]): number =>
  meetingOfWhole(a, b).reduce((sum, ring) => sum + ringArea(ring), 0) / 1e6;

/** Area that two pieces share, and that pieces have outside the outline or over places kept clear, mm². */
function faultsOf(items: readonly SheetItem[], { sheets }: SheetLayout): number {
  return sheets.reduce((sum, sheet) => {
    const laid = ringsOn(items, sheet);
    const edge = sheet.outline ?? box(sheet.widthMm, sheet.heightMm);
    const whole = [Float64Array.from(edge, (mm) => Math.round(1000 * mm))];
    // Zones may run either way round.
    const zones = (sheet.keepOut ?? []).map((zone) => {
      const ring = Float64Array.from(zone, (mm) => Math.round(1000 * mm));
      return ringArea(ring) > 0 ? ring : ring.map((_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)]);
    });
    const areaOf = (rings: Float64Array[]): number => rings.reduce((all, ring) => all + ringArea(ring), 0) / 1e6;
    const bad = laid.map((rings, i) => {
      const over = laid.slice(i + 1).reduce((all, other) => all + meetMm2(rings, other), 0);
      return (
        over + areaOf(rings) - meetMm2(rings, whole) + zones.reduce((all, zone) => all + meetMm2(rings, [zone]), 0)
      );
    });
    return sum + bad.reduce((all, one) => all + one, 0);
  }, 0);
}

describe('laying on the foam in hand', () => {
  it('fills what is in hand before any is bought, offcuts first, and buys only what is wanted', () => {
    const items = [item('a', box(250, 180), 3)];
    const stock = { sheets: [inHand('whole', 600, 900), inHand('left', 300, 220)] };
    const one = lay([{ ...items[0], quantity: 1 }], stock);
    expect(namesOf(one)).toEqual(['left 0']);
    expect(one.sheets[0]).toMatchObject({ label: 'sheet left', widthMm: 300, heightMm: 220 });
    const three = lay(items, stock);
    expect(namesOf(three)).toEqual(['whole 0']);
    const many = lay([{ ...items[0], quantity: 16 }], stock);
    expect(namesOf(many)).toEqual(['left 0', 'whole 0', 'buy 0']);
    expect(faultsOf(items, many)).toBeLessThan(1e-3);
  });

  it('takes as many equal sheets as there are, and says what has no room where none may be bought', () => {
    const items = [item('a', box(500, 400), 6)];
    const layout = lay(items, { sheets: [inHand('s', 600, 450, { count: 2 })] }, { buys: false });
    expect(namesOf(layout)).toEqual(['s 0', 's 1']);
    expect(layout.odd?.unlaid.map(({ copy }) => copy)).toHaveLength(4);
    expect(layout.tooLarge).toEqual([]);
    expect(lay([item('b', box(500, 600))], { sheets: [inHand('s', 600, 450)] }, { buys: false }).tooLarge).toEqual([
      'b',
    ]);
  });

  it('lays a piece that fits slanting alone, and one with many corners that just fits', () => {
    // 640 long and 20 wide: no side of 500 holds it, but the diagonal does.
    const slanting = lay([item('rod', box(640, 20))], { sheets: [inHand('s', 500, 500)] }, { buys: false });
    expect(namesOf(slanting)).toEqual(['s 0']);
    expect(faultsOf([item('rod', box(640, 20))], slanting)).toBeLessThan(1e-3);
    // A disc of 100 sides, 0.2 mm smaller than the room between the borders.
    const disc = Array.from({ length: 200 }, (_, k) => {
      const angle = (2 * Math.PI * (k >> 1)) / 100;
      return 239.9 * ((k & 1) === 0 ? Math.cos(angle) : Math.sin(angle));
    });
    expect(namesOf(lay([item('disc', disc)], { sheets: [inHand('s', 500, 500)] }, { buys: false }))).toEqual(['s 0']);
  });

  it('keeps the spacing at sharp corners too', () => {
    const star = [
      17.25, -37.77, 60.02, -38.57, 44.13, 0, 53.77, 34.56, 24.98, 54.71, -7.32, 50.88, -17.56, 20.26, -65.85, 19.34,
      -34.76, -10.21, -30.18, -34.83, -10.46, -72.74,
    ];
    const items = [item('star', star, 3)];
    const layout = lay(items, {}, { spacingMm: 2.54, borderMm: 6, turns: 'none' });
    expect(layout.sheets[0].placements).toHaveLength(3);
    // Corners are held apart as the outlines grown by half the spacing are.
    const grown = grownRegions([Float64Array.from(star)], 1.26).map(({ outer }) => [...outer])[0];
    const wide = [{ ...items[0], template: { ...items[0].template, foamRings: [Float64Array.from(grown)] } }];
    expect(faultsOf(wide, layout)).toBeLessThan(1e-3);
  });

  it('is not laid on an offcut that it leaves itself', () => {
    const left = inHand('next', 400, 400, { leftBy: { stock: 'buy', nth: 0 } });
    expect(namesOf(lay([item('a', box(100, 100))], { sheets: [left] }))).toEqual(['buy 0']);
  });

  it('keeps clear of zones, and inside a traced outline with its border', () => {
    const items = [item('a', HOOK, 5), item('b', box(90, 60), 4)];
    const shape = { kind: 'outline', points: [150, 0, 700, 0, 700, 500, 0, 500, 0, 150] } as const;
    // Both where it would begin to fill the sheet.
    const zone = [20, 250, 20, 330, 100, 330, 100, 250];
    const layout = lay(items, { sheets: [inHand('t', 0, 0, { shape, keepOut: [zone] })] });
    expect(namesOf(layout)).toEqual(['t 0']);
    expect(layout.sheets[0].placements).toHaveLength(9);
    expect(faultsOf(items, layout)).toBeLessThan(1e-3);
    // 10 mm from the slanting side, on which x + y is 150.
    for (const ring of ringsOn(items, layout.sheets[0]).flat())
      for (let i = 0; i < ring.length; i += 2)
        expect(((ring[i] + ring[i + 1]) / 1000 - 150) / Math.SQRT2).toBeGreaterThan(9.99);
  });

  it('puts small pieces into holes of large ones', () => {
    const frame = item('frame', box(500, 800), 1, [50, 50, 50, 750, 450, 750, 450, 50]);
    const items = [frame, item('in', box(300, 200), 3)];
    const layout = lay(items, {});
    expect(layout.sheets).toHaveLength(1);
    expect(faultsOf(items, layout)).toBeLessThan(1e-3);
  });

  it('holds a copy where it was put, and lays the others round it', () => {
    const items = [item('a', HOOK, 4)];
    const held: HeldCopy = { copy: 2, sheet: { stock: 'buy', nth: 0 }, x: 300, y: 400, turnRad: 0.7, isFlipped: true };
    const layout = lay(items, { pieces: [{ piece: 'a', held: [held] }] });
    const { copy, x, y, turnRad, isFlipped } = layout.sheets[0].placements.find(({ isHeld }) => isHeld === true) ?? {};
    expect([copy, isFlipped]).toEqual([2, true]);
    for (const [is, was] of [
      [x, 300],
      [y, 400],
      [turnRad, 0.7],
    ])
      expect(is).toBeCloseTo(was ?? NaN, 9);
    expect(layout.sheets[0].placements).toHaveLength(4);
    expect(faultsOf(items, layout)).toBeLessThan(1e-3);
    expect(layout.odd).toBeUndefined();
  });

  it('says what is held badly, and where a hold leads nowhere', () => {
    const items = [item('a', box(100, 100), 3)];
    const at = (copy: number, x: number, y: number, stock = 'buy'): HeldCopy => ({
      copy,
      sheet: { stock, nth: 0 },
      x,
      y,
      turnRad: 0,
    });
    const held = [at(0, 100, 100), at(1, 150, 100), at(2, 0, 0, 'gone')];
    const layout = lay(items, { pieces: [{ piece: 'a', held }] });
    expect(layout.odd).toMatchObject({
      heldBadly: [{ copy: 0 }, { copy: 1 }],
      heldNowhere: [{ piece: 'a', copy: 2 }],
      unlaid: [],
    });
    expect(layout.sheets.flatMap(({ placements }) => placements)).toHaveLength(3);
    // The border is the maker's to use, what is beyond the edge is not.
    const edge = (x: number): SheetLayout => lay(items, { pieces: [{ piece: 'a', held: [at(0, x, 0)] }] });
    expect(edge(0).odd).toBeUndefined();
    expect(edge(-1).odd?.heldBadly).toEqual([{ piece: 'a', copy: 0 }]);
  });

  it('keeps a group on one sheet', () => {
    const items = ['a', 'b', 'c', 'd'].map((id) => item(id, box(400, 300)));
    const sheetOf = (layout: SheetLayout, id: string): number =>
      layout.sheets.findIndex(({ placements }) => placements.some(({ piece }) => piece === id));
    // Two go on a sheet: a with b, unless b is to lie with d.
    expect(sheetOf(lay(items, {}), 'd')).not.toBe(sheetOf(lay(items, {}), 'a'));
    const stock = { pieces: ['a', 'd'].map((piece) => ({ piece, group: 'pair' })) };
    const layout = lay(items, stock);
    expect(sheetOf(layout, 'a')).toBe(sheetOf(layout, 'd'));
    expect(layout.sheets).toHaveLength(2);
    // Where one of them is held the other follows.
    const held = [{ copy: 0, sheet: { stock: 'buy', nth: 1 }, x: 20, y: 20, turnRad: 0 }];
    const pair = [
      { piece: 'a', group: 'pair', held },
      { piece: 'd', group: 'pair' },
    ];
    const both = lay(items, { pieces: pair });
    expect(namesOf(both)[sheetOf(both, 'd')]).toBe('buy 1');
    const crew = new SheetCrew(taskOf(items, stock), 1);
    crew.step(200);
    expect(sheetOf(crew.layout, 'a')).toBe(sheetOf(crew.layout, 'd'));
  });

  it('turns and turns over as the foam lets it', () => {
    const items = [item('a', HOOK, 8)];
    const places = (fill: Partial<FillRule>, isCrew = false) => {
      const crew = new SheetCrew(taskOf(items, {}, fill), 1);
      if (isCrew) crew.step(300);
      return crew.layout.sheets.flatMap(({ placements }) => placements);
    };
    for (const isCrew of [false, true]) {
      for (const { turnRad, isFlipped } of places({ turns: 'none' }, isCrew))
        expect([turnRad, isFlipped]).toEqual([0, undefined]);
      for (const { turnRad, isFlipped } of places({ turns: 'half' }, isCrew)) {
        expect(Math.abs(Math.sin(turnRad))).toBeLessThan(1e-9);
        expect(isFlipped).toBeUndefined();
      }
      for (const { turnRad } of places({ turns: 'none', turnOver: true }, isCrew)) expect(turnRad).toBe(0);
    }
    const crew = new SheetCrew(taskOf(items, {}, { turns: 'half', turnOver: true }), 1);
    crew.step(1200);
    expect(crew.layout.sheets.some(({ placements }) => placements.some(({ isFlipped }) => isFlipped))).toBe(true);
    expect(faultsOf(items, crew.layout)).toBeLessThan(1e-3);
  });

  it('lies across a sheet in hand whose grain runs across', () => {
    const grained = item('a', box(100, 60), 2);
    const items = [{ ...grained, template: { ...grained.template, grainRad: 0 } }];
    const turns = (grain: 'x' | 'y'): number[] =>
      lay(items, { sheets: [inHand('s', 300, 200, { grain })] }).sheets[0].placements.map(({ turnRad }) => turnRad);
    for (const turn of turns('x')) expect(Math.abs(Math.sin(turn))).toBeLessThan(1e-9);
    for (const turn of turns('y')) expect(Math.abs(Math.cos(turn))).toBeLessThan(1e-9);
  });

  it('keeps a layout that was taken, and moves only what no longer fits there', () => {
    const items = [item('a', HOOK, 3), item('b', box(90, 60), 4)];
    const first = new SheetCrew(taskOf(items, {}), 1);
    first.step(400);
    const kept = keptOfLayout(first.layout);
    const again = lay(items, { kept });
    expect(again.odd).toBeUndefined();
    expect(keptOfLayout(again).map(({ places }) => places.length)).toEqual(kept.map(({ places }) => places.length));
    expect(again.sheets[0].filledMm).toBeCloseTo(first.layout.sheets[0].filledMm, 6);
    // b has grown: where it touched something it is laid anew, each a stays.
    const grown = [items[0], item('b', box(90, 75), 4)];
    const moved = lay(grown, { kept });
    expect(faultsOf(grown, moved)).toBeLessThan(1e-3);
    const placeOf = (layout: SheetLayout, piece: string, copy: number) =>
      layout.sheets[0].placements.find((place) => place.piece === piece && place.copy === copy);
    for (const copy of [0, 1, 2])
      expect(placeOf(moved, 'a', copy)?.x).toBeCloseTo(placeOf(again, 'a', copy)?.x ?? NaN, 6);
    expect(moved.odd?.movedOn.length).toBeGreaterThan(0);
    expect(moved.odd?.movedOn.every(({ piece }) => piece === 'b')).toBe(true);
  });
});

describe('the search for better layouts on foam', () => {
  const items = [item('a', HOOK, 4), item('b', [0, 0, 160, 0, 80, 140], 3), item('c', box(90, 60), 3)];
  const small = { ...EVA, sheetWidthMm: 420, sheetHeightMm: 900 };
  const task: SheetTask = { ...taskOf(items, {}), foams: [small] };

  it('finds the same for the same moves and seed, and is never worse than before', () => {
    const crews = [new SheetCrew(task, 3), new SheetCrew(task, 3)];
    const start = layOnSheets(task);
    expect(crews[0].score.lastMm).toBeCloseTo(start.sheets[start.sheets.length - 1].filledMm, 9);
    let last = { ...crews[0].score };
    for (let round = 0; round < 6; round += 1) {
      crews[0].step(50);
      const now = crews[0].score;
      expect(now.bought).toBeLessThanOrEqual(last.bought);
      if (now.bought === last.bought) expect(now.lastMm).toBeLessThanOrEqual(last.lastMm);
      last = now;
    }
    crews[1].step(300);
    expect(crews[1].kept).toEqual(crews[0].kept);
    expect(crews[0].found).toBeGreaterThan(0);
    expect(faultsOf(items, crews[0].layout)).toBeLessThan(1e-3);
    const other = new SheetCrew(task, 4);
    other.offer(crews[0].kept);
    expect(other.score.lastMm).toBeCloseTo(crews[0].score.lastMm, 6);
  });

  it('stops where nothing can move', () => {
    const held = [{ copy: 0, sheet: { stock: 'buy', nth: 0 }, x: 50, y: 50, turnRad: 0 }];
    const crew = new SheetCrew(taskOf([item('a', HOOK)], { pieces: [{ piece: 'a', held }] }), 1);
    crew.step(10);
    expect([crew.isDone, crew.found]).toEqual([true, 0]);
  });
});
