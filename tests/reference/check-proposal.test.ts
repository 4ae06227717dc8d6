import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { changeJson } from './change-json.ts';
import { checkProposal } from './recompute/check-proposal.mjs';
import { deepestOverlap } from './recompute/piece-overlap.mjs';

interface Net {
  readonly obj: string;
  readonly seams: readonly (readonly [number, number])[];
  readonly corners: readonly (readonly number[])[];
  readonly sourceVertices: readonly number[];
  readonly triangles: readonly (readonly number[])[];
  readonly uvMm: readonly (readonly number[])[];
  readonly areaMm2: number;
  readonly seamLengthMm: number;
}

const objOf = (corners: Net['corners'], faces: readonly (readonly number[])[]): string =>
  [...corners.map((p) => `v ${p.join(' ')}`), ...faces.map((face) => `f ${face.map((v) => v + 1).join(' ')}`), ''].join(
    '\n',
  );

const CUBE_CORNERS = [
  ...[0, 10].flatMap((z) => [
    [0, 0, z],
    [10, 0, z],
    [10, 10, z],
    [0, 10, z],
  ]),
];

/**
 * A cube of 10 mm as a cross: four squares in a row, one above and one below the first.
 *
 *     11-10
 *      |  |
 *      5--6--7--8--9
 *      |  |  |  |  |
 *      0--1--2--3--4
 *      |  |
 *     13-12
 */
const CUBE: Net = {
  obj: objOf(CUBE_CORNERS, [
    [0, 1, 5, 4],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 0, 4, 7],
    [4, 5, 6, 7],
    [0, 3, 2, 1],
  ]),
  corners: CUBE_CORNERS,
  seams: [
    [0, 4],
    [5, 6],
    [6, 7],
    [7, 4],
    [0, 3],
    [3, 2],
    [2, 1],
  ],
  sourceVertices: [0, 1, 2, 3, 0, 4, 5, 6, 7, 4, 6, 7, 2, 3],
  triangles: [
    [0, 1, 6],
    [0, 6, 5],
    [1, 2, 7],
    [1, 7, 6],
    [2, 3, 8],
    [2, 8, 7],
    [3, 4, 9],
    [3, 9, 8],
    [5, 6, 10],
    [5, 10, 11],
    [0, 13, 12],
    [0, 12, 1],
  ],
  uvMm: [
    ...[0, 10, 20, 30, 40].map((x) => [x, 0]),
    ...[0, 10, 20, 30, 40].map((x) => [x, 10]),
    [10, 20],
    [0, 20],
    [10, -10],
    [0, -10],
  ],
  areaMm2: 600,
  seamLengthMm: 70,
};

/** Ten triangles of 45 degrees round one corner, slit open: rolled out they need 450 degrees and lie over themselves. */
function ruffle(): Net {
  const lean = Math.acos(Math.sqrt((Math.cos(Math.PI / 4) + 1) / (Math.cos(Math.PI / 5) + 1)));
  const rim = Array.from({ length: 10 }, (_, i) => {
    const [turn, up] = [(i * Math.PI) / 5, i % 2 === 0 ? lean : -lean];
    return [100 * Math.cos(turn) * Math.cos(up), 100 * Math.sin(turn) * Math.cos(up), 100 * Math.sin(up)];
  });
  const corners = [[0, 0, 0], ...rim];
  const triangles = Array.from({ length: 10 }, (_, i) => [0, i + 1, i + 2]);
  return {
    corners,
    obj: objOf(
      corners,
      triangles.map(([a, b, c]) => [a, b, c === 11 ? 1 : c]),
    ),
    seams: [[0, 1]],
    sourceVertices: [0, ...rim.map((_, i) => i + 1), 1],
    triangles,
    uvMm: [
      [0, 0],
      ...Array.from({ length: 11 }, (_, i) => [100 * Math.cos((i * Math.PI) / 4), 100 * Math.sin((i * Math.PI) / 4)]),
    ],
    areaMm2: 10 * 5000 * Math.sin(Math.PI / 4),
    seamLengthMm: 100,
  };
}

const bytesOf = ({ obj }: Net): Uint8Array => new TextEncoder().encode(obj);

/** What a program that is right would report of the net; text, so that a test can spoil one place of it. */
function reportText(net: Net): string {
  return JSON.stringify({
    modelHash: createHash('sha256').update(bytesOf(net)).digest('hex'),
    scaleMmPerUnit: 1,
    thicknessMm: 0,
    limits: { stretchPct: 5, squashPct: 5 },
    pieceCount: 1,
    seamLengthMm: net.seamLengthMm,
    areaMm2: net.areaMm2,
    lengthOverRootArea: net.seamLengthMm / Math.sqrt(net.areaMm2),
    feasible: true,
    pieces: [
      {
        sourceVertices: net.sourceVertices,
        triangles: net.triangles,
        uvMm: net.uvMm,
        surfaceMm: net.sourceVertices.map((v) => net.corners[v]),
        areaMm2: net.areaMm2,
        stretch99Pct: 0,
        squash99Pct: 0,
        overlaps: 0,
        isFeasible: true,
      },
    ],
  });
}

const seamText = ({ seams }: Net): string => JSON.stringify({ version: 1, edges: seams });

const check = (net: Net, report: unknown, seams: unknown = JSON.parse(seamText(net))) =>
  checkProposal(bytesOf(net), seams, report);

const add =
  (step: number) =>
  (old: unknown): number =>
    Number(old) + step;
const onSheet = (sheetMm: number[]) => (old: unknown) => ({ ...(old as object), sheetMm });
const gone = (): undefined => undefined;

describe('recomputing a proposal', () => {
  it('agrees with a cube laid out by hand', () => {
    const { faults, figures, pieces, checks } = check(CUBE, JSON.parse(reportText(CUBE)));
    expect(faults).toEqual([]);
    expect(pieces.map(({ passes }) => passes)).toEqual([true]);
    expect(figures.lengthOverRootArea).toBeCloseTo(70 / Math.sqrt(600), 12);
    expect(figures.stretch99Pct).toBeCloseTo(0, 9);
    expect(checks).toBeGreaterThan(40);
  });

  it.each<[string, string, (old: unknown) => unknown, RegExp]>([
    ['a flat corner moved', 'pieces.0.uvMm.3.0', add(0.01), /stretch99Pct|squash99Pct/],
    ['a corner that is no number', 'pieces.0.uvMm.3.0', () => null, /no number/],
    ['a piece that is not laid flat', 'pieces.0.uvMm', () => null, /not laid flat/],
    ['a piece inside out', 'pieces.0.uvMm', (old) => (old as number[][]).map(([x, y]) => [-x, y]), /inside out/],
    ['a corner in space moved', 'pieces.0.surfaceMm.2.1', add(1e-5), /off the sculpt|two places/],
    ['a prettier stretch', 'pieces.0.stretch99Pct', add(-1e-3), /stretch99Pct/],
    ['a prettier squash', 'pieces.0.squash99Pct', add(1e-3), /squash99Pct/],
    ['an overlap that is none', 'pieces.0.overlaps', add(1), /overlaps/],
    ['a triangle left out', 'pieces.0.triangles.-1', gone, /not covered/],
    ['a triangle twice', 'pieces.0.triangles.0', () => [0, 6, 5], /not used once/],
    ['a triangle turned over', 'pieces.0.triangles.0', (old) => (old as number[]).toReversed(), /no triangle of/],
    ['a shorter seam', 'seamLengthMm', add(-0.01), /seamLengthMm/],
    ['a shorter ratio', 'lengthOverRootArea', add(-0.001), /lengthOverRootArea/],
    ['fewer pieces', 'pieceCount', add(-1), /pieceCount/],
    ['a larger area', 'pieces.0.areaMm2', add(0.1), /areaMm2/],
    ['another model', 'modelHash', () => '0'.repeat(64), /another model/],
    ['a foam that is thin enough', 'feasible', () => false, /feasible/],
    ['a sheet it does not fit', 'limits', onSheet([25, 60]), /does not fit/],
    ['a corner of its own in one piece', 'pieces.0.triangles.2.0', () => 13, /no triangle of|torn/],
  ])('finds %s', (_, path, change, sentence) => {
    const { faults } = check(CUBE, changeJson(reportText(CUBE), path, change));
    expect(faults.join('\n')).toMatch(sentence);
  });

  it('turns the piece to see whether it fits the sheet', () => {
    // The cross is 40 wide and 30 high.
    expect(check(CUBE, changeJson(reportText(CUBE), 'limits', onSheet([30, 40]))).faults).toEqual([]);
  });

  it.each<[string, (edges: number[][]) => number[][], RegExp]>([
    ['a seam too many', (edges) => [...edges, [1, 5], [1, 0]], /parts? (the model )?into|torn|seamLengthMm/],
    ['a seam too few', (edges) => edges.slice(1), /torn/],
    ['a seam that is no edge', (edges) => [...edges, [0, 6]], /no edge|torn|seamLengthMm/],
  ])('finds %s in the seam file', (_, change, sentence) => {
    const seams = { version: 1, edges: change(CUBE.seams.map(([a, b]) => [a, b])) };
    expect(check(CUBE, JSON.parse(reportText(CUBE)), seams).faults.join('\n')).toMatch(sentence);
  });

  it('fails a piece that is stretched beyond its limit though every figure is told as it is', () => {
    // Wider by 6 % one way: every triangle is squashed by 1 - 1 / 1.06.
    const squash = 100 * (1 - 1 / 1.06);
    const wide = changeJson(reportText(CUBE), 'pieces.0.uvMm', (old) =>
      (old as number[][]).map(([x, y]) => [1.06 * x, y]),
    );
    const told = changeJson(JSON.stringify(wide), 'pieces.0.squash99Pct', () => squash);
    const { faults, pieces } = check(CUBE, told);
    expect(faults.join('\n')).toMatch(/squash over 5 %/);
    expect(pieces[0].passes).toBe(false);
    expect(pieces[0].text).toMatch(/FAIL/);
  });

  it('fails a piece that is wound over itself', () => {
    const net = ruffle();
    const { faults, figures, pieces } = check(net, JSON.parse(reportText(net)));
    expect(figures.squash99Pct).toBeCloseTo(0, 9);
    expect(pieces[0].passes).toBe(false);
    // Two triangles lie exactly on two others.
    expect(faults.join('\n')).toMatch(/2 pairs of triangles lie on each other/);
  });
});

describe('overlaps by separating lines', () => {
  const square = [
    [
      [0, 0],
      [10, 0],
      [0, 10],
    ],
    [
      [10, 0],
      [10, 10],
      [0, 10],
    ],
  ];
  const moved = (x: number): number[][] => square[0].map(([px, py]) => [px + x, py]);

  it('let triangles touch along a side and at a corner', () => {
    expect(deepestOverlap(square, 1e-6).pairs).toBe(0);
    expect(deepestOverlap([square[0], moved(10)], 1e-6).pairs).toBe(0);
  });

  it('tell how deep two lie in each other', () => {
    const { pairs, deepest } = deepestOverlap([square[0], moved(9)], 1e-6);
    expect(pairs).toBe(1);
    // The slanted sides are 1 / sqrt 2 apart.
    expect(deepest).toBeCloseTo(Math.SQRT1_2, 12);
  });

  it('see one inside another, and one on itself', () => {
    const small = square[0].map(([x, y]) => [1 + x / 10, 1 + y / 10]);
    expect(deepestOverlap([square[0], small], 1e-6).pairs).toBe(1);
    expect(deepestOverlap([square[0], square[0]], 1e-6).pairs).toBe(1);
  });
});
