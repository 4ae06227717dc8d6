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
