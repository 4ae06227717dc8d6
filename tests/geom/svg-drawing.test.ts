import { describe, expect, it } from 'vitest';
import { readSvgDrawing, type FlatDrawing } from '../../src/geom/svg-drawing.ts';
import { expectOk } from '../support/expect-ok.ts';

const svg = (inside: string, attributes = 'width="100mm" height="50mm" viewBox="0 0 100 50"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`;
const read = (text: string): FlatDrawing => expectOk(readSvgDrawing(text, 0.01));
const corners = (drawing: FlatDrawing, stroke = 0): number[][] =>
  drawing.strokes[stroke].points.map(({ x, y }) => [x, y].map((n) => Math.round(n * 1e6) / 1e6 + 0));
const codeOf = (text: string): string => {
  const result = readSvgDrawing(text, 0.01);
  if (result.ok) throw new Error('was read');
  expect(result.problem.text).toMatch(/save|simplify|no drawing|should stand/i);
  return result.problem.code;
};
const notes = (text: string): string[] => {
  const result = readSvgDrawing(text, 0.01);
  return result.ok ? result.notes.map(({ code, text: words }) => `${code}: ${words}`) : [result.problem.text];
};
const size = ({ widthMm, heightMm }: FlatDrawing): number[] => [widthMm, heightMm];

describe('the size of a drawing', () => {
  const line = '<path d="M0 0L96 48"/>';
  it.each([
    ['width="100mm" height="50mm" viewBox="0 0 100 50"', 96, 48],
    ['width="10cm" viewBox="0 0 100 50"', 96, 48],
    ['width="1in" viewBox="0 0 96 48"', 25.4, 12.7],
    ['width="72pt" viewBox="0 0 96 48"', 25.4, 12.7],
    ['width="96px" height="48px" viewBox="0 0 96 48"', 25.4, 12.7],
    ['width="40mm"', 25.4, 12.7],
    // The smaller scale holds; each by itself where it is asked for.
    ['width="96mm" height="96mm" viewBox="0 0 96 48"', 96, 48],
    ['width="96mm" height="96mm" viewBox="0 0 96 48" preserveAspectRatio="none"', 96, 96],
    ['viewBox="0 0 96 48"', 96, 48],
    ['width="192" viewBox="0 0 96 48"', 192, 96],
    ['width="100%" viewBox="0 0 96 48"', 96, 48],
    ['', 96, 48],
  ])('%s', (attributes, width, height) => {
    const [w, h] = size(read(svg(line, attributes)));
    expect(w).toBeCloseTo(width, 9);
    expect(h).toBeCloseTo(height, 9);
  });

  it('a file without units is told', () => {
    expect(notes(svg(line))).toEqual([]);
    expect(notes(svg(line, 'viewBox="0 0 9 9"'))).toEqual([expect.stringMatching(/^drawing\/no-unit: .* mm/)]);
  });
});

describe('shapes', () => {
  it('lie about their middle, y up', () => {
    expect(corners(read(svg('<polyline points="0,0 10,0 10,4"/>')))).toEqual([
      [-5, 2],
      [5, 2],
      [5, -2],
    ]);
    const polygon = read(svg('<polygon points="0 0 10 0 10 4"/>'));
    expect(polygon.strokes[0].closed).toBe(true);
    expect(corners(read(svg('<line x1="1" y1="2" x2="7" y2="2"/>')))).toEqual([
      [-3, 0],
      [3, 0],
    ]);
  });

  it('rectangles, plain and rounded, circles and ellipses have their size', () => {
    const plain = read(svg('<rect x="3" y="4" width="30" height="10"/>'));
    expect(corners(plain)).toEqual([
      [-15, 5],
      [15, 5],
      [15, -5],
      [-15, -5],
    ]);
    expect(plain.strokes[0].closed).toBe(true);
    const round = read(svg('<rect width="30" height="10" rx="5"/>'));
    expect(size(round)).toEqual([expect.closeTo(30, 6), expect.closeTo(10, 6)]);
    expect(round.strokes[0].points.every(({ x, y }) => Math.hypot(Math.max(0, Math.abs(x) - 10), y) <= 5 + 1e-9)).toBe(
      true,
    );
    const circle = read(svg('<circle cx="9" cy="9" r="8"/>'));
    expect(circle.strokes[0].closed).toBe(true);
    for (const { x, y } of circle.strokes[0].points) expect(Math.hypot(x, y)).toBeCloseTo(8, 2);
    expect(size(read(svg('<ellipse rx="8" ry="3"/>')))).toEqual([expect.closeTo(16, 2), expect.closeTo(6, 2)]);
    // A length with a unit inside a drawing counts in px: 25.4 mm are 96 of its units.
    expect(size(read(svg('<rect width="25.4mm" height="1in"/>')))[0]).toBeCloseTo(96, 9);
  });

  it('transforms nest, the inner one first', () => {
    const inside = (transform: string, outer = ''): number[][] =>
      corners(read(svg(`<g transform="${outer}"><g><path transform="${transform}" d="M0 0H10V4"/></g></g>`)));
    expect(inside('translate(5 7)')).toEqual(inside(''));
    expect(inside('scale(2)')).toEqual([
      [-10, 4],
      [10, 4],
      [10, -4],
    ]);
    // A quarter turn in SVG is clockwise to the eye.
    expect(inside('rotate(90)')).toEqual([
      [2, 5],
      [2, -5],
      [-2, -5],
    ]);
    expect(inside('rotate(90 3 3)')).toEqual(inside('rotate(90)'));
    // x grows by y: (10, 4) goes to (14, 4).
    expect(inside('skewX(45)')).toEqual([
      [-7, 2],
      [3, 2],
      [7, -2],
    ]);
    // y grows by x: corners (0, 0), (10, 10), (10, 14).
    expect(inside('skewY(45)')).toEqual([
      [-5, 7],
      [5, -3],
      [5, -7],
    ]);
    // Turned to (0, 0), (0, 10), (-4, 10), then doubled along x: to be told from the other order.
    expect(inside('rotate(90)', 'scale(2,1)')).toEqual([
      [4, 5],
      [4, -5],
      [-4, -5],
    ]);
    expect(inside('scale(2,1) rotate(90)')).toEqual(inside('rotate(90)', 'scale(2,1)'));
    expect(inside('matrix(0 1 -1 0 3 4), translate(2)', 'scale(2,1)')).toEqual(inside('rotate(90)', 'scale(2,1)'));
  });

  it('tells what it does not know by the name it has, whatever that is', () => {
    expect(notes(svg('<constructor/><path d="M0 0H8"/>'))[0]).toContain('Left out of the drawing: <constructor>.');
  });

  it('of other makers stay out, prefixes and hidden parts are understood, what is left out is told', () => {
    const text = `<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/x.dtd"><!-- a > b -->
      <s:svg xmlns:s="http://www.w3.org/2000/svg" width='20mm' viewBox="0 0 20 20"><s:defs><s:path d="M0 0H99"/></s:defs>
      <other:thing/><s:g display="none"><s:path d="M0 0H50"/></s:g><s:path style="fill:#f00;stroke:none" d="M0 0H8"/>
      <s:text x="1">a &amp; b</s:text><s:image/></s:svg>`;
    const drawing = read(text);
    expect(size(drawing)).toEqual([8, 0]);
    expect(notes(text)).toEqual([
      'drawing/fills: Outlines are laid, fills are not.',
      'drawing/left-out: Left out of the drawing: hidden parts, pictures, writing. Turn into paths what is to be a seam.',
    ]);
  });
});

describe('hostile files', () => {
  it.each([
    ['', 'drawing/empty'],
    ['PK\u0003\u0004', 'xml/unreadable'],
    ['<svg><path d="M0 0H1"/>', 'xml/unreadable'],
    ['<svg><g></svg></g>', 'xml/unreadable'],
    ['<svg/><svg/>', 'xml/unreadable'],
    ['<svg a="1" a="2"/>', 'xml/unreadable'],
    ['<svg a=1/>', 'xml/unreadable'],
    ['<svg><!-- ', 'xml/unreadable'],
    ['<html></html>', 'drawing/not-svg'],
    ['<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><svg/>', 'xml/entities'],
    [svg('<path d="&b;"/>'), 'xml/entities'],
    [svg('<text>only words</text>'), 'drawing/no-lines'],
    [svg('<path transform="scale(0)" d="M0 0H9"/>'), 'drawing/no-lines'],
    [svg('<path transform="spin(3)" d="M0 0H9"/>'), 'drawing/transform'],
    [svg('<path transform="scale(1e300)" d="M0 0H9"/>'), 'drawing/too-large'],
    [svg('<path transform="scale(1e200)" d="M0 0H1e200"/>'), 'drawing/numbers'],
    [svg('<path d="M0 0 q"/>'), 'path/unreadable'],
    [svg(`<polyline points="${'1,2 3,4 '.repeat(11_000)}"/>`), 'drawing/too-fine'],
    ['<svg>'.repeat(300), 'xml/too-large'],
    [svg('<g/>'.repeat(100_001)), 'xml/too-large'],
    [' '.repeat(20_000_001) + 'x', 'drawing/too-large'],
  ])('case %#', (text, code) => expect(codeOf(text)).toBe(code));
});
