import { describe, expect, it } from 'vitest';
import { topologyOf } from '../../src/mesh/topology.ts';
import { surfaceArea } from '../../src/mesh/measure.ts';
import { pieceId } from '../../src/base/ids.ts';
import { boxMesh, meshOf, tubeMesh } from '../support/meshes.ts';
import { readBenchWords } from './bench-words.ts';
import { freshPatches } from './lay-flat.ts';
import { MovableSeam } from './moved-seam.ts';
import { parseReference } from './reference-program.ts';
import { isWithin, partStretch, seamFits, type WalkedPart } from './seam-share.ts';
import { ontoSphere, splitTriangles } from './split-triangles.ts';
import { StretchClock } from './stretch-clock.ts';
import { textTable } from './text-table.ts';
import { median, medianRatio, msText, timesText } from './times.ts';

describe('times', () => {
  it('take the middle, or the mean of the middle two', () => {
    expect(median([9, 1, 5])).toBe(5);
    expect(median([9, 1, 5, 7])).toBe(6);
  });
  it('are compared pair by pair', () => {
    // The machine was busy in the second pair: the ratio of the medians would be 12 / 20.
    expect(medianRatio([10, 100, 12], [20, 200, 12])).toBeCloseTo(0.5, 12);
  });
  it('keep three figures', () => {
    expect([1.234, 9.996, 99.96].map(msText)).toEqual(['1.23', '10.0', '100']);
    expect(timesText([3, 1, 2])).toBe('2.00 (1.00-3.00)');
  });
});

it('a clock of stretches keeps the longest of each phase, and their sum', () => {
  const clock = new StretchClock();
  const work = (ms: number): void => {
    for (const end = performance.now() + ms; performance.now() < end;);
  };
  clock.pause(0, 'cutting');
  work(2);
  clock.pause(0.3);
  work(5);
  clock.pause(0.6, 'sewing');
  clock.pause(1);
  const { ms, longestMs, pauses } = clock.phases.get('cutting')!;
  expect(pauses).toBe(2);
  expect(longestMs).toBeGreaterThanOrEqual(5);
  expect(ms).toBeGreaterThanOrEqual(longestMs + 2);
  expect(clock.phases.get('sewing')?.pauses).toBe(1);
});

describe('words of the command line', () => {
  const read = (...words: string[]) => readBenchWords(words, ['times', 'large'], ['times']);
  it('name tables, rounds and the largest patch', () => {
    expect(read('large', 'rounds=3', 'most=2000')).toEqual({ tables: new Set(['large']), rounds: 3, most: 2000 });
  });
  it('may be left out', () => expect(read()).toEqual({ tables: new Set(['times']), rounds: 7, most: Infinity }));
  it.each(['tims', 'rounds=0', 'rounds=', 'most=-1'])('%s means nothing', (word) => {
    expect(() => read(word)).toThrow(RangeError);
  });
});

it('a table has its first words to the left and its figures to the right', () => {
  expect(textTable(['a', 'figure'], [['long', '1'], ['b']])).toBe('a     figure\n----  ------\nlong       1\nb\n');
});

it('the lines of the reference program are read, with what it could not do', () => {
  const lines = [
    '{"method":"best","ok":true,"note":"","ms":1.5,"trueScale":{"sd4":4.25,"flips":0}}',
    'a word beside',
    '{"method":"lscm","ok":false,"note":"failed","ms":2}',
  ];
  expect(parseReference(lines.join('\n'))).toEqual([
    { method: 'best', ok: true, note: '', ms: 1.5, energy: 4.25, flips: 0 },
    { method: 'lscm', ok: false, note: 'failed', ms: 2, energy: null, flips: 0 },
  ]);
});

describe('split triangles', () => {
  it.each([1, 2, 3, 5])('in %d parts a side stay a closed box of the same area', (parts) => {
    const box = boxMesh(2, 3, 4);
    const split = splitTriangles(box, parts);
    const { edgeCount, twin } = topologyOf(split);
    expect(split.triangles.length / 3).toBe(12 * parts * parts);
    expect(split.positions.length / 3 - edgeCount + split.triangles.length / 3).toBe(2);
    expect(twin.every((h) => h >= 0)).toBe(true);
    expect(surfaceArea(split.positions, split.triangles)).toBeCloseTo(52, 10);
  });
  it('lie on a sphere when they are brought there', () => {
    const { positions } = ontoSphere(
      splitTriangles(
        meshOf(
          [
            [9, 0, 0],
            [0, 9, 0],
            [0, 0, 9],
          ],
          [[0, 1, 2]],
        ),
        3,
      ),
      10,
    );
    for (let i = 0; i < positions.length; i += 3) {
      expect(Math.hypot(positions[i], positions[i + 1], positions[i + 2])).toBeCloseTo(10, 12);
    }
  });
});

describe('a seam that is moved', () => {
  // A sheet of 20 x 10 squares in the plane.
  const points = Array.from({ length: 231 }, (_, i): [number, number, number] => [i % 21, Math.floor(i / 21), 0]);
  const squares = Array.from({ length: 200 }, (_, i) => {
    const v = 21 * Math.floor(i / 20) + (i % 20);
    return [v, v + 1, v + 22, v + 21];
  });
  const sheet = meshOf(points, squares);
  const sizes = (edges: readonly [number, number][]): number[] =>
    freshPatches(sheet, edges).map(({ meshTriangles }) => meshTriangles.length);

  it('parts the sheet in two', () => {
    const [left, right] = sizes(new MovableSeam(sheet, 0.25).edges);
    expect(left + right).toBe(400);
    expect(right).toBeGreaterThan(80);
    expect(right).toBeLessThan(120);
  });
  it.each([0, 0.5, 1])('gives to one piece and takes from it, at %d of its length', (at) => {
    const seam = new MovableSeam(sheet, 0.5);
    const { edges, moved } = seam.movedAt(at, 3);
    expect(sizes(edges)).toHaveLength(2);
    expect(moved).toBeGreaterThan(8);
    expect(moved).toBeLessThan(24);
    const before = new Set(seam.edges.map(String));
    expect(edges.filter((edge) => !before.has(String(edge))).length).toBeGreaterThan(4);
  });
  it('leaves a tube with a seam all round alone', () => {
    expect(() => new MovableSeam(tubeMesh(8, 10, 10, 2), 0.5)).not.toThrow();
  });
});

describe('seams of a finished part', () => {
  const spread = (max: number, p99: number) => ({ max, p99, mean: 0 });
  const [a, b] = [pieceId('a'), pieceId('b')];
  const seam = (letter: string, lengthMm: number, worstMisalignmentMm: number) =>
    ({ letter, kind: 'butt', pieces: [a, b], lengthMm: [lengthMm, lengthMm - 0.1], worstMisalignmentMm }) as const;
  const part: WalkedPart = {
    pieces: [
      { id: a, patch: 1, surfaceAreaMm2: 300 },
      { id: b, patch: 0, surfaceAreaMm2: 100 },
    ],
    flats: [
      { stretchPct: spread(9, 7), squashPct: spread(2, 1), energy: 4.04 },
      { stretchPct: spread(4, 3), squashPct: spread(3, 1), energy: 4 },
    ],
    seams: [
      seam('A', 100, 0.5),
      seam('B', 100, 0.51),
      seam('C', 400, 0.99),
      { letter: 'D', kind: 'open', pieces: [a], lengthMm: [90], worstMisalignmentMm: 0 },
    ],
  };

  it('are true within half a millimetre or a quarter per cent, whichever is more; open edges do not count', () => {
    expect(seamFits(part).map((fit) => [fit.letter, isWithin(fit)])).toEqual([
      ['A', true],
      ['B', false],
      ['C', true],
    ]);
  });
  it('belong to the gentler of their pieces', () => expect(seamFits(part)[0].gentlestP99Pct).toBe(3));
  it('are paid for by stretch, told of the worst piece and by area', () => {
    expect(partStretch(part)).toEqual({ maxPct: 9, p99Pct: 7, squashMaxPct: 3, energy: 4.01 });
  });
});
