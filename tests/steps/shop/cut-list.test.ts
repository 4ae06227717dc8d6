import { expect, it } from 'vitest';
import type { CutRow } from '../../../src/model/cut-row.ts';
import { cutListCsv } from '../../../src/steps/shop/cut-list.ts';

const row: CutRow = {
  number: 3,
  name: 'Cheek, left',
  quantity: 2,
  foam: 'EVA 6 mm',
  thicknessMm: 6,
  widthMm: 120.04,
  heightMm: 80.96,
  areaMm2: 9123,
  longestBevelMm: 0,
  steepestDeg: 0,
  saw: ['45° in under: A', 'square: B'],
};

it('is a table that any spreadsheet reads, sizes in mm, areas in cm²', () => {
  const lines = cutListCsv([row], [{ setting: '45° in under', number: 3, name: 'Cheek, left', edges: 'A' }]).split(
    '\r\n',
  );
  expect(lines[1]).toBe('3,"Cheek, left",2,EVA 6 mm,6,120.0,81.0,91.2,0.0,0.0,45° in under: A; square: B');
  expect(lines.slice(2)).toEqual(['', 'set the saw to,no.,piece,edges', '45° in under,3,"Cheek, left",A', '']);
});

it('takes names for what they are: no formula, no broken row', () => {
  const names = ['=1+1', '+A1', '-b', '@x', 'say "so"', 'two\nlines'];
  const text = cutListCsv(
    names.map((name) => ({ ...row, name })),
    [],
  );
  for (const cell of ["'=1+1", "'+A1", "'-b", "'@x", '"say ""so"""', '"two\nlines"'])
    expect(text).toContain(`,${cell},`);
});
