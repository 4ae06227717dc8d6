import { expect, it } from 'vitest';
import type { Finding, Severity } from '../../src/base/finding.ts';
import { thingsToMind, toldOf, verdictSentence, weighed } from '../../src/base/verdict.ts';

const finding = (severity: Severity, text = `${severity}.`): Finding => ({ code: 'a/b', severity, text, where: {} });
const sentence = (...findings: readonly Finding[]): string => verdictSentence(weighed(findings, true));

it('says in one sentence what all findings come to, without the names of remedies', () => {
  expect(sentence()).toBe('It will work.');
  expect(sentence(finding('note'), finding('warning'))).toBe('It will work if you look to one thing.');
  expect(sentence(finding('error', 'A vertex is loose (repair: weld).'), finding('warning'))).toBe(
    'It will not work: A corner is loose.',
  );
  expect(sentence(finding('error'), finding('error'))).toBe('It will not work: 2 things stop it.');
  expect(verdictSentence(weighed([], false))).toBe('Nothing to print yet.');
});

it('lists beside the sentence what it counts and does not tell itself', () => {
  const [stop, look, note] = [finding('error'), finding('warning'), finding('note')];
  expect(thingsToMind(weighed([look, note, stop], true))).toEqual([look]);
  expect(thingsToMind(weighed([look, stop, note, stop], true))).toEqual([stop, stop, look]);
  expect(thingsToMind(weighed([look], true))).toEqual([look]);
});

it('puts what stopped the job first, once', () => {
  const stopped = { code: 'cut/x', text: 'Stopped.', where: {} };
  expect(toldOf([finding('note')], stopped).map(({ code }) => code)).toEqual(['cut/x', 'a/b']);
  expect(toldOf([{ ...finding('error'), code: 'cut/x' }], stopped)).toHaveLength(1);
});
