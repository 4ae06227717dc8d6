import { expect, it } from 'vitest';
import { seamId } from '../../src/base/ids.ts';
import { springLines } from '../../src/cli/spring-lines.ts';
import type { SeamPull } from '../../src/model/springing.ts';

const pull = (letter: string, pullNPerMm: number): SeamPull => ({
  seam: seamId(`seam-${letter}`),
  letter,
  pullNPerMm,
  way: 'opensFace',
  opensMm: 12,
  acrossNPerMm: 0,
  shearNPerMm: 0,
  peelNPerMm: 0,
  momentN: 0,
  at: [0, 0, 0],
});

it('names the three joints that pull most, and says that it is a guide', () => {
  const seams = [pull('B', 0.8), pull('A', 0.5), pull('D', 0.25), pull('C', 0.1)];
  const [first, second] = springLines({ springing: { pieces: [], seams } });
  expect(first).toBe(
    [
      'warm or tape first: B opens at the face, 8.0 N/cm, let go up to 12 mm off',
      'A opens at the face, 5.0 N/cm, let go up to 12 mm off',
      'D opens at the face, 2.5 N/cm, let go up to 12 mm off',
    ].join('; '),
  );
  expect(second).toContain('a guide');
  expect(second).toContain('1.5 N/mm²');
});

it('says nothing where nothing pulls', () => {
  expect(springLines({ springing: { pieces: [], seams: [pull('A', 0)] } })).toEqual([]);
  expect(springLines({ springing: null })).toEqual([]);
});
