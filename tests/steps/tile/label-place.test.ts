import { describe, expect, it } from 'vitest';
import type { TurnedBox } from '../../../src/geom/turned-box.ts';
import type { Stroke } from '../../../src/model/template.ts';
import { findLabelPlace, holdsBox, movedLabel, type Cell } from '../../../src/steps/tile/label-place.ts';
import { brokenLabel, labelsOf, type Label } from '../../../src/steps/tile/labels.ts';
import { Obstacles } from '../../../src/steps/tile/obstacles.ts';
import { handMadeWords, straight } from '../../support/hand-made-templates.ts';

const boxAt = (x: number, y: number, change: Partial<TurnedBox> = {}): TurnedBox => ({
  x,
  y,
  halfWidth: 10,
  halfHeight: 2,
  angleRad: 0,
  ...change,
});

const labelAt = (x: number, y: number, leader: Stroke | null = null, change: Partial<TurnedBox> = {}): Label => ({
  lines: [handMadeWords('rim', x, y)],
  box: boxAt(x, y, change),
  leader,
});

const CELL: Cell = { minX: 0, minY: 0, maxX: 100, maxY: 60 };
/** A piece over the left half of the cell. */
const RINGS = [Float64Array.of(0, 0, 50, 0, 50, 60, 0, 60)];

function taken(...boxes: readonly TurnedBox[]): Obstacles {
  const obstacles = new Obstacles();
  for (const box of boxes) obstacles.addBox(box);
  return obstacles;
}

const placeOf = (label: Label, cells: readonly Cell[], obstacles = taken(), rings = RINGS) => {
  const place = findLabelPlace(label, cells, obstacles, rings);
  return place === null ? null : [place.x, place.y].map((mm) => Math.round(mm * 1000) / 1000);
};

describe('a place for words without a leader', () => {
  it('is where they are if they lie whole in a cell that is free there', () => {
    expect(placeOf(labelAt(30, 20), [CELL])).toEqual([30, 20]);
  });

  it('is as near as brings them whole into the cell', () => {
    expect(placeOf(labelAt(-7, 63), [CELL])).toEqual([10, 58]);
    expect(placeOf(labelAt(97, -4), [CELL])).toEqual([90, 2]);
  });

  it('is in the nearest cell', () => {
    const right: Cell = { minX: 103, minY: 0, maxX: 200, maxY: 60 };
    expect(placeOf(labelAt(100, 20), [CELL, right])).toEqual([90, 20]);
    expect(placeOf(labelAt(104, 20), [CELL, right])).toEqual([113, 20]);
    expect(placeOf(labelAt(104, 20), [right, CELL])).toEqual([113, 20]);
  });

  it('goes aside for other words in steps of 1.5 mm, the nearest way', () => {
    // Words of 4 mm height under it, 2 mm high off: 0.6 mm white, so 4.6 mm between middles: up by 3 and 1.6, two steps and more.
    expect(placeOf(labelAt(30, 20), [CELL], taken(boxAt(30, 18.9)))).toEqual([30, 24.5]);
    expect(placeOf(labelAt(30, 20), [CELL], taken(boxAt(30, 21.1)))).toEqual([30, 15.5]);
  });

  it('stays inside the piece if it was inside, even where outside is nearer', () => {
    // Middle at 49: a mm to the right is outside. To the left 20.6 mm are needed, up or down is blocked by a wall of words.
    const wall = boxAt(60, 30, { halfWidth: 20, halfHeight: 40 });
    const narrow: Cell = { minX: 0, minY: 17, maxX: 200, maxY: 23 };
    const inside = placeOf(labelAt(49, 20), [narrow], taken(wall));
    expect(inside).toEqual([28, 20]);
    // From outside it may go to whichever side is nearer.
    expect(placeOf(labelAt(75, 20), [narrow], taken(wall))).toEqual([91.5, 20]);
  });

  it('is looked for all over the cell where nothing near by is free', () => {
    const wide: Cell = { minX: 0, minY: 0, maxX: 400, maxY: 40 };
    const blocked = taken(boxAt(60, 20, { halfWidth: 60, halfHeight: 20 }));
    // 30 mm round it all is taken up to 120: from 40 in steps of 4 mm to where 10 mm and the white lie beyond.
    expect(placeOf(labelAt(40, 20), [wide], blocked, [])).toEqual([132, 20]);
  });

  it('is none where every place is taken or the cell is too small', () => {
    expect(placeOf(labelAt(30, 20), [CELL], taken(boxAt(50, 30, { halfWidth: 60, halfHeight: 40 })))).toBeNull();
    expect(placeOf(labelAt(30, 20), [{ minX: 0, minY: 0, maxX: 19.9, maxY: 60 }])).toBeNull();
    expect(placeOf(labelAt(30, 20), [{ minX: 0, minY: 0, maxX: 100, maxY: 3.9 }])).toBeNull();
    expect(placeOf(labelAt(30, 20), [{ minX: 0, minY: 0, maxX: 20, maxY: 4 }])).toEqual([10, 2]);
  });
});

describe('a place for words on a leader', () => {
  it('has the shortest leader that is long enough to be seen', () => {
    // It points at 50, 30 from far off; right over it the words stand 2 mm and more away.
    const place = placeOf(labelAt(85, 50, straight('leader', 75, 50, 50, 30)), [CELL]);
    const [x, y] = place ?? [NaN, NaN];
    const away = Math.hypot(Math.max(0, Math.abs(x - 50) - 10), Math.max(0, Math.abs(y - 30) - 2));
    expect(away).toBeGreaterThanOrEqual(2);
    expect(away).toBeLessThan(3.5);
  });

  it('does not point across a joint while the cell of its target has room', () => {
    const right: Cell = { minX: 103, minY: 0, maxX: 200, maxY: 60 };
    const label = labelAt(130, 30, straight('leader', 120, 30, 97, 30));
    const [x] = placeOf(label, [right, CELL]) ?? [NaN];
    expect(x).toBeLessThan(91);
  });

  it('crosses no other words on its way while there is another', () => {
    const label = labelAt(50, 50, straight('leader', 50, 48, 50, 10));
    const others = taken(boxAt(50, 16, { halfWidth: 12, halfHeight: 1 }));
    const place = findLabelPlace(label, [{ ...CELL, minY: 20 }], others, RINGS);
    expect(place).not.toBeNull();
    if (place === null) return;
    const moved = movedLabel(label, place);
    const [ax, ay, bx, by] = moved.leader?.points ?? [];
    expect([bx, by]).toEqual([50, 10]);
    expect(others.isOpen({ x: ax, y: ay }, { x: bx, y: by })).toBe(true);
  });

  it('may set them level where they do not fit as they are turned', () => {
    const label = labelAt(30, 40, straight('leader', 30, 28, 30, 5), { angleRad: Math.PI / 2 });
    const low: Cell = { minX: 0, minY: 0, maxX: 100, maxY: 15 };
    expect(findLabelPlace(label, [low], taken(), RINGS)).toMatchObject({ angleRad: 0, halfWidth: 10, halfHeight: 2 });
    expect(findLabelPlace({ ...label, leader: null }, [low], taken(), RINGS)).toBeNull();
  });
});

describe('a label that is moved', () => {
  it('takes its lines with it, turned round the middle of its box', () => {
    const label: Label = {
      lines: [handMadeWords('one', 33, 21, { angleRad: 0.25 }), handMadeWords('two', 30, 16)],
      box: boxAt(30, 20),
      leader: null,
    };
    const { lines, box, leader } = movedLabel(label, boxAt(70, 5, { angleRad: Math.PI / 2 }));
    expect(leader).toBeNull();
    expect(box).toEqual(boxAt(70, 5, { angleRad: Math.PI / 2 }));
    // 3 right and 1 up of the middle becomes 3 up and 1 left.
    expect(lines[0].at.x).toBeCloseTo(69, 9);
    expect(lines[0].at.y).toBeCloseTo(8, 9);
    expect(lines[0].angleRad).toBeCloseTo(0.25 + Math.PI / 2, 12);
    expect(lines[1].at.x).toBeCloseTo(74, 9);
    expect(lines[1].at.y).toBeCloseTo(5, 9);
  });

  it.each([
    ['drawn towards', straight('leader', 40, 20, 60, 30)],
    ['drawn away', straight('leader', 60, 30, 40, 20)],
  ])('still points where it did, from the nearest point of its box: %s', (_, leader) => {
    const moved = movedLabel(labelAt(30, 20, leader), boxAt(80, 45));
    // The box reaches from 70 to 90 and down to 43.
    expect([...(moved.leader?.points ?? [])]).toEqual([70, 43, 60, 30]);
    expect(moved.leader).toMatchObject({ role: 'leader', closed: false });
    expect([...(movedLabel(labelAt(30, 20, leader), boxAt(55, 10)).leader?.points ?? [])]).toEqual([60, 12, 60, 30]);
  });

  it('finds the nearest point of a turned box', () => {
    const leader = straight('leader', 40, 20, 60, 30);
    const moved = movedLabel(labelAt(30, 20, leader), boxAt(80, 35, { angleRad: Math.PI / 2 }));
    // Upright it reaches from 78 to 82 and from 25 to 45.
    const points = [...(moved.leader?.points ?? [])];
    [78, 30, 60, 30].forEach((mm, i) => expect(points[i]).toBeCloseTo(mm, 9));
  });

  it('has no leader where it lies on what it speaks of', () => {
    expect(movedLabel(labelAt(30, 20, straight('leader', 40, 20, 60, 30)), boxAt(55, 31)).leader).toBeNull();
  });

  it('fits a cell as it is turned', () => {
    expect(holdsBox({ minX: 5, minY: 5, maxX: 25, maxY: 9 }, boxAt(0, 0))).toBe(true);
    expect(holdsBox({ minX: 5, minY: 5, maxX: 24.9, maxY: 9 }, boxAt(0, 0))).toBe(false);
    expect(holdsBox({ minX: 5, minY: 5, maxX: 25, maxY: 8.9 }, boxAt(0, 0))).toBe(false);
    expect(holdsBox({ minX: 5, minY: 5, maxX: 9.1, maxY: 25.1 }, boxAt(0, 0, { angleRad: Math.PI / 2 }))).toBe(true);
  });
});

describe('labels of a drawing', () => {
  const line = (text: string, x: number, y: number, change = {}) =>
    handMadeWords(text, x, y, { align: 'left', heightMm: 4, ...change });

  it('are blocks of lines that stand under one another', () => {
    // The next line stands 4 + 1.2 · 4 = 8.8 mm lower at most, and begins within 0.05 mm of the one before.
    const words = [
      line('title', 20, 80),
      line('cut 2', 20.04, 71.3),
      line('too far', 20, 62.4),
      line('aside', 20.1, 55),
      line('above', 20.1, 57),
      line('turned', 20.1, 50, { angleRad: 0.1 }),
      line('centred', 20.1, 45, { align: 'centre' }),
    ];
    const { labels, strokes } = labelsOf({ strokes: [], words });
    expect(strokes).toEqual([]);
    expect(labels.map(({ lines }) => lines.map(({ text }) => text))).toEqual([
      ['title', 'cut 2'],
      ['too far'],
      ['aside'],
      ['above'],
      ['turned'],
      ['centred'],
    ]);
  });

  it('of upright words stand beside one another', () => {
    const up = { angleRad: Math.PI / 2 };
    const { labels } = labelsOf({
      strokes: [],
      words: [line('a', 20, 30, up), line('b', 26, 30, up), line('c', 20, 30, up)],
    });
    expect(labels.map(({ lines }) => lines.length)).toEqual([2, 1]);
  });

  it('have the box round all their lines', () => {
    const { labels } = labelsOf({ strokes: [], words: [line('a longer title', 20, 80), line('cut', 20, 72)] });
    const [{ box }] = labels;
    // Letters reach 1.1 capital heights over the first baseline and 0.33 under the last.
    expect(box.y + box.halfHeight).toBeCloseTo(84.4, 9);
    expect(box.y - box.halfHeight).toBeCloseTo(70.68, 9);
    expect(box.x - box.halfWidth).toBeCloseTo(20, 9);
    expect(box.angleRad).toBe(0);
  });

  it('take the leader that begins or ends at them, each but one', () => {
    const words = [line('rim', 20, 80), line('boss', 60, 20)];
    const toRim = straight('leader', 5, 60, 20, 78);
    const second = straight('leader', 20, 78, 9, 9);
    const fromBoss = straight('leader', 60, 19, 90, 5);
    const cut = straight('cut', 20, 80, 60, 20);
    const far = straight('leader', 0, 0, 1, 1);
    const { labels, strokes } = labelsOf({ strokes: [cut, toRim, second, fromBoss, far], words });
    expect(labels.map(({ leader }) => leader)).toEqual([toRim, fromBoss]);
    expect(strokes).toEqual([cut, second, far]);
  });

  it('break into lines of their own, of which the first keeps the leader', () => {
    const leader = straight('leader', 5, 60, 20, 78);
    const { labels } = labelsOf({ strokes: [leader], words: [line('rim', 20, 80), line('cut 2', 20, 73)] });
    const broken = brokenLabel(labels[0]);
    expect(broken.map(({ lines }) => lines.map(({ text }) => text))).toEqual([['rim'], ['cut 2']]);
    expect(broken.map((label) => label.leader)).toEqual([leader, null]);
    expect(broken[1].box.y).toBeCloseTo(73 + 0.385 * 4, 9);
  });
});
