import { unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { zipSteps } from '../../../src/steps/write/zip.ts';

const long = Uint8Array.from({ length: 1_100_000 }, (_, i) => (i * i) % 251);
const FILES = new Map<string, Uint8Array | string>([
  ['sheet-1.svg', '<svg>größe 6 mm</svg>'],
  ['long.stl', long],
  ['page.png', long.slice(0, 100)],
  ['empty.csv', ''],
]);

it('another reader unpacks what was packed, in its order', () => {
  const back = unzipSync(runAtOnce(zipSteps(FILES, '2026-11-27')));
  expect(Object.keys(back)).toEqual([...FILES.keys()]);
  expect(new TextDecoder().decode(back['sheet-1.svg'])).toBe('<svg>größe 6 mm</svg>');
  // Compared as one: element by element takes seconds.
  expect(Buffer.compare(back['long.stl'], long)).toBe(0);
  expect(back['page.png']).toEqual(long.slice(0, 100));
  expect(back['empty.csv']).toHaveLength(0);
});

it('the same files and date give the same bytes, another date others', () => {
  const one = runAtOnce(zipSteps(FILES, '2026-11-27'));
  expect(runAtOnce(zipSteps(FILES, '2026-11-27'))).toEqual(one);
  expect(runAtOnce(zipSteps(FILES, '2026-11-28'))).not.toEqual(one);
});
