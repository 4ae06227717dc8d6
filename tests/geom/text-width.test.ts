import { readFileSync } from 'node:fs';
import { jsPDF } from 'jspdf';
import { describe, expect, it } from 'vitest';
import { emFromCapHeight, textWidthMm } from '../../src/geom/text-width.ts';

/** jspdf reads the font's tables with a reader of its own. */
function widthByOtherReader(text: string, emMm: number): number {
  const doc = new jsPDF({ unit: 'mm' });
  doc.addFileToVFS('f.ttf', readFileSync('node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf').toString('base64'));
  doc.addFont('f.ttf', 'DejaVu', 'normal');
  doc.setFont('DejaVu', 'normal');
  doc.setFontSize((emMm * 72) / 25.4);
  return doc.getTextWidth(text);
}

describe('textWidthMm', () => {
  it('stands 10 mm capitals on an em of 10 × 2048 / 1493', () => {
    expect(emFromCapHeight(10)).toBeCloseTo(13.717347622, 8);
  });

  it('adds the advance widths of the font: H is 1540, I is 604 units', () => {
    expect(textWidthMm('HI', 1493)).toBeCloseTo(1540 + 604, 9);
    expect(textWidthMm('', 3)).toBe(0);
  });

  it('agrees with an independent reader of the font in every script we keep', () => {
    for (const text of [
      'Shield, left × 2',
      'Größe Ø žluťoučký Łódź',
      'Ελλάδα ΑΩ',
      'Жизнь ёлка',
      '±90° ½ ¼ ← ↑ → ↓ ✓ “–—” …  −3',
    ]) {
      expect(textWidthMm(text, 3) / widthByOtherReader(text, emFromCapHeight(3)), text).toBeCloseTo(1, 9);
    }
  });

  it('gives an unknown character the width of the missing box', () => {
    expect(textWidthMm('鐘', 1493)).toBeCloseTo(1229, 9);
    expect(textWidthMm('\u{1f525}', 1493)).toBeCloseTo(1229, 9);
  });
});
