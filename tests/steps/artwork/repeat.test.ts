import { describe, expect, it } from 'vitest';
import { chainLength } from '../../../src/geom/outline.ts';
import { placesAlong } from '../../../src/steps/artwork/along-path.ts';
import { readPathData } from '../../../src/steps/artwork/path-data.ts';
import type { AlongWish, RoundWish } from '../../../src/model/artwork-craft.ts';
import { repeatAlong } from '../../../src/steps/artwork/repeat-along.ts';
import { repeatRound } from '../../../src/steps/artwork/repeat-round.ts';
import { pathLength } from '../../../src/steps/artwork/segments.ts';
import { splitSegment } from '../../../src/steps/artwork/split-segment.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { artOf } from './art-of.ts';

const RIVET = artOf('<circle id="rivet" cx="20" cy="20" r="4"/>');
const pathOf = (d: string) => expectOk(readPathData(d))[0];

describe('round a barrel', () => {
  const round = (wish: Partial<RoundWish>) =>
    repeatRound(RIVET, {
      repeat: { count: 12 },
      spacedOn: 'outside',
      barrelMm: 90,
      thicknessMm: 6,
      neutralFraction: 0.5,
      stripMm: 30,
      as: 'engrave',
      ...wish,
    });

  it('spaces on the strip, inside and outside, by pi (D + 2 k t)', () => {
    const { spacing, differenceMm, work, artwork } = expectOk(round({}));
    // 282.743 / 12, 301.593 / 12 and 320.442 / 12.
    expect(spacing.inside).toBeCloseTo(23.5619449, 6);
    expect(spacing.flat).toBeCloseTo(25.1327412, 6);
    expect(spacing.outside).toBeCloseTo(26.7035376, 6);
    expect(differenceMm).toBeCloseTo(Math.PI / 2, 12);
    expect(chainLength(work.pieces[0].outline[0].segments)).toBeCloseTo(96 * Math.PI, 10);
    const middles = artwork.pieces.map(({ regions }) => regions[0].outline.path?.segments[0]);
    expect(middles.map((one) => (one?.kind === 'arc' ? one.centre.x : 0))).toEqual(
      middles.map((_, i): unknown => expect.closeTo(8 * Math.PI * (i + 0.5), 9)),
    );
    // Bent to the neutral radius of 48 mm they stand 30 degrees apart, and so do the last and the first over the joint.
    const turns = middles.map((one) => (one?.kind === 'arc' ? one.centre.x / 48 : 0));
    for (const [i, turn] of turns.entries())
      expect(((turns[(i + 1) % 12] - turn + 2 * Math.PI) % (2 * Math.PI)) - Math.PI / 6).toBeCloseTo(0, 12);
    expect(work.pieces[0].lines.map(({ role }) => role)).toEqual(Array(12).fill('engrave'));
    expect(work.pieces[0].bend.leastRadiusMm).toBe(48);
  });

  it.each([
    ['outside', 13],
    ['flat', 12],
    ['inside', 11],
  ] as const)('fits a wished spacing of 25 mm on the %s', (spacedOn, count) => {
    const made = expectOk(round({ repeat: { spacingMm: 25 }, spacedOn }));
    expect(made.count).toBe(count);
    expect(made.spacing[spacedOn] * count).toBeCloseTo(made.round[spacedOn], 9);
  });

  it('tells copies that touch, and refuses a strip too narrow', () => {
    const made = round({ repeat: { count: 60 } });
    expect(made.ok ? made.notes.map(({ code }) => code) : []).toContain('artwork/copies-touch');
    expectProblem(round({ stripMm: 7 }), 'artwork/strip-narrow');
    expectProblem(round({ repeat: { spacingMm: 0.01 } }), 'artwork/too-many');
  });
});

describe('along a line', () => {
  const along = (d: string, wish: Partial<AlongWish>) =>
    repeatAlong(RIVET, pathOf(d), {
      repeat: { count: 5 },
      startMm: 0,
      endMm: 0,
      ends: 'both',
      stand: 'along',
      ...wish,
    });
  const xs = (d: string, wish: Partial<AlongWish>) => expectOk(along(d, wish)).places.map(({ at }) => at.x);

  it.each([
    [{}, [0, 25, 50, 75, 100]],
    [{ ends: 'first' }, [0, 20, 40, 60, 80]],
    [{ ends: 'none' }, [10, 30, 50, 70, 90]],
    [{ startMm: 10, endMm: 30 }, [10, 25, 40, 55, 70]],
    [{ repeat: { spacingMm: 34 } }, [0, 100 / 3, 200 / 3, 100]],
    [{ repeat: { count: 1 } }, [50]],
  ] as const)('%j on 100 mm', (wish, expected) => {
    expect(xs('M0 0H40L100 0', wish)).toEqual(
      (expected as readonly number[]).map((x): unknown => expect.closeTo(x, 9)),
    );
  });

  it('goes round a circle and an ellipse by true length, turned with it', () => {
    const circle = expectOk(along('M50 0a50 50 0 0 1 0 100a50 50 0 0 1 0-100z', { repeat: { count: 8 } }));
    for (const [i, { at, turnRad }] of circle.places.entries()) {
      const angle = -Math.PI / 2 + (i * Math.PI) / 4;
      expect(Math.hypot(at.x - 50 - 50 * Math.cos(angle), at.y - 50 - 50 * Math.sin(angle))).toBeLessThan(1e-8);
      expect(Math.cos(turnRad - angle - Math.PI / 2)).toBeCloseTo(1, 12);
    }
    // A quarter of an ellipse's length ends on its axis, where its parameter, not its length, is at 90 degrees.
    const ellipse = pathOf('M80 0A80 20 0 0 1 -80 0A80 20 0 0 1 80 0z');
    const [, quarter, half] = placesAlong(ellipse, [0, pathLength(ellipse) / 4, pathLength(ellipse) / 2]);
    expect(Math.hypot(quarter.at.x, quarter.at.y - 20)).toBeLessThan(1e-7);
    expect(Math.hypot(half.at.x + 80, half.at.y)).toBeLessThan(1e-7);
    expect(expectOk(along('M0 0Q50 80 100 0', { stand: 'upright' })).places.map(({ turnRad }) => turnRad)).toEqual([
      0, 0, 0, 0, 0,
    ]);
  });

  it('parts any curve into equal true lengths', () =>
    forAll(
      (rand) =>
        `M0 0C${200 * rand()} ${200 * rand()} ${200 * rand()} ${-100 * rand()} 100 ${50 * rand()}A90 ${40 + 50 * rand()} ${180 * rand()} 0 1 200 20`,
      (d) => {
        const path = pathOf(d);
        const whole = pathLength(path);
        const places = placesAlong(
          path,
          [0.2, 0.5, 0.9].map((share) => share * whole),
        );
        for (const [k, { segment, share, at }] of places.entries()) {
          const before = path.segments.slice(0, segment);
          const [part] = splitSegment(path.segments[segment], share);
          const length = pathLength({ segments: [...before, part], isClosed: false });
          expect(Math.abs(length / whole - [0.2, 0.5, 0.9][k])).toBeLessThan(1e-9);
          expect([part.to.x, part.to.y]).toEqual([at.x, at.y]);
        }
      },
      { runs: 20 },
    ));

  it('refuses a line that is too short', () =>
    void expectProblem(along('M0 0H40', { startMm: 30, endMm: 20 }), 'artwork/along-short'));
});
