import { SaxesParser } from 'saxes';
import { expect, it } from 'vitest';
import { foamId, pieceId } from '../../../src/base/ids.ts';
import type { CutterPiece, CutterSheet } from '../../../src/model/cutter.ts';
import { writeSheetSvg } from '../../../src/steps/write/sheet-svg.ts';
import { handMadeWords } from '../../support/hand-made-templates.ts';

const square = Float64Array.of(10, 10, 60, 10, 60, 60, 10, 60);
const hole = Float64Array.of(20, 20, 20, 30, 30, 30, 30, 20);
const piece = (change: Partial<CutterPiece> = {}): CutterPiece => ({
  piece: pieceId('p'),
  number: 3,
  name: 'Größe <b> & "x"',
  copy: 0,
  lines: [
    { role: 'mark', points: Float64Array.of(30, 58, 30, 64), closed: false },
    { role: 'knife', points: Float64Array.of(12, 10, 12, 60), closed: false },
    { role: 'hole', points: hole, closed: true, circle: { centre: { x: 50, y: 20 }, radiusMm: 2.5 } },
    { role: 'inside', points: hole, closed: true },
    { role: 'outside', points: square, closed: true },
  ],
  words: [handMadeWords('A & B', 30, 40)],
  shape: [{ outer: square, holes: [hole] }],
  drawing: { strokes: [], words: [] },
  ...change,
});

const sheet = (...pieces: readonly CutterPiece[]): CutterSheet => ({
  number: 1,
  foam: foamId('eva-6'),
  thicknessMm: 6,
  widthMm: 600,
  heightMm: 900,
  isTooLarge: false,
  pieces,
  list: [],
  listMm: 0,
});

/** Every tag with the ids of the groups round it, by a strict reader. */
function tagsOf(svg: string) {
  const tags: { name: string; attributes: Record<string, string>; groups: string[] }[] = [];
  const open: string[] = [];
  const parser = new SaxesParser({});
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    tags.push({ name, attributes: attributes, groups: [...open] });
    open.push(name === 'g' ? attributes.id : '');
  });
  parser.on('closetag', () => void open.pop());
  parser.write(svg).close();
  return tags.map((tag) => ({ ...tag, groups: tag.groups.filter((id) => id !== '') }));
}

it('is in mm, with a group for each piece and in it one for each kind of line, in their order', () => {
  const tags = tagsOf(
    writeSheetSvg(sheet(piece(), piece({ copy: 1 }), piece()), 'hairline', 'Helm, sheet 1', ['Mind <it>.']),
  );
  expect(tags[0].attributes).toMatchObject({ width: '600mm', height: '900mm', viewBox: '0 -900 600 900' });
  const ids = tags.flatMap(({ attributes: { id } }) => (id === undefined ? [] : [id]));
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9-]*$/);
  const name = 'piece-3-gro-e-b-x';
  expect(ids.filter((id) => id.startsWith(name) && !id.startsWith(`${name}-2`) && !id.includes('copy'))).toEqual(
    ['', '-words', '-marks', '-bevel', '-cut-inside', '-cut-outside'].map((end) => `${name}${end}`),
  );
  expect(ids).toEqual(expect.arrayContaining([`${name}-copy-2`, `${name}-2`]));
});

it('has circles as circles, words among words alone, y up', () => {
  const tags = tagsOf(writeSheetSvg(sheet(piece()), 'hairline', ''));
  expect(tags.find((tag) => tag.name === 'circle')?.attributes).toMatchObject({ cx: '50', cy: '-20', r: '2.5' });
  for (const { groups } of tags.filter((tag) => tag.name === 'text')) expect(groups.at(-1)).toMatch(/-words$/);
  const outside = tags.find((tag) => tag.name === 'path' && tag.groups.at(-1)?.endsWith('-cut-outside') === true);
  expect(outside?.attributes.d).toBe('M10 -10L60 -10L60 -60L10 -60Z');
});

it('fills pieces less their openings, and draws no cut over what is filled', () => {
  const tags = tagsOf(writeSheetSvg(sheet(piece()), 'filled', ''));
  const [area] = tags.filter(({ attributes }) => attributes.class === 'area');
  expect(area.attributes.d).toBe('M10 -10L60 -10L60 -60L10 -60ZM20 -20L20 -30L30 -30L30 -20Z');
  expect(tags.some(({ groups }) => groups.at(-1)?.endsWith('-cut-outside') === true)).toBe(false);
  expect(tags.filter((tag) => tag.name === 'circle')).toHaveLength(1);
});

it('asks for nothing from outside', () => {
  const svg = writeSheetSvg(sheet(piece()), 'hairline', 'a');
  expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/http|url\(|@import|<image|NaN|undefined/);
  expect(svg).toBe(writeSheetSvg(sheet(piece()), 'hairline', 'a'));
});
