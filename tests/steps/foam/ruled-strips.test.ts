import { expect, it } from 'vitest';
import { foamId, partId } from '../../../src/base/ids.ts';
import { line } from '../../../src/geom/outline.ts';
import { ruledText } from '../../../src/model/ruled-strip.ts';
import type { PlainDraft } from '../../../src/model/plain-piece.ts';
import { leaningEdge } from '../../../src/model/plain-edge.ts';
import { plainPieces } from '../../../src/steps/foam/plain-pieces.ts';
import { ruledStrips } from '../../../src/steps/foam/ruled-strips.ts';

/** Longer side of what A4 shows. */
const PAGE_MM = 277;

/** A strip laid at an angle, its corners given along it. */
const stripOf = (
  corners: readonly (readonly [number, number])[],
  {
    turnRad = 0,
    leansDeg = [0, 0, 0, 0],
    ...more
  }: { turnRad?: number; leansDeg?: readonly number[] } & Partial<PlainDraft> = {},
): PlainDraft => {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const at = corners.map(([x, y]) => ({ x: 7 + c * x - s * y, y: -3 + s * x + c * y }));
  return {
    key: 'strip',
    name: 'strip',
    quantity: 1,
    thicknessMm: 6,
    drawnAt: 1,
    outline: at.map((from, i) => leaningEdge(`edge ${i}`, [line(from, at[(i + 1) % at.length])], leansDeg[i])),
    holes: [],
    bend: { kind: 'flat' },
    lines: [],
    notes: [],
    areaMm2: 1000,
    ...more,
  };
};

const ruled = (draft: PlainDraft) =>
  ruledStrips(
    plainPieces({ id: partId('p'), name: 'Strap', copies: 1 }, [draft], 1, () => foamId('f')),
    PAGE_MM,
  );

const rectangle = (long: number, wide: number): readonly (readonly [number, number])[] => [
  [0, 0],
  [long, 0],
  [long, wide],
  [0, wide],
];

it('tells a strip of one width by its figures, however it lies', () => {
  for (const turnRad of [0, 0.4, Math.PI / 2, -0.3]) {
    const [strip] = ruled(stripOf(rectangle(1200, 25), { turnRad }));
    expect(strip.widthMm).toBeCloseTo(25, 9);
    expect(strip.lowerMm).toBeCloseTo(1200, 9);
    expect(ruledText(strip, 'mm')).toBe('25\u00a0mm wide, 1200\u00a0mm long, ends square');
  }
});

it('tells ends that are cut at an angle, leans of the sides and marks', () => {
  const leaning = [
    [10, 0],
    [1000, 0],
    [980, 20],
    [30, 20],
  ] as const;
  const mark = { role: 'mark', points: Float64Array.of(107, -3, 107, 1), closed: false, text: 'A1' } as const;
  const [strip] = ruled(stripOf(leaning, { leansDeg: [15, 0, 15, 0], lines: [mark] }));
  expect(strip).toMatchObject({ leansDeg: { lower: 15, right: 0, upper: 15, left: 0 } });
  expect(strip.lowerMm).toBeCloseTo(990, 9);
  expect([strip.upperFromMm, strip.upperToMm].map((mm) => Math.round(1e6 * mm) / 1e6)).toEqual([20, 970]);
  // Ends that run 20 mm along over 20 mm of width stand 45 degrees from square.
  const text = ruledText(strip, 'mm');
  expect(text).toContain('left end 45° from square, its upper corner 20\u00a0mm farther right');
  expect(text).toContain('lower side, upper side 15° in under');
  expect(text).toContain('on the lower side at A1 90\u00a0mm');
});

it('leaves on paper what is short, wide, bent, tapered or has curves on it', () => {
  const curve = { role: 'engrave', points: Float64Array.of(100, 5, 110, 8, 120, 5), closed: false } as const;
  const tapered = [
    [0, 0],
    [900, 0],
    [900, 25],
    [0, 27],
  ] as const;
  const bent = [
    [0, 0],
    [450, 5],
    [900, 0],
    [900, 25],
    [450, 30],
    [0, 25],
  ] as const;
  const onPaper = [
    stripOf(rectangle(250, 20)),
    stripOf(rectangle(500, 300)),
    stripOf(tapered),
    stripOf(bent, { leansDeg: [0, 0, 0, 0, 0, 0] }),
    stripOf(rectangle(900, 25), { lines: [curve] }),
  ];
  expect(onPaper.flatMap(ruled)).toEqual([]);
  // A panel longer than two pages is ruled too.
  expect(ruled(stripOf(rectangle(600, 400)))).toHaveLength(1);
});
