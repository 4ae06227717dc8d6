import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../scripts/lib/chromium.mjs';
import { isNodeNewEnough } from '../../scripts/lib/node-version.mjs';
import { hasSomebodyToShow } from '../../scripts/lib/open-browser.mjs';
import { countTests } from '../../scripts/lib/test-count.mjs';

const folder = mkdtempSync(join(tmpdir(), 'foamloft-scripts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the version of Node', () => {
  it.each([
    ['18.20.4', false],
    ['20.18.9', false],
    ['20.19.0', true],
    ['21.7.3', false],
    ['22.11.0', false],
    ['22.12.0', true],
    ['23.0.0', true],
    ['26.1.0', true],
  ])('%s is new enough: %s', (version, isNew) => expect(isNodeNewEnough(version)).toBe(isNew));
});

describe('the browser for the tests', () => {
  const chromium = join(folder, 'chromium');
  writeFileSync(chromium, '');

  it('is the one that is named', () => expect(findChromium({ CHROMIUM: chromium }, 'linux')).toBe(chromium));
  it('is not another when the one that is named is missing', () => {
    expect(() => findChromium({ CHROMIUM: join(folder, 'none'), PATH: folder }, 'linux')).toThrow('no such file');
  });
  it('is found on the path', () => {
    expect(findChromium({ PATH: ['', join(folder, 'none'), folder].join(delimiter) }, 'linux')).toBe(chromium);
  });
  it('may be nowhere', () => expect(findChromium({ PATH: join(folder, 'none') }, 'linux')).toBeUndefined());
});

describe('the address', () => {
  it('is only opened before somebody who sees it', () => {
    const env = { DISPLAY: ':0' };
    expect(hasSomebodyToShow(env, true)).toBe(true);
    expect(hasSomebodyToShow(env, false)).toBe(false);
    expect(hasSomebodyToShow({ ...env, CI: 'true' }, true)).toBe(false);
    expect(hasSomebodyToShow({ ...env, SSH_CONNECTION: '10.0.0.1' }, true)).toBe(false);
  });
});

describe('the count of tests', () => {
  const count = (testResults: unknown, isGood: boolean) => {
    const path = join(folder, 'report.json');
    writeFileSync(path, JSON.stringify({ testResults }));
    return countTests(path, isGood);
  };
  const tests = (...states: string[]) =>
    states.map((status, i) => ({ status, fullName: `test ${i}`, failureMessages: ['it broke\nat a line'] }));

  it('adds up the files, and leaves out what was skipped', () => {
    const files = [
      { name: 'a.ts', status: 'passed', assertionResults: tests('passed', 'passed', 'pending') },
      { name: 'b.ts', status: 'failed', assertionResults: tests('passed', 'failed') },
    ];
    expect(count(files, false)).toEqual({
      passed: 3,
      failed: 1,
      failedFiles: ['b.ts'],
      faults: ['b.ts: test 1: it broke'],
    });
  });
  it('counts a file that could not be read', () => {
    expect(count([{ name: 'a.ts', status: 'failed', message: 'no such file', assertionResults: [] }], false)).toEqual({
      passed: 0,
      failed: 1,
      failedFiles: ['a.ts'],
      faults: ['a.ts: no such file'],
    });
  });
  it('counts a bad end without a failed test', () => {
    expect(count([{ status: 'passed', assertionResults: tests('passed') }], false)).toMatchObject({
      passed: 1,
      failed: 1,
    });
    expect(countTests(join(folder, 'none.json'), false)).toMatchObject({ passed: 0, failed: 1, failedFiles: [] });
  });
});
