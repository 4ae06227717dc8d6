import type { PieceId } from '../../base/ids.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { Block } from './block.ts';
import { Flow, lineItem, type FilledPage } from './flow.ts';
import { putLegend, printedSideText } from './map-legend.ts';
import { putPieceList } from './map-list.ts';
import { putPictures } from './map-pictures.ts';
import type { PageInput } from './page-input.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import { TYPE_MM } from './pen.ts';
import { clipText } from './text-fit.ts';

/** Narrowest columns for the list and for notes, white between two, and longest lines that read well, mm [J]. */
const LIST_MM = 128;
const NOTES_MM = 80;
const COLUMN_GAP_MM = 10;
const WIDEST_COLUMN_MM = 190;

/** The map: pictures of all pages, the list of pieces, what the lines mean and how pages are joined. */
export function mapPages(
  input: PageInput,
  frame: PaperFrame,
  blocks: readonly Block[],
  pagesOf: ReadonlyMap<PieceId, readonly string[]>,
): readonly FilledPage[] {
  const { marginMm, tileWidthMm } = frame;
  const height = frame.roll ? Math.min(frame.tileHeightMm, ROLL_MAP_MM) : frame.tileHeightMm;
  const bottom = marginMm + FOOT_MM;
  const flow = new Flow({ minX: marginMm, minY: bottom, maxX: marginMm + tileWidthMm, maxY: bottom + height });
  const pieces = new Map<PieceId, FoamPiece>(input.pieces.map((piece) => [piece.id, piece]));
  flow.put(lineItem(clipText(input.projectName, TYPE_MM.title, flow.width), { heightMm: TYPE_MM.title, bold: true }));
  flow.paragraph(summary(input, frame, blocks), { heightMm: TYPE_MM.body }, 1);
  putPictures(flow, blocks, pieces, height);
  setColumns(flow, tileWidthMm, LIST_MM);
  putPieceList(
    flow,
    input.pieces
      .filter((piece) => pagesOf.has(piece.id))
      .map((piece) => ({ piece, pages: pagesOf.get(piece.id) ?? [] })),
  );
  setColumns(flow, tileWidthMm, NOTES_MM);
  putLegend(flow, input.templates);
  flow.breakColumn();
  flow.heading('Printed side');
  flow.paragraph(printedSideText(input.pieces), {}, 0.8);
  if (blocks.some((block) => block.isPrinted.length > 1)) {
    flow.heading('Joining');
    flow.paragraph(joiningText(frame.overlapMm), {}, 0.8);
  }
  return flow.pages();
}

/** As many equal columns as the width holds. */
function setColumns(flow: Flow, widthMm: number, narrowestMm: number): void {
  const count = Math.max(1, Math.floor((widthMm + COLUMN_GAP_MM) / (narrowestMm + COLUMN_GAP_MM)));
  const width = Math.min(WIDEST_COLUMN_MM, (widthMm - (count - 1) * COLUMN_GAP_MM) / count);
  flow.columns(new Array<number>(count).fill(width), COLUMN_GAP_MM);
}

/** A map on a roll is cut off where it ends, and goes on beside itself rather than grow longer than a bench, mm. */
const ROLL_MAP_MM = 900;

function summary(input: PageInput, frame: PaperFrame, blocks: readonly Block[]): string {
  const printed = blocks.reduce((sum, block) => sum + block.isPrinted.filter(Boolean).length, 0);
  const blank = blocks.reduce((sum, block) => sum + block.isPrinted.filter((isPrinted) => !isPrinted).length, 0);
  const paper = frame.roll ? frame.paperName : `${frame.paperName} ${frame.orientation}`;
  const templates = `${input.templates.length} ${input.templates.length === 1 ? 'template' : 'templates'}`;
  const pages = `${printed} ${printed === 1 ? 'page' : 'pages'}`;
  const left = blank === 0 ? '' : `, ${blank} blank ${blank === 1 ? 'tile' : 'tiles'} left out`;
  return `${templates} on ${pages}, ${paper}${left}.`;
}

function joiningText(overlapMm: number): string {
  if (overlapMm === 0)
    return 'Cut each page along its frame and tape the edges together so that crosses and ticks meet.';
  return (
    'Begin with A1, lower left. Cut the next page along its left and lower lines where they say so, lay it on the ' +
    `${overlapMm} mm strip of its neighbour so that crosses and ticks meet, and glue.`
  );
}
