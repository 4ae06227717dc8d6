import { describe, expect, it } from 'vitest';
import { formatSixtyFourths, formatThickness } from '../../src/base/format-length.ts';
import { inInches } from '../../src/base/in-inches.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('lengths in inches', () => {
  // 25.4 mm to the inch, exactly (international yard and pound agreement, 1959).
  it.each([
    ['lap 12.7 mm, on top, step 6.35 mm', 'lap 1/2 in, on top, step 1/4 in'],
    ['254 × 101.6 mm', '10 in × 4 in'],
    ['score the face 2 mm deep', 'score the face 0.079 in deep'],
    ['Marks: on both sides at 25.4, 50.8 and 76.2 mm.', 'Marks: on both sides at 1 in, 2 in and 3 in.'],
    ['its middle at 25.4, −50.8, 0 mm of the sculpt', 'its middle at 1 in, −2 in, 0 in of the sculpt'],
    ['645.16 cm² of pieces', '100 in² of pieces'],
    ['smaller than 4 mm²', 'smaller than 4 mm²'],
    ['Pieces 1, 2 and 3, 12.7 mm', 'Pieces 1, 2 and 3, 1/2 in'],
    // What the maker reads off the square stays in mm.
    ['Both sides of the square must read 100 mm.', 'Both sides of the square must read 100 mm.'],
  ])('%s', (text, told) => {
    expect(plain(inInches(text))).toBe(told);
  });

  it.each([
    ['a strip of 6 mm foam, 12.7 mm wide', 'a strip of 6 mm foam, 1/2 in wide'],
    ['foam of 5 mm meets foam of 10 mm', 'foam of 5 mm meets foam of 10 mm'],
    ['foam of 6.4 mm meets foam of 12.7 mm', 'foam of 1/4 in meets foam of 1/2 in'],
    ['Foam 10 mm thick', 'Foam 10 mm thick'],
    ['use at most 6 mm there', 'use at most 6 mm there'],
    ['cut 1 · EVA 6 mm', 'cut 1 · EVA 6 mm'],
    ['cut 1 · Floor 9 mm', 'cut 1 · Floor 9 mm'],
    ['cut 1 · 9 mm Mat', 'cut 1 · 9 mm Mat'],
  ])('%s: foam keeps the unit it is sold by', (text, told) => {
    expect(plain(inInches(text, ['Floor 9 mm', 'Mat']))).toBe(told);
  });

  it('tells thickness and what is ruled', () => {
    expect([4, 5, 6.35, 9.525].map((mm) => plain(formatThickness(mm, 'in')))).toEqual([
      '4 mm',
      '5 mm',
      '1/4 in',
      '3/8 in',
    ]);
    expect(plain(formatSixtyFourths(59.928125))).toBe('2 23/64 in');
  });
});
