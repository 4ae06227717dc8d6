import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { fitNeutral } from '../../src/project/neutral-fit.ts';
import { expectOk } from '../support/expect-ok.ts';

/** Arc of a mandrel under a strip whose neutral surface lies at `k`. */
const arcOf = (length: number, mandrel: number, t: number, k: number): number => length / (1 + (2 * k * t) / mandrel);

const readingsOf = (length: number, t: number, k: number, mandrels: readonly number[], slip: () => number = () => 0) =>
  mandrels.map((mandrelMm) => ({ mandrelMm, arcMm: arcOf(length, mandrelMm, t, k) + slip() }));

describe('the neutral fraction of a bent strip', () => {
  it('is worked by hand: 240 mm of 10 mm foam cover 218.182 mm of a tube of 100 mm', () => {
    const { k, each } = expectOk(
      fitNeutral({ lengthMm: 240, thicknessMm: 10, readings: [{ mandrelMm: 100, arcMm: 218.1818 }] }),
    );
    expect(k).toBeCloseTo(0.5, 5);
    expect(each).toHaveLength(1);
  });

  it('comes back from any strip and mandrels', () => {
    for (const k of [0, 0.33, 0.44, 0.5, 1]) {
      for (const t of [2, 6, 10, 15]) {
        const fit = expectOk(
          fitNeutral({ lengthMm: 200, thicknessMm: t, readings: readingsOf(200, t, k, [70, 90, 150]) }),
        );
        expect(fit.k).toBeCloseTo(k, 9);
        expect(fit.apart).toEqual([]);
      }
    }
  });

  it('lies in its range in about 95 of 100 tests with such errors', () => {
    const rand = seededRandom(7);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - rand())) * Math.cos(2 * Math.PI * rand());
    let held = 0;
    const tests = 1000;
    for (let n = 0; n < tests; n += 1) {
      const length = 240 + 0.5 * normal();
      const t = 10 + 0.1 * normal();
      const readings = readingsOf(240, 10, 0.45, [80, 110, 160], () => 0.5 * normal());
      const { k, plusMinus } = expectOk(fitNeutral({ lengthMm: length, thicknessMm: t, readings }));
      if (Math.abs(k - 0.45) <= plusMinus) held += 1;
    }
    expect(held / tests).toBeGreaterThan(0.93);
    expect(held / tests).toBeLessThan(0.995);
  });

  it('is the less sure the thinner the foam', () => {
    const sure = [2, 6, 10, 15].map(
      (t) =>
        expectOk(fitNeutral({ lengthMm: 240, thicknessMm: t, readings: readingsOf(240, t, 0.5, [100]) })).plusMinus,
    );
    expect(sure).toEqual([...sure].sort((a, b) => b - a));
  });

  it('names a reading that stands apart, and widens the range for it', () => {
    const good = readingsOf(240, 10, 0.5, [80, 100, 120, 160]);
    const alone = expectOk(fitNeutral({ lengthMm: 240, thicknessMm: 10, readings: good }));
    const bad = [...good.slice(0, 3), { ...good[3], arcMm: good[3].arcMm + 12 }];
    const fit = expectOk(fitNeutral({ lengthMm: 240, thicknessMm: 10, readings: bad }));
    expect(fit.apart).toEqual([3]);
    expect(fit.plusMinus).toBeGreaterThan(2 * alone.plusMinus);
  });

  it('refuses what cannot be, and says which bend', () => {
    const test = (arcMm: number, mandrelMm = 50) =>
      fitNeutral({
        lengthMm: 240,
        thicknessMm: 10,
        readings: [
          { mandrelMm: 100, arcMm: 218 },
          { mandrelMm, arcMm },
        ],
      });
    expect(test(200)).toMatchObject({ ok: false, problem: { code: 'neutral/reading' } });
    expect(test(0)).toMatchObject({ ok: false, problem: { text: expect.stringMatching(/^Bend 2 needs/) as string } });
    expect(test(250, 100)).toMatchObject({
      ok: false,
      problem: { text: expect.stringMatching(/more than/) as string },
    });
    expect(fitNeutral({ lengthMm: 240, thicknessMm: 10, readings: [] })).toMatchObject({ ok: false });
    const outside = fitNeutral({ lengthMm: 240, thicknessMm: 10, readings: [{ mandrelMm: 100, arcMm: 150 }] });
    expect(outside).toMatchObject({ ok: false, problem: { code: 'neutral/outside' } });
  });
});
