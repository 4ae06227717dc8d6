import { expect, it } from 'vitest';
import { areasFrom } from '../../src/cli/area-option.ts';
import { simplifyFrom } from '../../src/cli/simplify-option.ts';

it('takes triangles, a distance, or nothing', () => {
  expect(simplifyFrom(undefined)).toBeUndefined();
  expect(simplifyFrom('5000')).toEqual({ triangles: 5000 });
  expect(simplifyFrom('0.4mm')).toEqual({ deviationMm: 0.4 });
  expect(simplifyFrom('0,4 mm')).toEqual({ deviationMm: 0.4 });
  expect(simplifyFrom('off')).toBeNull();
});

it.each(['', '3', '4.5', '-1mm', '0mm', 'mm', 'few', '1e9mm'])('refuses to simplify by “%s”', (word) => {
  expect(() => simplifyFrom(word)).toThrow('--simplify takes');
});

it('says of areas by their names', () => {
  expect(areasFrom(['visor=clear', 'a=b=soft'])).toEqual([
    { name: 'visor', word: 'clear' },
    { name: 'a=b', word: 'soft' },
  ]);
  for (const word of ['visor', '=clear', 'visor=hard']) expect(() => areasFrom([word])).toThrow('--area looks like');
});
