import { describe, expect, it } from 'vitest';
import { textWidthMm } from '../../../src/geom/text-width.ts';
import { clipText, wrapText } from '../../../src/steps/tile/text-fit.ts';
import { thinLine } from '../../../src/steps/tile/thin-line.ts';

const widthOf = (text: string): number => textWidthMm(text, 2.5);

describe('wrapped text', () => {
  it('goes on to a new line where the next word does not fit', () => {
    const words = 'lay each template on the foam';
    expect(wrapText(words, 2.5, widthOf('lay each template'))).toEqual(['lay each template', 'on the foam']);
    expect(wrapText(words, 2.5, widthOf('lay each template') - 0.01)).toEqual(['lay each', 'template on the', 'foam']);
    expect(wrapText(words, 5, widthOf('lay each template'))).toEqual(['lay each', 'template', 'on the', 'foam']);
  });

  it('keeps every word and no white at the ends', () => {
    expect(wrapText('  one   two ', 2.5, 100)).toEqual(['one two']);
    expect(wrapText('', 2.5, 100)).toEqual([]);
  });

  it('parts a word that fits no line, and goes on after it on the same line', () => {
    expect(wrapText('a iiiiiiii i', 2.5, widthOf('iiiiii'))).toEqual(['a', 'iiiiii', 'ii i']);
  });

  it('has one letter a line where no more fits', () => {
    expect(wrapText('mmm', 2.5, 0.1)).toEqual(['m', 'm', 'm']);
  });

  it('never parts a figure from its fraction and its unit', () => {
    const text = 'bend 1\u00a01/2\u00a0in now';
    expect(wrapText(text, 2.5, widthOf('1\u00a01/2\u00a0in'))).toEqual([
      'bend',
      '1 1/2 in'.replaceAll(' ', '\u00a0'),
      'now',
    ]);
  });
});

describe('clipped text', () => {
  it('stays whole where it fits', () => {
    expect(clipText('Shield', 2.5, widthOf('Shield'))).toBe('Shield');
  });

  it('ends in an ellipsis that fits too, without white before it', () => {
    expect(clipText('Shield rim', 2.5, widthOf('Shield …'))).toBe('Shield…');
    expect(clipText('Shield', 2.5, widthOf('Shi…'))).toBe('Shi…');
    expect(clipText('Shield', 2.5, widthOf('Shi…') - 0.01)).toBe('Sh…');
  });

  it('is nothing where not even the ellipsis has room', () => {
    expect(clipText('Shield', 2.5, widthOf('…'))).toBe('');
    expect(clipText('Shield', 2.5, 0)).toBe('');
  });
});

describe('a thinned line', () => {
  it('keeps points that are far enough from the one kept before, and both ends', () => {
    const points = [0, 0, 0.5, 0, 1, 0, 1, 0.9, 1, 1.2, 4, 5.2, 4.1, 5.2];
    expect([...thinLine(points, 1)]).toEqual([0, 0, 1, 0, 1, 1.2, 4, 5.2, 4.1, 5.2]);
    expect([...thinLine(points, 5.1)]).toEqual([0, 0, 4, 5.2, 4.1, 5.2]);
    expect([...thinLine([3, 4], 1)]).toEqual([3, 4]);
    expect([...thinLine([], 1)]).toEqual([]);
  });
});
