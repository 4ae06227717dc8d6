import { describe, expect, it } from 'vitest';
import { windStrip } from '../../../src/steps/build-up/wind.ts';
import { straightSpan } from '../../../src/steps/build-up/profile.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { IS_LONG } from '../../support/long.ts';
import { numbersOf } from '../../reference/handbook/cases.ts';
import { winding } from './wishes.ts';

const rod = (diameter: number, to: number) => [straightSpan(0, diameter / 2, to, diameter / 2)];

describe('a strip wound round a rod', () => {
  it.each(['G1', 'G2'])('is as long as handbook case %s says', (id) => {
    const { inputs, expected } = numbersOf(id);
    const { rod_diameter: d, strip_width: widthMm, overlap: overlapMm, covered_length: toMm } = inputs;
    const made = expectOk(windStrip(rod(d, toMm), winding({ toMm, widthMm, by: { overlapMm } }), 1)).winding;
    expect(made.leadDeg[0]).toBeCloseTo(expected.lead_angle_deg, 4);
    expect(made.pitchMm[1]).toBeCloseTo(expected.pitch, 4);
    expect(made.turns).toBeCloseTo(expected.turns, 4);
    expect(made.stripMm).toBeCloseTo(expected.strip_length, 4);
    expect(made.overlapMm[0]).toBeCloseTo(overlapMm, 9);
    // A mark for each turn, one pitch after the other.
    const [{ atMm }] = made.crossings;
    expect(atMm).toHaveLength(Math.floor(expected.turns) + 1);
    atMm.forEach((x, i) => expect(x).toBeCloseTo(i * expected.pitch, 4));
  });

  it('of some thickness goes round its neutral surface, pi (D + 2 k t)', () => {
    const made = expectOk(
      windStrip(rod(30, 600), winding({ thicknessMm: 2, neutralFraction: 0.4, by: { pitchMm: 22 }, keep: 'pitch' }), 1),
    );
    const around = Math.PI * (30 + 2 * 0.4 * 2);
    expect(made.winding.stripMm).toBeCloseTo((600 / 22) * Math.hypot(around, 22), 8);
    // As a parallelogram cut flush with the rod's ends it covers length times width.
    expect(made.piece?.areaMm2).toBeCloseTo(made.winding.stripMm * 20, 6);
    expect(made.winding.cutMm).toBeCloseTo(made.winding.stripMm + 20 / Math.tan(Math.atan(22 / around)), 8);
  });

  it('with several starts fills one pitch with all of them, evenly round', () => {
    const made = expectOk(windStrip(rod(30, 300), winding({ toMm: 300, starts: 3, by: { overlapMm: 2 } }), 1)).winding;
    expect(Math.sin((made.leadDeg[0] * Math.PI) / 180)).toBeCloseTo((3 * 18) / (30 * Math.PI), 12);
    const [first, second] = made.crossings;
    expect(second.atMm[0] - first.atMm[0]).toBeCloseTo((made.pitchMm[0] * 2) / 3, 6);
  });
});

/** A cone whose neutral surface is the one it is wound on. */
const cone = (rand: () => number) => {
  const [r0, long] = [15 + 15 * rand(), 100 + 200 * rand()];
  return { r0, long, r1: r0 + (5 + 15 * rand()) };
};

describe('a strip wound round a taper', () => {
  it('of one pitch is as long as the integral of sqrt(A² + (B r)²) in closed form', () =>
    forAll(
      (rand) => ({ ...cone(rand), pitch: 5 + 20 * rand() }),
      ({ r0, r1, long, pitch }) => {
        const profile = [straightSpan(0, r0, long, r1)];
        const { winding: made } = expectOk(
          windStrip(profile, winding({ toMm: long, widthMm: 3, by: { pitchMm: pitch }, keep: 'pitch' }), 1),
        );
        const m = (r1 - r0) / long;
        const [a, b] = [Math.hypot(1, m), (2 * Math.PI) / pitch];
        const whole = (u: number): number => (u * Math.hypot(a, u) + a * a * Math.asinh(u / a)) / 2;
        expect(made.stripMm / ((whole(b * r1) - whole(b * r0)) / (m * b))).toBeCloseTo(1, 10);
        expect(made.turns).toBeCloseTo(long / pitch, 9);
      },
      { runs: IS_LONG ? 20 : 6 },
    ));

  it('of one overlap covers the side: length times advance is its area', () =>
    forAll(
      (rand) => ({ ...cone(rand), width: 5 + 10 * rand(), starts: 1 + Math.floor(3 * rand()), k: rand() }),
      ({ r0, r1, long, width, starts, k }) => {
        const wish = winding({
          toMm: long,
          widthMm: width,
          thicknessMm: 2,
          neutralFraction: k,
          by: { overlapMm: 1 },
          starts,
        });
        const { winding: made } = expectOk(windStrip([straightSpan(0, r0, long, r1)], wish, 1));
        const slant = Math.hypot(long, r1 - r0);
        const out = 2 * k * 2 * (long / slant);
        expect((starts * made.stripMm * (width - 1)) / (Math.PI * (r0 + r1 + out) * slant)).toBeCloseTo(1, 10);
        expect(made.overlapMm[1] - made.overlapMm[0]).toBeLessThan(1e-9);
      },
      { runs: IS_LONG ? 20 : 6 },
    ));

  it('that is kept straight runs straight in the developed cone', () =>
    forAll(
      (rand) => ({ ...cone(rand), pitch: 10 + 20 * rand() }),
      ({ r0, r1, long, pitch }) => {
        const { winding: made } = expectOk(
          windStrip(
            [straightSpan(0, r0, long, r1)],
            winding({ toMm: long, by: { pitchMm: pitch }, keep: 'straight' }),
            1,
          ),
        );
        const sin = (r1 - r0) / Math.hypot(long, r1 - r0);
        const [from, to, lead] = [r0 / sin, r1 / sin, (made.leadDeg[0] * Math.PI) / 180];
        // A straight line that begins `from` from the apex and runs off under the lead: law of cosines for where it ends.
        const line = -from * Math.sin(lead) + Math.sqrt((from * Math.sin(lead)) ** 2 + to * to - from * from);
        expect(made.stripMm / line).toBeCloseTo(1, 9);
        const angle = Math.atan2(line * Math.cos(lead), from + line * Math.sin(lead));
        expect((2 * Math.PI * made.turns * sin) / angle).toBeCloseTo(1, 8);
        expect(made.edgeStretchPct).toBe(0);
      },
      { runs: IS_LONG ? 20 : 6 },
    ));

  it.each(['pitch', 'overlap'] as const)(
    'cut to its true flat shape (%s kept) ends where the developed cone says',
    (keep) =>
      forAll(
        (rand) => ({ ...cone(rand), width: 10 + 10 * rand() }),
        ({ r0, r1, long, width }) => {
          const wish = winding({
            toMm: long,
            widthMm: width,
            thicknessMm: 1,
            neutralFraction: 0,
            by: { overlapMm: 0 },
            keep,
            cut: 'curved',
          });
          const read = windStrip([straightSpan(0, r0, long, r1)], wish, 1);
          // Some curl over themselves, which is said.
          if (!read.ok) return expect(read.problem.text).toContain('curls over itself');
          const { piece, winding: made } = read.value;
          const sin = (r1 - r0) / Math.hypot(long, r1 - r0);
          const [p, q, angle] = [r0 / sin, r1 / sin, 2 * Math.PI * made.turns * sin];
          const across = Math.sqrt(p * p + q * q - 2 * p * q * Math.cos(angle));
          const [lower, , upper] = (piece?.outline ?? []).map(({ segments }) => segments[0]);
          const [a, b] = [lower.from, upper.to];
          const [c, d] = [lower.to, upper.from];
          const [start, end] = [
            { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
            { x: (c.x + d.x) / 2, y: (c.y + d.y) / 2 },
          ];
          expect(Math.hypot(end.x - start.x, end.y - start.y) / across).toBeCloseTo(1, 6);
          // Towards the thick end it bends to the apex, which lies on the side of the core's start.
          const [, second, third] = lower.kind === 'curve' ? lower.points : [];
          expect(third.y).toBeLessThan(second.y);
          // But for the slanting ends, which take off and put on a little unlike each other.
          expect(Math.abs((piece?.areaMm2 ?? 0) / (made.stripMm * width) - 1)).toBeLessThan(0.03);
          return undefined;
        },
        { runs: IS_LONG ? 5 : 2 },
      ),
  );

  it('tells what the edges of a straight strip must give', () => {
    const wish = winding({ toMm: 50, widthMm: 25, by: { pitchMm: 22 }, keep: 'pitch' });
    const { findings, winding: made } = expectOk(windStrip([straightSpan(0, 20, 50, 32)], wish, 1));
    expect(made.edgeStretchPct).toBeGreaterThan(10);
    expect(findings.map(({ code }) => code)).toContain('core/winding-sideways');
  });

  it('that comes over a smooth belly follows it: its length by a fine sum of chords', () => {
    const belly = [{ from: 0, to: 100, c: [20, 0.6, -0.006, 0] as const }];
    const wish = winding({ toMm: 100, widthMm: 8, thicknessMm: 2, by: { pitchMm: 9 }, keep: 'pitch' });
    const { winding: made } = expectOk(windStrip(belly, wish, 1));
    const steps = 400_000;
    let [sum, last] = [0, [NaN, NaN, NaN]];
    for (let i = 0; i <= steps; i += 1) {
      const x = (100 * i) / steps;
      const [slope, r] = [0.6 - 0.012 * x, 20 + 0.6 * x - 0.006 * x * x];
      const [along, out] = [x - slope / Math.hypot(1, slope), r + 1 / Math.hypot(1, slope)];
      const turn = (2 * Math.PI * x) / 9;
      const here = [along, out * Math.cos(turn), out * Math.sin(turn)];
      if (i > 0) sum += Math.hypot(here[0] - last[0], here[1] - last[1], here[2] - last[2]);
      last = here;
    }
    // Chords are short of the curve by a share of (turn per step)² / 24.
    expect(made.stripMm / sum).toBeCloseTo(1, 7);
  });
});

describe('what cannot be wound', () => {
  it('is refused with what to change', () => {
    const step = [straightSpan(0, 20, 100, 20), straightSpan(100, 30, 200, 30)];
    expect(expectProblem(windStrip(step, winding({ toMm: 200 }), 1), 'core/winding').text).toContain('step of 10.0 mm');
    const thin = [straightSpan(0, 20, 100, 4)];
    expectProblem(windStrip(thin, winding({ toMm: 100, widthMm: 30 }), 1), 'core/winding');
    expectProblem(windStrip(thin, winding({ toMm: 100, by: { pitchMm: 20 }, keep: 'straight' }), 1), 'core/winding');
    expectProblem(windStrip(rod(30, 600), winding({ widthMm: 100 }), 1), 'core/winding');
    expect(
      expectProblem(
        windStrip(rod(30, 600), winding({ widthMm: 1, by: { pitchMm: 0.01 }, keep: 'pitch' }), 1),
        'core/winding',
      ).text,
    ).toContain('more than 1000 times');
  });

  it('a left hand mirrors a right one, and still runs counter-clockwise', () => {
    const [right, left] = (['right', 'left'] as const).map(
      (hand) => expectOk(windStrip(rod(30, 600), winding({ thicknessMm: 1, hand }), 1)).piece,
    );
    expect(left?.areaMm2).toBeCloseTo(right?.areaMm2 ?? 0, 6);
    const xs = (piece: typeof right) =>
      (piece?.outline ?? []).map(({ segments }) => segments[0].from.x).sort((a, b) => a - b);
    xs(left).forEach((x, i) => expect(x).toBeCloseTo(-xs(right)[3 - i], 9));
  });
});
