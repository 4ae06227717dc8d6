import { expect, it } from 'vitest';
import { fileNameOf } from '../../src/base/file-name.ts';

it('names a zip after the job, without what a system may refuse', () => {
  expect(["Lamplighter's helm", 'Lamplighter\u2019s helm', 'Tür / 2:3', '???'].map(fileNameOf)).toEqual([
    'Lamplighters-helm',
    'Lamplighters-helm',
    'Tür-2-3',
    'job',
  ]);
});

it('leaves no way out of the folder, no device and nothing too long', () => {
  expect(
    ['../../etc/passwd', 'C:\\x', 'CON', 'nul', 'com1', '.', 'a\u0000b', '\u202Eabc', '\uD800'].map(fileNameOf),
  ).toEqual([...['etc-passwd', 'C-x', 'CON-job', 'nul-job', 'com1-job', 'job', 'a-b', 'abc', 'job']]);
  const long = fileNameOf('\u{20000}'.repeat(300));
  expect(new TextEncoder().encode(`${long}.foamloft.json`).length).toBeLessThanOrEqual(255);
});
