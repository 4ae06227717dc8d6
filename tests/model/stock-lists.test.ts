import { describe, expect, it } from 'vitest';
import { CAUTION_ENDING, CAUTION_WORK, CAUTIONS, cautionTexts, checkCautions } from '../../src/model/cautions.ts';
import { checkFoams, DEFAULT_FOAMS } from '../../src/model/foams.ts';
import { checkPapers, findPaper, PAPERS } from '../../src/model/papers.ts';

describe('papers', () => {
  it('gives each standard size exactly', () => {
    const size = (name: string) => {
      const found = findPaper(name);
      if (!found.ok) throw new Error(found.problem.text);
      return [found.value.widthMm, found.value.heightMm];
    };
    expect(size('a4')).toEqual([210, 297]);
    expect(size('A0')).toEqual([841, 1189]);
    expect(size('letter')).toEqual([215.9, 279.4]);
    expect(size('Legal')).toEqual([215.9, 355.6]);
    expect(size('TABLOID')).toEqual([279.4, 431.8]);
    expect(size('ansi-c')).toEqual([431.8, 558.8]);
    expect(size('ANSI D')).toEqual([558.8, 863.6]);
    expect(size('ansi e')).toEqual([863.6, 1117.6]);
  });

  it('makes rolls and own sizes, the latter upright', () => {
    expect(findPaper('roll', 914)).toMatchObject({ ok: true, value: { widthMm: 914, heightMm: 5000, roll: true } });
    expect(findPaper('roll')).toMatchObject({ ok: true, value: { widthMm: 610 } });
    expect(findPaper('custom', 500, 300)).toMatchObject({
      ok: true,
      value: { widthMm: 300, heightMm: 500, roll: false },
    });
  });

  it('says what is wrong with a name or a size', () => {
    for (const [name, width, height] of [
      ['A9'],
      ['custom'],
      ['custom', 20, 300],
      ['custom', 300, Number.NaN],
      ['roll', 6000],
      [''],
    ] as const) {
      const found = findPaper(name, width, height);
      expect(found.ok).toBe(false);
      if (!found.ok) expect(found.problem.text).toMatch(/choose|needs|must be/);
    }
  });

  it('refuses a broken list', () => {
    expect(() => checkPapers([{ name: 'wide', widthMm: 300, heightMm: 200, roll: false }])).toThrow('wide');
    expect(() => checkPapers([...PAPERS, PAPERS[0]])).toThrow('twice');
  });
});

describe('foams', () => {
  it('offers four thicknesses in two sizes', () => {
    expect(DEFAULT_FOAMS.map((foam) => foam.thicknessMm)).toEqual([2, 2, 6, 6, 10, 10, 15, 15]);
    expect(DEFAULT_FOAMS.some((foam) => foam.id === 'eva-6')).toBe(true);
  });

  it('refuses a broken list', () => {
    const [foam] = DEFAULT_FOAMS;
    expect(() => checkFoams([{ ...foam, neutralFraction: 1.2 }])).toThrow('k 1.2');
    expect(() => checkFoams([{ ...foam, sheetWidthMm: 0 }])).toThrow('positive');
    expect(() => checkFoams([{ ...foam, stretchLimits: { noticePct: 9, tooMuchPct: 8 } }])).toThrow('order');
    expect(() => checkFoams([foam, foam])).toThrow('twice');
  });
});

describe('cautions', () => {
  it('has one for every kind of work, and says the label last', () => {
    for (const work of CAUTION_WORK) expect(cautionTexts(work).length, work).toBeGreaterThan(1);
    expect(cautionTexts('cut').at(-1)).toBe(CAUTION_ENDING);
    expect(CAUTION_ENDING).toMatch(/^Read the label/);
    expect(cautionTexts()).toEqual([]);
  });

  it('never says more than the work needs', () => {
    expect(cautionTexts('cut').join(' ')).not.toMatch(/vapour|paint/);
  });

  it('refuses a broken list', () => {
    expect(() => checkCautions([{ ...CAUTIONS[0], text: '' }])).toThrow('words');
    expect(() => checkCautions([{ ...CAUTIONS[0], work: [] }])).toThrow('work');
    expect(() => checkCautions([CAUTIONS[0], CAUTIONS[0]])).toThrow('twice');
  });
});
