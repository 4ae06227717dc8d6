import { describe, expect, it } from 'vitest';
import { findingText, toldText } from '../../src/app/finding-text.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('what is told on the screen', () => {
  it('has no repair in brackets, and corners for vertices', () => {
    const text = 'There is a small hole with 3 edges: close it (repair: close hole), unless it is meant.';
    expect(findingText({ text }, 'mm')).toBe('There is a small hole with 3 edges: close it, unless it is meant.');
    expect(toldText('The vertex 4 and two vertices', 'mm')).toBe('The corner 4 and two corners');
  });

  it.each([
    ['bends to a radius of 25.4 mm: use 6 mm', 'bends to a radius of 1 in: use 1/4 in'],
    ['gaps of 0.9 mm and 12 mm', 'gaps of 0.035 in and 1/2 in'],
    ['it is 300 × 200 mm', 'it is 11 13/16 in × 7 7/8 in'],
    ['from 5 to 10 mm wide, 4 pieces', 'from 3/16 in to 3/8 in wide, 4 pieces'],
    ['an area of 12 mm², 20 %, 30°', 'an area of 12 mm², 20 %, 30°'],
    ['steps 1 to 9, 1837 mm of seam', 'steps 1 to 9, 72 5/16 in of seam'],
    ['10 mm/min and A4 mm', '3/8 in/min and A4 mm'],
  ])('%s in inches', (text, told) => {
    expect(plain(toldText(text, 'in', 'en'))).toBe(told);
  });

  it('has the decimal mark of the language, but in names of files', () => {
    const text = 'helm.v1.2.obj is 12.5 mm, 0.25 % and 3.5° off; see 1.2.3.';
    expect(toldText(text, 'mm', 'de')).toBe('helm.v1.2.obj is 12,5 mm, 0,25 % and 3,5° off; see 1.2.3.');
    expect(toldText(text, 'mm', 'en')).toBe(text);
  });
});
