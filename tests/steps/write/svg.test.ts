import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { foamId, pieceId } from '../../../src/base/ids.ts';
import { emFromCapHeight } from '../../../src/geom/text-width.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import type { Sheet, SheetLayout } from '../../../src/model/sheet.ts';
import type { Template } from '../../../src/model/template.ts';
import { DEFAULT_FOAMS } from '../../../src/model/foams.ts';
import { writePiecesSvg } from '../../../src/steps/write/svg.ts';
import { layAsUsual } from '../../support/lay-as-usual.ts';
import { handMadeTemplate, handMadeWords, stripTemplate } from '../../support/hand-made-templates.ts';
import { readSvg } from '../../support/read-svg.ts';
import { kit } from '../tile/support.ts';

interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Ids of the groups round it. */
  readonly groups: readonly string[];
  text: string;
}

/** All tags of a file, read by a strict XML parser. */
function tagsOf(svg: string): readonly Tag[] {
  const tags: Tag[] = [];
  const open: Tag[] = [];
  const parser = new SaxesParser({});
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const groups = open.filter((tag) => tag.name === 'g').map((tag) => tag.attributes.id);
    const tag: Tag = { name, attributes: attributes, groups, text: '' };
    tags.push(tag);
    open.push(tag);
  });
  parser.on('text', (text) => {
    const tag = open.at(-1);
    if (tag !== undefined) tag.text += text;
  });
  parser.on('closetag', () => void open.pop());
  parser.write(svg).close();
  return tags;
}

const sheet = (widthMm: number, heightMm: number, placements: Sheet['placements']): Sheet => ({
  foam: foamId('eva-10'),
  name: { stock: 'buy', nth: 0 },
  fillAlong: 'y',
  filledMm: 0,
  thicknessMm: 10,
  widthMm,
  heightMm,
  placements,
  usedShare: 0.1,
});
const laid = (piece: string, x: number, y: number, turnRad = 0, copy = 0) => ({
  piece: pieceId(piece),
  copy,
  x,
  y,
  turnRad,
});
const oneSheet = (...placements: Sheet['placements']): SheetLayout => ({
  sheets: [sheet(600, 900, placements)],
  tooLarge: [],
});

describe('writePiecesSvg', () => {
  const strip = stripTemplate('strip', 120, 40);

  it('is one mm a unit, and as large as its sheets side by side', () => {
    const layout = { sheets: [sheet(600, 900, [laid('strip', 10, 10)]), sheet(1000, 2000, [])], tooLarge: [] };
    const [svg] = tagsOf(writePiecesSvg([strip], layout));
    expect(svg.attributes).toMatchObject({ width: '1650mm', height: '2000mm', viewBox: '0 -2000 1650 2000' });
    expect(readSvg(writePiecesSvg([strip], layout)).unitMm).toBe(1);
  });

  it('turns y over once: what lies lowest on the sheet is lowest on the screen', () => {
    const { paths } = readSvg(writePiecesSvg([strip], oneSheet(laid('strip', 10, 20))));
    const cut = paths.find(({ name }) => name === 'cut');
    expect(cut?.points).toEqual([10, -20, 130, -20, 130, -60, 10, -60]);
    expect(cut?.closed).toBe(true);
    const turned = readSvg(writePiecesSvg([strip], oneSheet(laid('strip', 50, 20, Math.PI / 2)))).paths;
    expect(turned.find(({ name }) => name === 'cut')?.points).toEqual([50, -20, 50, -140, 10, -140, 10, -20]);
  });

  it('groups by sheet, piece and layer, each id once, copies too', () => {
    const layout = oneSheet(laid('strip', 10, 10), laid('strip', 10, 80, 0, 1), laid('a/b <c>', 200, 200));
    const odd = handMadeTemplate('a/b <c>', [0, 0, 9, 0, 9, 9]);
    const tags = tagsOf(writePiecesSvg([strip, odd], layout));
    const ids = tags.flatMap(({ attributes }) => (attributes.id === undefined ? [] : [attributes.id]));
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(['sheet-1', 'piece-strip', 'piece-strip-cut', 'piece-strip-copy-2']));
    for (const id of ids) expect(id).toMatch(/^[A-Za-z][\w.-]*$/);
    const cuts = tags.filter(({ name, attributes }) => name === 'path' && attributes.class === 'cut');
    expect(cuts.map(({ groups }) => groups)).toEqual([
      ['sheet-1', 'piece-strip', 'piece-strip-cut'],
      ['sheet-1', 'piece-strip-copy-2', 'piece-strip-copy-2-cut'],
      ['sheet-1', 'piece-a-b--c-', 'piece-a-b--c--cut'],
    ]);
  });

  it('sets words as words, at their place, size and turn', () => {
    const words = [
      handMadeWords('1  “Größe” <&> Ж', 30, 20, { heightMm: 4, align: 'left', bold: true }),
      handMadeWords('up', 60, 10, { angleRad: Math.PI / 2 }),
    ];
    const template = handMadeTemplate('p', [0, 0, 90, 0, 90, 40], [], words);
    const texts = tagsOf(writePiecesSvg([template], oneSheet(laid('p', 100, 100)))).filter(
      ({ name }) => name === 'text',
    );
    expect(texts.map(({ text }) => text)).toEqual(['1  “Größe” <&> Ж', 'up']);
    expect(texts[0].attributes).toMatchObject({ x: '130', y: '-120', 'text-anchor': 'start' });
    expect(Number(texts[0].attributes['font-size'])).toBeCloseTo(emFromCapHeight(4), 4);
    expect(texts[1].attributes).toMatchObject({ 'text-anchor': 'middle', transform: 'rotate(-90 160 -110)' });
  });

  it('stays well-formed whatever a name holds', () => {
    const nasty = handMadeWords('\u0000\u0001\ud800 ]]> 🔥\n\ufffe </text><script>', 5, 5);
    const svg = writePiecesSvg(
      [handMadeTemplate('p', [0, 0, 90, 0, 90, 40], [], [nasty])],
      oneSheet(laid('p', 10, 10)),
    );
    const tags = tagsOf(svg);
    expect(tags.some(({ name }) => name === 'script')).toBe(false);
    expect(tags.find(({ name }) => name === 'text')?.text).toContain('</text><script>');
  });

  it('keeps what fits no sheet, beside the sheets', () => {
    const { sheets } = oneSheet(laid('strip', 10, 10));
    const huge = handMadeTemplate('huge', [-50, 30, 1950, 30, 1950, 1230, -50, 1230]);
    const svg = writePiecesSvg([strip, huge], { sheets, tooLarge: [huge.piece] });
    const [root] = tagsOf(svg);
    expect(root.attributes).toMatchObject({ width: '2650mm', height: '1200mm' });
    const found = readSvg(svg).paths.find(({ groups, name }) => name === 'cut' && groups.includes('piece-huge'));
    expect(found?.groups[0]).toBe('too-large');
    expect(found?.points).toEqual([650, 0, 2650, 0, 2650, -1200, 650, -1200]);
  });

  it('lays a piece turned over: its outline mirrored, its words not', () => {
    const template = handMadeTemplate(
      'hook',
      [0, 0, 60, 0, 0, 40],
      [],
      [handMadeWords('up', 20, 10, { align: 'left' })],
    );
    const over = { ...laid('hook', 100, 50), isFlipped: true };
    const svg = writePiecesSvg([template], { sheets: [sheet(600, 900, [over])], tooLarge: [] });
    const { paths } = readSvg(svg);
    expect(paths.find(({ name }) => name === 'cut')?.points).toEqual([100, -50, 40, -50, 100, -90]);
    expect(svg).toContain('turned over');
    expect(svg).toMatch(/<text x="80" y="-60"[^>]*text-anchor="end"(?![^>]*scale)[^>]*>up</);
  });

  it('shows what has no room beside the sheets', () => {
    const template = handMadeTemplate('hook', [0, 0, 60, 0, 0, 40]);
    const unlaid = [{ piece: template.piece, copy: 1 }];
    const odd = { unlaid, heldBadly: [], heldNowhere: [], movedOn: [] };
    const layout = { sheets: [sheet(600, 900, [laid('hook', 100, 50)])], tooLarge: [], odd };
    const svg = writePiecesSvg([template], layout);
    expect(svg).toContain('<g id="no-room">');
    const cuts = readSvg(svg).paths.filter(({ name }) => name === 'cut');
    expect(cuts.map(({ points }) => points[0])).toEqual([100, 650]);
  });

  it('draws the outline of a traced sheet and what is kept clear on it', () => {
    const traced = { ...sheet(400, 300, []), outline: [0, 0, 400, 0, 0, 300], keepOut: [[10, 10, 20, 10, 20, 20]] };
    const { paths } = readSvg(writePiecesSvg([], { sheets: [traced], tooLarge: [] }));
    expect(paths.map(({ points }) => points)).toEqual([
      [0, 0, 400, 0, 0, -300],
      [10, -10, 20, -10, 20, -20],
    ]);
  });

  it('asks for nothing from outside and is the same for the same pieces', () => {
    const templates = kit();
    const items = templates.map((template) => ({
      piece: template.piece,
      template,
      quantity: 1,
      foam: DEFAULT_FOAMS[5].id,
    }));
    const layout = layAsUsual(items, DEFAULT_FOAMS);
    const svg = writePiecesSvg(templates, layout);
    expect(svg).toBe(writePiecesSvg(templates, layout));
    expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/http|url\(|@import|<image/);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|e-\d/);
  });

  it('holds every outline on its sheet within 1e-4 mm', () => {
    const templates: readonly Template[] = kit();
    const items = templates.map((template) => ({
      piece: template.piece,
      template,
      quantity: 2,
      foam: DEFAULT_FOAMS[5].id,
    }));
    const layout = layAsUsual(items, DEFAULT_FOAMS);
    const { paths } = readSvg(writePiecesSvg(templates, layout));
    const cuts = paths.filter(({ name }) => name === 'cut');
    const expected = layout.sheets.flatMap(({ placements, widthMm }, i) =>
      placements.map((place) => {
        const template = templates.find(({ piece }) => piece === place.piece);
        if (template === undefined) throw new Error('no template');
        return movePoints(template.drawing.strokes[0].points, { ...place, x: place.x + i * (widthMm + 50) });
      }),
    );
    expect(cuts.length).toBe(expected.length);
    expected.forEach((points, k) =>
      points.forEach((mm, p) => expect(Math.abs((p % 2 === 0 ? 1 : -1) * cuts[k].points[p] - mm)).toBeLessThan(1e-4)),
    );
  });
});
