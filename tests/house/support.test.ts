import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fail, ok } from '../../src/base/result.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { forAll } from '../support/for-all.ts';
import { expectGolden } from '../support/golden.ts';

describe('forAll', () => {
  beforeEach(() => vi.stubEnv('FOAMLOFT_SEED', undefined));
  afterEach(() => vi.unstubAllEnvs());

  const valuesOf = async (seed: number): Promise<number[]> => {
    const values: number[] = [];
    await forAll(
      (rand) => rand(),
      (value) => void values.push(value),
      { seed, runs: 500 },
    );
    return values;
  };

  it('tries the same numbers for the same seed, and others for another', async () => {
    const values = await valuesOf(7);
    expect(values).toHaveLength(500);
    expect(await valuesOf(7)).toEqual(values);
    expect(await valuesOf(8)).not.toEqual(values);
  });

  it('spreads its numbers evenly over [0, 1)', async () => {
    const values = await valuesOf(1);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThan(1);
    // 50 in each tenth of 500; four standard deviations of the binomial are 27.
    for (let tenth = 0; tenth < 10; tenth += 1) {
      expect(Math.abs(values.filter((value) => Math.floor(10 * value) === tenth).length - 50)).toBeLessThan(27);
    }
  });

  it('fails with the seed, and with a value near the simplest one that fails', async () => {
    const failing = forAll(
      (rand) => ({ width: 100 * rand(), height: 100 * rand() }),
      ({ width }) => {
        if (width > 30) throw new Error(`too wide: ${width}`);
      },
      { seed: 5 },
    );
    const message = await failing.then(
      () => 'passed',
      (error: Error) => error.message,
    );
    expect(message).toMatch(/^forAll failed with seed 5 in run \d+, made simpler \d+ times\./);
    expect(message).toContain('too wide');
    const value = JSON.parse(/^value: (.*)$/m.exec(message)?.[1] ?? '{}') as { width: number; height: number };
    expect(value.width).toBeGreaterThan(30);
    expect(value.width).toBeLessThan(30.001);
    expect(value.height).toBe(0);
  });

  it('waits for a check that takes time', async () => {
    await expect(
      forAll(
        (rand) => rand(),
        async () => {
          await Promise.resolve();
          throw new Error('late');
        },
      ),
    ).rejects.toThrow('late');
  });

  it('stops making simpler in time', async () => {
    const failing = forAll(
      (rand) => Array.from({ length: 3000 }, rand),
      (values) => expect(Math.max(...values)).toBeLessThan(0.9),
    );
    await expect(failing).rejects.toThrow('forAll failed with seed 1 in run 1');
  });

  it('says when the generator itself fails', async () => {
    const gen = (): number => {
      throw new Error('no value');
    };
    await expect(forAll(gen, () => {})).rejects.toThrow('no value');
  });
});

describe('expectGolden', () => {
  const folder = mkdtempSync(join(tmpdir(), 'foamloft-golden-'));
  const url = pathToFileURL(`${folder}/`);
  afterEach(() => {
    vi.unstubAllEnvs();
    rmSync(folder, { recursive: true, force: true });
  });

  it('fails when the kept text is missing, and tells the command', () => {
    vi.stubEnv('FOAMLOFT_UPDATE_GOLDEN', undefined);
    expect(() => expectGolden('a.txt', 'one', url)).toThrow('npm run golden');
  });

  it('writes only when told to, then compares', () => {
    vi.stubEnv('FOAMLOFT_UPDATE_GOLDEN', '1');
    expectGolden('deep/a.txt', 'one', url);
    expect(readFileSync(join(folder, 'deep/a.txt'), 'utf8')).toBe('one');
    vi.stubEnv('FOAMLOFT_UPDATE_GOLDEN', undefined);
    expectGolden('deep/a.txt', 'one', url);
    expect(() => expectGolden('deep/a.txt', 'two', url)).toThrow('differs from tests/golden/deep/a.txt');
    expect(readFileSync(join(folder, 'deep/a.txt'), 'utf8')).toBe('one');
  });
});

describe('expectOk and expectProblem', () => {
  it('give the value and the problem', () => {
    expect(expectOk(ok(3))).toBe(3);
    expect(expectProblem(fail('read/empty', 'Choose another file.'), 'read/empty').text).toBe('Choose another file.');
  });

  it('fail with what was there instead', () => {
    expect(() => expectOk(fail('read/empty', 'Choose another file.'))).toThrow('read/empty: Choose another file.');
    expect(() => expectProblem(fail('read/empty', 'Choose another file.'), 'read/hole')).toThrow('read/empty');
    expect(() => expectProblem(ok(3), 'read/hole')).toThrow('got a value');
  });
});
