import { expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import type { PaperBlock } from '../../../src/model/page.ts';
import { joinTiles } from '../../../src/steps/read-back/join-tiles.ts';
import type { PrintedLine } from '../../../src/steps/read-back/printed-lines.ts';

/** Two tiles of 100 × 100 mm, one beside the other, that share a strip of 10 mm; each page has a white edge of 5 mm. */
const BLOCK: PaperBlock = {
  number: 1,
  columns: 2,
  rows: 1,
  tileWidthMm: 100,
  tileHeightMm: 100,
  stepXMm: 90,
  stepYMm: 90,
  originXMm: 5,
  originYMm: 5,
  placements: [],
  pageOfTile: [0, 1],
};

const line = (closed: boolean, ...points: number[]): PrintedLine => ({
  layer: 'cut',
  closed,
  points: Float64Array.from(points, (mm) => mm + 5),
});

/** A rectangle from 80 to 120 across and 20 to 60 up, as each tile shows it. */
const LEFT = line(false, 100, 60, 80, 60, 80, 20, 100, 20);
const RIGHT = line(false, 0, 20, 30, 20, 30, 60, 0, 60);

const joined = (...pages: PrintedLine[][]) => joinTiles(BLOCK, (page) => pages[page] ?? [], 'cut');

it('lays what both tiles show of a ring together, the shared strip once', () => {
  const { rings, looseEnds } = joined([LEFT], [RIGHT]);
  expect(looseEnds).toEqual([]);
  expect(rings.map((ring) => ringArea(ring))).toEqual([expect.closeTo(1600, 3)]);
});

it('counts a small ring that lies wholly in the shared strip once', () => {
  const hole = [93, 30, 97, 30, 97, 34, 93, 34];
  const { rings } = joined([line(true, ...hole)], [line(true, ...hole.map((mm, i) => (i % 2 === 0 ? mm - 90 : mm)))]);
  expect(rings.map((ring) => ringArea(ring))).toEqual([expect.closeTo(16, 9)]);
});

it('tells of the ends of a ring whose other half is missing, or moved', () => {
  expect(joined([LEFT], []).looseEnds).toHaveLength(2);
  const moved: PrintedLine = { ...RIGHT, points: RIGHT.points.map((mm, i) => (i % 2 === 1 ? mm + 0.5 : mm)) };
  expect(joined([LEFT], [moved]).looseEnds).not.toEqual([]);
});
