import { describe, expect, it } from 'vitest';
import { foamId, layerId, pieceId, seamId } from '../../../src/base/ids.ts';
import type { FoamStrip } from '../../../src/model/foam-strip.ts';
import { stripTemplate } from '../../../src/steps/foam/strip-template.ts';
import { makePages } from '../../../src/steps/tile/make-pages.ts';
import { wordsBox } from '../../../src/steps/tile/words-box.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { shieldTemplate } from '../../support/hand-made-templates.ts';
import { collisions, PAPER_CASES, pageInput, rejoinError } from './support.ts';

function strip(number: number, lengthMm: number, change: Partial<FoamStrip> = {}): FoamStrip {
  return {
    id: pieceId(`strip-s${number}`),
    number,
    name: `Strip between 3 and 4, seam ${'ABCDEF'[number % 6]}`,
    quantity: 2,
    thicknessMm: 6,
    tracedSide: 'face',
    revision: `S${number}`,
    seam: seamId(`s${number}`),
    letter: 'ABCDEF'[number % 6],
    layer: layerId('layer-1'),
    foam: foamId('eva-6'),
    use: 'between',
    lengthMm,
    faceMm: { min: 9, max: 11.6 },
    backMm: { min: 6, max: 6 },
    bevelDeg: 25,
    areaMm2: 11.6 * lengthMm,
    ...change,
  };
}

const STRIPS = [
  strip(2, 90),
  strip(3, 340),
  strip(4, 28, { faceMm: { min: 6, max: 6 }, backMm: { min: 11, max: 11.6 }, bevelDeg: -25 }),
  strip(5, 900, { use: 'over', bevelDeg: 0, faceMm: { min: 20, max: 20 }, backMm: { min: 20, max: 20 } }),
];

describe.each(PAPER_CASES)('strips on $name', ({ change }) => {
  const shield = shieldTemplate('shield');
  const bare = pageInput({ ...change, templates: [shield] });
  const templates = [shield, ...STRIPS.map((one) => stripTemplate(one, 'Lamplighter', 'EVA 6 mm'))];
  const set = expectOk(makePages({ ...bare, templates, beside: STRIPS }));

  it('are drawn whole, in true size, with no words in the way', () => {
    for (const role of ['cut', 'bevel'] as const) expect(rejoinError(templates, set, role), role).toBeLessThan(0.01);
    expect(set.pages.flatMap(collisions)).toEqual([]);
    const words = set.pages.flatMap((page) => page.drawing.words.map((line) => ({ page, line })));
    for (const { page, line } of words) {
      const { minX, maxX } = wordsBox(line);
      expect(minX > bare.marginMm - 0.01 && maxX < page.widthMm - bare.marginMm + 0.01, line.text).toBe(true);
    }
    for (const { number } of STRIPS)
      expect(words.some(({ line }) => line.text.startsWith(`${number}  Strip between`))).toBe(true);
  });
});
