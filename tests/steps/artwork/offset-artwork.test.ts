import { describe, expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import { depthInside } from '../../../src/geom/widest-spot.ts';
import type { Artwork } from '../../../src/model/artwork.ts';
import { inlayPair } from '../../../src/steps/artwork/inlay.ts';
import type { OffsetCorners } from '../../../src/model/artwork-craft.ts';
import { offsetArtwork } from '../../../src/steps/artwork/offset-artwork.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { artOf } from './art-of.ts';

const offset = (inner: string, by: number, corners: OffsetCorners = 'round'): Artwork =>
  expectOk(offsetArtwork(artOf(inner), by, corners));
const told = (inner: string, by: number) => {
  const made = offsetArtwork(artOf(inner), by, 'sharp');
  return made.ok ? made.notes.map(({ code, where }) => [code, where.point?.slice(0, 2)]) : made.problem.code;
};
const SQUARE = '<rect x="20" y="20" width="40" height="30"/>';

describe('areas moved outward and inward', () => {
  it.each([
    // Steiner: A + L d + pi d² with round corners, + 4 d² with sharp ones; inward A - L d + 4 d².
    [SQUARE, 3, 'round', 1200 + 420 + 9 * Math.PI, 140 + 6 * Math.PI],
    [SQUARE, 3, 'sharp', 1200 + 420 + 36, 140 + 24],
    [SQUARE, -3, 'round', 34 * 24, 116],
    ['<circle cx="60" cy="60" r="40"/>', 5, 'round', 2025 * Math.PI, 90 * Math.PI],
    ['<circle cx="60" cy="60" r="40"/>', -5, 'sharp', 1225 * Math.PI, 70 * Math.PI],
    [
      '<path fill-rule="evenodd" d="M20 60a40 40 0 1 0 80 0a40 40 0 1 0-80 0zM40 60a20 20 0 1 0 40 0a20 20 0 1 0-40 0z"/>',
      2,
      'round',
      (42 ** 2 - 18 ** 2) * Math.PI,
      120 * Math.PI,
    ],
    // A slot with round ends keeps them: 30 by 20.
    [
      '<path d="M30 30h30a10 10 0 0 1 0 20h-30a10 10 0 0 1 0-20z"/>',
      4,
      'round',
      30 * 28 + 196 * Math.PI,
      60 + 28 * Math.PI,
    ],
    // Round corners of a rounded square: radius 6 and 2.
    [
      '<rect x="20" y="20" width="40" height="40" rx="4"/>',
      -2,
      'sharp',
      36 * 36 - 4 * (4 - Math.PI),
      144 - 16 + 4 * Math.PI,
    ],
  ] as const)('%s by %d mm, %s', (inner, by, corners, area, length) => {
    const [piece] = offset(inner, by, corners).pieces;
    // Arcs end on the grid of 0.1 µm.
    expect(Math.abs(piece.areaMm2 - area)).toBeLessThan(1e-4 * length);
    expect(Math.abs(piece.lengthMm - length)).toBeLessThan(2e-3);
    expect(ringArea(piece.regions[0].outline.ring)).toBeGreaterThan(0);
  });

  it('keeps circles as single arcs, holes clockwise', () => {
    const [{ regions }] = offset(
      '<path fill-rule="evenodd" d="M20 60a40 40 0 1 0 80 0a40 40 0 1 0-80 0zM40 60a20 20 0 1 0 40 0a20 20 0 1 0-40 0z"/>',
      2,
    ).pieces;
    expect(regions[0].outline.path?.segments).toMatchObject([{ kind: 'arc', turn: 2 * Math.PI }]);
    expect(regions[0].holes[0].path?.segments).toMatchObject([{ kind: 'arc', turn: -2 * Math.PI }]);
  });

  it('stands off a curve by its distance, within the stated deviation', () => {
    const art = artOf('<path d="M20 100C20 20 120 20 120 100C120 150 70 140 70 110S20 150 20 100z"/>', {
      deviationMm: 0.02,
    });
    const fine = artOf('<path d="M20 100C20 20 120 20 120 100C120 150 70 140 70 110S20 150 20 100z"/>', {
      deviationMm: 1e-4,
    });
    for (const by of [4, -4]) {
      const { pieces, deviationMm } = expectOk(offsetArtwork(art, by, 'round'));
      const { ring } = pieces[0].regions[0].outline;
      let worst = 0;
      for (let i = 0; i < ring.length; i += 2) {
        const j = (i + 2) % ring.length;
        const depth = depthInside(
          [fine.pieces[0].regions[0].outline.ring],
          (ring[i] + ring[j]) / 2,
          (ring[i + 1] + ring[j + 1]) / 2,
        );
        worst = Math.max(worst, Math.abs(depth + by));
      }
      expect(deviationMm).toBeCloseTo(0.0201, 9);
      expect(worst).toBeLessThan(deviationMm + 1e-4);
      expect(worst).toBeGreaterThan(0.001);
    }
  });
});

describe('what vanishes is told with its place', () => {
  it.each([
    [
      'two plates and a neck 4 wide',
      '<path d="M0 0h20v8h10v-8h20v20h-20v-8h-10v8h-20z"/>',
      -2.5,
      'artwork/offset-parted',
      [25, 190],
    ],
    ['a small area', `<g>${SQUARE}<circle cx="100" cy="100" r="2"/></g>`, -3, 'artwork/offset-gone', [100, 100]],
    [
      'a hole near the edge',
      '<path fill-rule="evenodd" d="M0 0h40v40h-40zM3 15h10v10h-10z"/>',
      -2,
      'artwork/offset-broken',
      [0, 180],
    ],
    ['a thin part', '<path d="M0 0h40v18h30v4h-30v18h-40z"/>', -2.5, 'artwork/offset-tip', [55, 180]],
    [
      'a hole that closes',
      '<path fill-rule="evenodd" d="M0 0h40v40h-40zM18 18h4v4h-4z"/>',
      3,
      'artwork/offset-closed',
      [20, 180],
    ],
    [
      'two areas 4 apart',
      '<g><rect width="20" height="20"/><rect x="24" width="20" height="20"/></g>',
      3,
      'artwork/offset-joined',
      [22, 190],
    ],
    ['an inlet', '<path d="M0 0h40v18h-20v4h20v18h-40z"/>', 3, 'artwork/offset-closed', [30, 180]],
  ] as const)('%s', (_, inner, by, code, near) => {
    const found = told(inner, by);
    expect(found).toHaveLength(1);
    const [[what, at]] = found as [string, [number, number]][];
    expect(what).toBe(code);
    expect(Math.hypot(at[0] - near[0], at[1] - near[1])).toBeLessThan(15);
  });

  it('nothing is told where all stays, and corners are no loss', () => {
    expect(told(SQUARE, 3)).toEqual([]);
    expect(told(SQUARE, -3)).toEqual([]);
    expect(told('<path fill-rule="evenodd" d="M0 0h40v40h-40zM15 15h10v10h-10z"/>', -2)).toEqual([]);
    expect(told('<path d="M40 0L50 30L80 40L50 50L40 80L30 50L0 40L30 30z"/>', -1)).toEqual([]);
  });

  it('ends in a problem where nothing is left', () =>
    void expectProblem(offsetArtwork(artOf(SQUARE), -20, 'sharp'), 'artwork/offset-nothing'));
});

describe('an inlay', () => {
  const art = artOf(SQUARE);
  const sizes = (one: Artwork): number[] => [one.widthMm, one.heightMm];

  it.each([
    ['pocket', 0, 40.4, 40],
    ['insert', 0, 40, 39.6],
    ['both', 0, 40.2, 39.8],
    // A cut of 0.1 mm on the line: insert drawn larger, pocket drawn smaller by 0.05 on each side.
    ['pocket', 0.1, 40.3, 40.1],
    ['both', 0.3, 39.9, 40.1],
  ] as const)('gives way in the %s, cut %d mm wide', (from, kerfMm, pocket, insert) => {
    const inlay = expectOk(inlayPair(art, { clearanceMm: 0.2, from, kerfMm, corners: 'sharp' }));
    expect(sizes(inlay.pocket)[0]).toBeCloseTo(pocket, 3);
    expect(sizes(inlay.insert)[0]).toBeCloseTo(insert, 3);
    // What is left after the cut: pocket wider, insert narrower, by half of it on each side.
    expect(sizes(inlay.pocket)[0] + kerfMm - (sizes(inlay.insert)[0] - kerfMm)).toBeCloseTo(0.4, 3);
    expect(inlay.gapMm).toBeCloseTo(0.2, 12);
    expect([inlay.pocket, inlay.insert].map(({ pieces }) => pieces[0].name)).toEqual([
      'rect 1 pocket',
      'rect 1 insert',
    ]);
  });
});
