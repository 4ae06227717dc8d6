import type { OutlineSegment } from '../../geom/outline.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { CutterRole } from '../../model/cutter.ts';
import type { PlainDraft, PlainLine } from '../../model/plain-piece.ts';
import { CUTTER_ROLE_OF } from './cutter-lines.ts';
import { dxfName, dxfText, DxfTags } from './dxf-tags.ts';
import { DXF_LAYER_OF, insertBlocks, layerNotes, writeHeader, writeTables, writeWords } from './dxf.ts';
import { outlineSheet, wordsOfLine, type LaidDraft } from './outline-sheet.ts';
import { plainText } from './plain-text.ts';

/** Group code of a vertex's bulge: the tangent of a quarter of the angle its arc turns, counter-clockwise > 0 (Autodesk, DXF Reference). */
const BULGE = 42;

/**
 * Drafts in true size as DXF, release 12, mm, y up: a block for each piece, put in at the origin. An outline is one closed polyline whose arcs
 * are arcs (bulges), a whole circle a CIRCLE; other curves are fine polylines.
 * @param about  first line of notes.
 */
export function writeOutlineDxf(drafts: readonly PlainDraft[], about: string): string {
  const { widthMm, heightMm, pieces } = outlineSheet(drafts);
  const blocks = pieces.map((piece, i) => ({ name: dxfName(`P${i + 1}-${piece.draft.name}`), piece }));
  const tags = new DxfTags();
  for (const line of [about, 'Foamloft, all lengths in mm', ...layerNotes()]) tags.tag(999, dxfText(plainText(line)));
  writeHeader(tags, { x: 0, y: 0 }, { x: widthMm, y: heightMm });
  tags.section('TABLES', () => writeTables(tags));
  tags.section('BLOCKS', () => {
    for (const { name, piece } of blocks) writeBlock(tags, name, piece);
  });
  tags.section('ENTITIES', () => insertBlocks(tags, blocks));
  return tags.tag(0, 'EOF').text();
}

function writeBlock(tags: DxfTags, name: string, { outline, holes, lines, words }: LaidDraft): void {
  tags.tag(0, 'BLOCK').tag(8, '0').tag(2, name).tag(70, 0).point(0, 0).tag(3, name).tag(1, '');
  for (const line of words) writeWords(tags, layerOf('words'), line);
  for (const line of lines) writeLine(tags, line);
  for (const hole of holes) writeChain(tags, layerOf('inside'), hole);
  writeChain(tags, layerOf('outside'), outline);
  tags.tag(0, 'ENDBLK').tag(8, '0');
}

const layerOf = (role: CutterRole): string => DXF_LAYER_OF[role].name;

function writeLine(tags: DxfTags, line: PlainLine): void {
  const { role, points, closed } = line;
  const taken = CUTTER_ROLE_OF[role];
  if (taken === undefined) return;
  const corners = Array.from({ length: points.length / 2 }, (_, i) => ({
    at: { x: points[2 * i], y: points[2 * i + 1] },
    bulge: 0,
  }));
  polyline(tags, layerOf(taken), corners, closed);
  for (const words of wordsOfLine(line)) writeWords(tags, layerOf('words'), words);
}

interface Corner {
  readonly at: Vec2;
  /** Of the arc that begins here; 0 for a straight line. */
  readonly bulge: number;
}

function writeChain(tags: DxfTags, layer: string, chain: readonly OutlineSegment[]): void {
  const [first] = chain;
  if (chain.length === 1 && first.kind === 'arc') {
    tags.tag(0, 'CIRCLE').tag(8, layer).point(first.centre.x, first.centre.y).real(40, first.radius);
    return;
  }
  polyline(tags, layer, chain.flatMap(cornersOf), true);
}

/** Corners at which a segment's parts begin; an arc of more than half a turn is given in two, as readers of bulges bear it better. */
function cornersOf(segment: OutlineSegment): readonly Corner[] {
  if (segment.kind === 'line') return [{ at: segment.from, bulge: 0 }];
  if (segment.kind === 'curve') return segment.points.slice(0, -1).map((at) => ({ at, bulge: 0 }));
  const { centre, radius, turn, from } = segment;
  const parts = Math.abs(turn) > Math.PI ? 2 : 1;
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const bulge = Math.tan(turn / parts / 4);
  return Array.from({ length: parts }, (_, i) => {
    const angle = start + (turn * i) / parts;
    const at = i === 0 ? from : { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return { at, bulge };
  });
}

function polyline(tags: DxfTags, layer: string, corners: readonly Corner[], closed: boolean): void {
  tags
    .tag(0, 'POLYLINE')
    .tag(8, layer)
    .tag(66, 1)
    .point(0, 0)
    .tag(70, closed ? 1 : 0);
  for (const { at, bulge } of corners) {
    tags.tag(0, 'VERTEX').tag(8, layer).point(at.x, at.y);
    if (bulge !== 0) tags.tag(BULGE, bulge.toFixed(10));
  }
  tags.tag(0, 'SEQEND').tag(8, layer);
}
