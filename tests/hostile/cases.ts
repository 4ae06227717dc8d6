import { ball } from '../reference/handbook/ball.ts';
import { panels, tube, type Solid } from '../reference/handbook/polygon-solids.ts';
import { block, inSheets, together, type PartChange } from '../support/run-solid.ts';
import { bellows, fins, halfTurnedBand, placed, pyramid, saddle, starTube, strip, torus, upperHalf } from './shapes.ts';

export interface HostileCase {
  readonly name: string;
  readonly solid: Solid;
  readonly change: PartChange;
  /** Codes of findings that have to be among those told, or that of the problem it stops with. */
  readonly told: readonly string[];
}

const RAD = Math.PI / 180;

/** Sheets so thick, mm; the sculpt is their face. */
const face =
  (...thicknessesMm: readonly number[]): PartChange =>
  (part) =>
    inSheets(part, ...thicknessesMm);

const back =
  (...thicknessesMm: readonly number[]): PartChange =>
  (part) => ({ ...inSheets(part, ...thicknessesMm), modelIs: 'back' });

export const HOSTILE_CASES: readonly HostileCase[] = [
  {
    name: 'a wall thinner than its foam',
    solid: block([0, 0, 0], [120, 80, 8]),
    change: face(10),
    told: ['shell/no-room', 'shell/folds-over'],
  },
  {
    name: 'a slot narrower than the foam that lines it',
    solid: together(block([0, 0, 0], [80, 80, 80]), block([86, 0, 0], [160, 80, 80])),
    change: back(15),
    told: ['shell/no-room'],
  },
  { name: 'a ball smaller than its foam', solid: ball(8, 4, 4, 16), change: face(10), told: ['shell/folds-over'] },
  {
    name: 'a ring whose hole the foam fills',
    solid: torus(24, 12, 30, 12),
    change: back(30),
    told: ['shell/folds-over'],
  },
  {
    name: 'a tube bent round less than its foam is thick',
    solid: tube(24, 4, 4, () => 100),
    change: face(15),
    told: ['shell/folds-over'],
  },
  {
    name: 'sheets that swallow the core',
    solid: ball(20, 4, 4, 16),
    change: face(10, 10, 10),
    told: ['shell/folds-over'],
  },
  {
    name: 'eight sheets of the thickest foam round a small box',
    solid: block([0, 0, 0], [60, 60, 60]),
    change: face(15, 15, 15, 15, 15, 15, 15, 15),
    told: ['shell/folds-over'],
  },
  {
    name: 'a needle of seven planes in seven pieces',
    solid: pyramid(7, 10, 200),
    change: face(6),
    told: ['shell/spike'],
  },
  {
    name: 'a needle of seven planes in one piece',
    solid: pyramid(7, 10, 200, true),
    change: face(15),
    told: ['shell/spike'],
  },
  {
    name: 'a saddle corner of ten planes',
    solid: saddle(5, 80, 60),
    change: face(15),
    told: ['shell/corner-of-many-planes'],
  },
  { name: 'a bevel of 80 degrees', solid: panels(80, 80, 160 * RAD), change: face(10), told: ['foam/bevel-steep'] },
  { name: 'a bevel of 89.5 degrees', solid: panels(80, 80, 179 * RAD), change: face(10), told: ['foam/bevel-steep'] },
  {
    name: 'a bevel of 80 degrees inward',
    solid: panels(80, 80, -160 * RAD),
    change: face(10),
    told: ['foam/bevel-steep'],
  },
  {
    name: 'a sheet folded back upon itself',
    solid: panels(80, 80, Math.PI),
    change: face(6),
    told: ['read/doubled-faces', 'cut/nothing-flat'],
  },
  {
    name: 'bellows of folds closer than their grooves',
    solid: bellows(20, 8, 60),
    change: face(10),
    told: ['foam/groove-wide'],
  },
  {
    name: 'a star of thin points',
    solid: starTube(9, 80, 30, 60),
    change: face(15),
    told: ['foam/bevel-steep', 'foam/narrow'],
  },
  { name: 'three fins on one edge', solid: fins(3, 60, 80), change: face(6), told: ['read/non-manifold-edge'] },
  {
    name: 'a band with half a turn in it',
    solid: halfTurnedBand(24, 80, 40),
    change: face(6),
    told: ['read/one-sided'],
  },
  {
    name: 'facets that are needles',
    solid: strip(
      [
        [0, 0],
        [100, 0],
        [100.0001, 0.0001],
        [200, 40],
      ],
      0.01,
    ),
    change: face(10),
    told: ['foam/narrow'],
  },
  {
    name: 'a thing far smaller than its foam',
    solid: placed(block([0, 0, 0], [1, 1, 1]), 1, [0, 0, 0]),
    change: face(15),
    told: ['size/small', 'shell/folds-over'],
  },
  {
    name: 'a box of twenty metres',
    solid: block([0, 0, 0], [20000, 20000, 20000]),
    change: face(6),
    told: ['size/large', 'nest/too-large', 'tile/too-many-pages'],
  },
  {
    name: 'a box ten kilometres from the origin',
    solid: placed(block([0, 0, 0], [100, 100, 100]), 1, [1e7, 1e7, 1e7]),
    change: face(6),
    told: ['read/far-from-origin'],
  },
  {
    name: 'two faces in one place',
    solid: together(panels(80, 80, 1), panels(80, 80, 1)),
    change: face(6),
    told: ['read/doubled-faces'],
  },
  {
    name: 'boxes that run through each other',
    solid: together(block([0, 0, 0], [80, 80, 80]), block([40, 30, 20], [120, 110, 100])),
    change: face(10),
    told: ['read/self-crossing', 'shell/no-room'],
  },
  {
    name: 'a dart shorter than the foam is thick',
    // The rim is ring 30 of 60; corner 1 + 29 * 48 the first on it.
    solid: upperHalf(ball(60, 1, 48, 60), [[1 + 29 * 48, 1 + 30 * 48]]),
    change: face(15),
    told: ['foam/stretch'],
  },
  {
    name: 'a closed ball with one short slit',
    solid: { ...ball(60, 1, 8, 16), seams: [[0, 1]] },
    change: face(15),
    told: ['flatten/no-start', 'cut/nothing-flat'],
  },
];
