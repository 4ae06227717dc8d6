import type { Vec2 } from '../../geom/vec.ts';
import type { CutterLine, CutterPiece, CutterRole, CutterSheet } from '../../model/cutter.ts';
import type { Words } from '../../model/template.ts';
import { dxfName, dxfText, DxfTags } from './dxf-tags.ts';
import { plainText } from './plain-text.ts';

/** A layer: its name, and the number of its colour in the table every reader has (1 red, 2 yellow, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black or white). */
interface DxfLayer {
  readonly name: string;
  readonly colour: number;
  /** What lies on it, in a maker's words. */
  readonly says: string;
}

/**
 * Layers with a number are those of ASTM D6673-10 (patterns of sewn pieces as DXF; withdrawn 2019, still read by cutting rooms): 1 boundary,
 * 4 notches, 6 fold line, 7 grain line, 8 drawn, not cut, 11 cut-outs, 13 drill holes, 14 sew lines, 15 words. What foam needs beyond those
 * has a name.
 */
const LAYERS = {
  outside: { name: '1', colour: 7, says: 'cut round the pieces, last' },
  mark: { name: '4', colour: 2, says: 'match marks' },
  fold: { name: '6', colour: 3, says: 'folds' },
  grain: { name: '7', colour: 3, says: 'length of the sheet' },
  drawn: { name: '8', colour: 5, says: 'drawn, not cut: grooves, where sheets are laid on' },
  inside: { name: '11', colour: 1, says: 'cut openings, first' },
  hole: { name: '13', colour: 1, says: 'cut round holes, first' },
  lap: { name: '14', colour: 5, says: 'where a lap begins' },
  words: { name: '15', colour: 4, says: 'words and what belongs to them, never cut' },
  knife: { name: 'BEVEL', colour: 6, says: 'edges that lean, for the knife: the machine cuts upright' },
  kerf: { name: 'KERF', colour: 30, says: 'cut part way' },
  score: { name: 'SCORE', colour: 30, says: 'slit in the face, part way' },
  engrave: { name: 'ENGRAVE', colour: 40, says: 'lines of artwork in the face, hardly deep' },
  behind: { name: 'BEHIND', colour: 8, says: 'on the side that lies down' },
  sheet: { name: 'SHEET', colour: 8, says: 'edge of the sheet, never cut' },
  square: { name: 'TEST-SQUARE', colour: 8, says: '100 mm square to measure, never cut' },
} as const satisfies Record<string, DxfLayer>;

/** The layer of each kind of line. */
export const DXF_LAYER_OF: Readonly<Record<CutterRole, DxfLayer>> = {
  outside: LAYERS.outside,
  slit: LAYERS.outside,
  inside: LAYERS.inside,
  hole: LAYERS.hole,
  knife: LAYERS.knife,
  kerf: LAYERS.kerf,
  score: LAYERS.score,
  engrave: LAYERS.engrave,
  behind: LAYERS.behind,
  fold: LAYERS.fold,
  groove: LAYERS.drawn,
  placement: LAYERS.drawn,
  lap: LAYERS.lap,
  mark: LAYERS.mark,
  grain: LAYERS.grain,
  words: LAYERS.words,
};

/** $INSUNITS of millimetres. */
const MILLIMETRES = 4;

/** Side of the square that is measured, and how far under the sheet it stands, mm. */
const SQUARE_MM = 100;
const SQUARE_AWAY_MM = 20;

/**
 * One sheet of foam as DXF, release 12, which every reader knows: mm, y up, origin at the sheet's lower left corner. Each piece is a block
 * that stands where the piece lies, put in once at the origin, so that readers that take blocks apart and those that do not see the same.
 * Lines in the order they are to be worked; circles stay circles.
 * @param notes  lines for whoever opens the file in an editor, before everything.
 */
export function writeDxf(sheet: CutterSheet, notes: readonly string[] = []): string {
  const tags = new DxfTags();
  for (const line of ['Foamloft, all lengths in mm', ...layerNotes(), ...notes])
    tags.tag(999, dxfText(plainText(line)));
  const blocks = namedBlocks(sheet.pieces);
  writeHeader(
    tags,
    { x: 0, y: -SQUARE_MM - SQUARE_AWAY_MM },
    { x: Math.max(sheet.widthMm + sheet.listMm, SQUARE_MM), y: sheet.heightMm },
  );
  tags.section('TABLES', () => writeTables(tags));
  tags.section('BLOCKS', () => {
    for (const { name, piece } of blocks) writeBlock(tags, name, piece);
  });
  tags.section('ENTITIES', () => {
    const { widthMm: w, heightMm: h } = sheet;
    polyline(tags, LAYERS.sheet.name, Float64Array.of(0, 0, w, 0, w, h, 0, h), true);
    writeSquare(tags);
    for (const line of sheet.list) writeWords(tags, LAYERS.words.name, line);
    insertBlocks(tags, blocks);
  });
  return tags.tag(0, 'EOF').text();
}

/** What the file is: its release, its unit and the corners of what it shows. */
export function writeHeader(tags: DxfTags, least: Vec2, most: Vec2): void {
  tags.section('HEADER', () => {
    tags.tag(9, '$ACADVER').tag(1, 'AC1009');
    tags.tag(9, '$INSBASE').point(0, 0);
    tags.tag(9, '$EXTMIN').point(least.x, least.y);
    tags.tag(9, '$EXTMAX').point(most.x, most.y);
    // Release 12 has no units of its own; later readers look for these two in any file.
    tags.tag(9, '$INSUNITS').tag(70, MILLIMETRES);
    tags.tag(9, '$MEASUREMENT').tag(70, 1);
  });
}

/** Puts each block in once, at the origin. */
export function insertBlocks(tags: DxfTags, blocks: readonly { readonly name: string }[]): void {
  for (const { name } of blocks) tags.tag(0, 'INSERT').tag(8, '0').tag(2, name).point(0, 0);
}

/** What each layer holds, for whoever opens the file in an editor. */
export const layerNotes = (): readonly string[] => [
  'Layers with a number have the meaning of ASTM D6673-10 (withdrawn 2019)',
  ...Object.values(LAYERS).map(({ name, says }) => `Layer ${name}: ${says}`),
];

function namedBlocks(
  pieces: readonly CutterPiece[],
): readonly { readonly name: string; readonly piece: CutterPiece }[] {
  const taken = new Set<string>();
  return pieces.map((piece) => {
    const copy = piece.copy === 0 ? '' : `-COPY-${piece.copy + 1}`;
    let name = dxfName(`P${piece.number}-${piece.name}`, copy);
    for (let again = 2; taken.has(name); again += 1)
      name = dxfName(`P${piece.number}-${piece.name}`, `${copy}-${again}`);
    taken.add(name);
    return { name, piece };
  });
}

/** Line types, layers and the style of words. */
export function writeTables(tags: DxfTags): void {
  tags.table('LTYPE', 1, () => {
    tags.tag(0, 'LTYPE').tag(2, 'CONTINUOUS').tag(70, 0).tag(3, 'Solid line').tag(72, 65).tag(73, 0).real(40, 0);
  });
  const layers: readonly DxfLayer[] = [{ name: '0', colour: 7, says: '' }, ...Object.values(LAYERS)];
  tags.table('LAYER', layers.length, () => {
    for (const { name, colour } of layers)
      tags.tag(0, 'LAYER').tag(2, name).tag(70, 0).tag(62, colour).tag(6, 'CONTINUOUS');
  });
  tags.table('STYLE', 1, () => {
    tags.tag(0, 'STYLE').tag(2, 'STANDARD').tag(70, 0).real(40, 0).real(41, 1).real(50, 0).tag(71, 0).real(42, 2.5);
    tags.tag(3, 'txt').tag(4, '');
  });
}

function writeBlock(tags: DxfTags, name: string, { lines, words }: CutterPiece): void {
  tags.tag(0, 'BLOCK').tag(8, '0').tag(2, name).tag(70, 0).point(0, 0).tag(3, name).tag(1, '');
  for (const line of words) writeWords(tags, LAYERS.words.name, line);
  for (const line of lines) writeLine(tags, line);
  tags.tag(0, 'ENDBLK').tag(8, '0');
}

function writeLine(tags: DxfTags, { role, points, closed, circle }: CutterLine): void {
  const { name } = DXF_LAYER_OF[role];
  if (circle === undefined) polyline(tags, name, points, closed);
  else tags.tag(0, 'CIRCLE').tag(8, name).point(circle.centre.x, circle.centre.y).real(40, circle.radiusMm);
}

function polyline(tags: DxfTags, layer: string, points: ArrayLike<number>, closed: boolean): void {
  tags
    .tag(0, 'POLYLINE')
    .tag(8, layer)
    .tag(66, 1)
    .point(0, 0)
    .tag(70, closed ? 1 : 0);
  for (let i = 0; i + 1 < points.length; i += 2)
    tags
      .tag(0, 'VERTEX')
      .tag(8, layer)
      .point(points[i], points[i + 1]);
  tags.tag(0, 'SEQEND').tag(8, layer);
}

const ALIGN = { left: 0, centre: 1, right: 2 } as const;

export function writeWords(tags: DxfTags, layer: string, { text, at, angleRad, heightMm, align }: Words): void {
  tags
    .tag(0, 'TEXT')
    .tag(8, layer)
    .point(at.x, at.y)
    .real(40, heightMm)
    .tag(1, dxfText(plainText(text)));
  tags.real(50, ((((angleRad * 180) / Math.PI) % 360) + 360) % 360).tag(72, ALIGN[align]);
  if (align !== 'left') tags.point(at.x, at.y, 11);
}

function writeSquare(tags: DxfTags): void {
  const { name } = LAYERS.square;
  const [bottom, top] = [-SQUARE_MM - SQUARE_AWAY_MM, -SQUARE_AWAY_MM];
  polyline(tags, name, Float64Array.of(0, bottom, SQUARE_MM, bottom, SQUARE_MM, top, 0, top), true);
  const words = { at: { x: SQUARE_MM / 2, y: (bottom + top) / 2 }, angleRad: 0, heightMm: 5, align: 'centre' as const };
  writeWords(tags, name, { ...words, text: '100 mm, both ways' });
}
