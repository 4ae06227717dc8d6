import { describe, expect, it } from 'vitest';
import { foamId, pieceId } from '../../../src/base/ids.ts';
import type { CutterPiece, CutterSheet } from '../../../src/model/cutter.ts';
import { dxfName, dxfText, DxfTags } from '../../../src/steps/write/dxf-tags.ts';
import { DXF_LAYER_OF, writeDxf } from '../../../src/steps/write/dxf.ts';
import { handMadeWords } from '../../support/hand-made-templates.ts';
import { readDxf } from '../../support/read-dxf.ts';

const piece = (number: number, name: string, change: Partial<CutterPiece> = {}): CutterPiece => ({
  piece: pieceId(`p${number}`),
  number,
  name,
  copy: 0,
  lines: [
    { role: 'inside', points: Float64Array.of(20, 20, 20, 30, 30, 30), closed: true },
    { role: 'outside', points: Float64Array.of(10, 10, 110.123456, 10, 110.123456, 60), closed: true },
  ],
  words: [],
  shape: [],
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

describe('writeDxf', () => {
  it('is read by another program: mm, layers, a block a piece, lines in their order', () => {
    const text = writeDxf(sheet(piece(2, 'Öl & visor'), piece(1, 'Band', { copy: 1 })));
    const { header, layers, things } = readDxf(text);
    expect(header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4, $MEASUREMENT: 1 });
    const used = Object.values(DXF_LAYER_OF).map(({ name }) => name);
    expect(layers).toEqual(expect.arrayContaining(['0', 'SHEET', 'TEST-SQUARE', ...used]));
    expect(things.filter(({ block }) => block !== '').map(({ block, layer }) => [block, layer])).toEqual([
      ['P2-OL-VISOR', '11'],
      ['P2-OL-VISOR', '1'],
      ['P1-BAND-COPY-2', '11'],
      ['P1-BAND-COPY-2', '1'],
    ]);
    const [, outside] = things.filter(({ block }) => block === 'P2-OL-VISOR');
    expect(outside).toMatchObject({ closed: true, points: [10, 10, 110.12346, 10, 110.12346, 60] });
  });

  it('has a square to measure and the edge of the sheet on layers of their own', () => {
    const { things } = readDxf(writeDxf(sheet()));
    const [edge] = things.filter(({ layer }) => layer === 'SHEET');
    expect(edge).toMatchObject({ closed: true, points: [0, 0, 600, 0, 600, 900, 0, 900] });
    const [square, words] = things.filter(({ layer }) => layer === 'TEST-SQUARE');
    expect(square.points).toEqual([0, -120, 100, -120, 100, -20, 0, -20]);
    expect(words).toMatchObject({ kind: 'text', text: '100 mm, both ways' });
  });

  it('keeps circles circles', () => {
    const circle = { centre: { x: 50, y: 40 }, radiusMm: 2.9 };
    const lines = [{ role: 'hole' as const, points: Float64Array.of(52.9, 40), closed: true, circle }];
    const [found] = readDxf(writeDxf(sheet(piece(1, 'a', { lines })))).things.filter(({ kind }) => kind === 'circle');
    expect(found).toMatchObject({ layer: '13', points: [50, 40], radius: 2.9 });
  });

  it('sets words on their own layer, turned as they stand', () => {
    const words = [handMadeWords('Größe 50%%d ^A', 30, 40, { angleRad: -Math.PI / 2, align: 'centre' })];
    const text = writeDxf(sheet(piece(1, 'a', { words })));
    const [found] = readDxf(text).things.filter(({ kind, block }) => kind === 'text' && block !== '');
    expect(found).toMatchObject({ layer: '15', points: [30, 40], turnDeg: 270 });
    expect(text).toContain('\r\nGr\\U+00F6\\U+00DFe 50% %d ^ A\r\n');
  });

  it('gives two pieces of one name blocks of their own, and every name what release 12 allows', () => {
    const long = 'A very long name that goes on, and on';
    const text = writeDxf(sheet(piece(1, long), piece(1, long), piece(1, '火'), piece(3, long, { copy: 11 })));
    const names = [...new Set(readDxf(text).things.map(({ block }) => block))].filter((name) => name !== '');
    expect(names).toHaveLength(4);
    for (const name of names) expect(name).toMatch(/^[A-Z0-9_-]{1,31}$/);
    expect(names[3]).toMatch(/-COPY-12$/);
  });

  it('is plain ASCII with the line ends of its home, the same for the same sheet', () => {
    const text = writeDxf(sheet(piece(1, 'Ж')), ['600 × 900\n  0\nEOF']);
    expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    expect(text.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
    expect(text.endsWith('  0\r\nEOF\r\n')).toBe(true);
    expect(text.match(/^EOF/gm)).toHaveLength(1);
    expect(text).toBe(writeDxf(sheet(piece(1, 'Ж')), ['600 × 900\n  0\nEOF']));
  });
});

describe('its parts', () => {
  it('write numbers plainly and refuse what is none', () => {
    expect(new DxfTags().real(40, -0.000001).real(40, 1e-9).real(40, 123456.5).text()).toBe(
      ' 40\r\n0.00000\r\n 40\r\n0.00000\r\n 40\r\n123456.50000\r\n',
    );
    expect(() => new DxfTags().real(40, NaN)).toThrow(RangeError);
  });

  it('keep words and names apart from codes', () => {
    expect(dxfText('100%%%c')).toBe('100% % %c');
    expect(dxfName('  Élan / 3mm ')).toBe('ELAN-3MM');
  });
});
