import type { PieceId } from '../../base/ids.ts';
import { inEnglish } from '../../base/paper-language.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import type { Block } from './block.ts';
import { Flow, lineItem, type FilledPage } from './flow.ts';
import { putLegend, printedSideText, putTurned } from './map-legend.ts';
import { pieceList, putPieceList, type ListedPiece } from './map-list.ts';
import { putPictures } from './map-pictures.ts';
import { cutThings, type PageInput } from './page-input.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import { TYPE_MM } from './pen.ts';
import { putRuled } from './ruled-list.ts';
import { putSawList } from './saw-list.ts';
import { clipText } from './text-fit.ts';

/** Narrowest columns for the list and for notes, white between two, and longest lines that read well, mm [J]. */
const LIST_MM = 128;
const NOTES_MM = 80;
const COLUMN_GAP_MM = 10;
const WIDEST_COLUMN_MM = 190;

/** The map: pictures of all pages, the list of pieces, what the lines mean and on which side the paper lies. */
export function mapPages(
  input: PageInput,
  frame: PaperFrame,
  blocks: readonly Block[],
  pagesOf: ReadonlyMap<PieceId, readonly string[]>,
): readonly FilledPage[] {
  const { marginMm, tileWidthMm } = frame;
  const height = frame.roll ? Math.min(frame.tileHeightMm, ROLL_MAP_MM) : frame.tileHeightMm;
  const bottom = marginMm + FOOT_MM;
  const { say = inEnglish } = input;
  const area = { minX: marginMm, minY: bottom, maxX: marginMm + tileWidthMm, maxY: bottom + height };
  const flow = new Flow(area, say);
  const pieces = new Map<PieceId, CutThing>(cutThings(input).map((piece) => [piece.id, piece]));
  flow.put(lineItem(clipText(input.projectName, TYPE_MM.title, flow.width), { heightMm: TYPE_MM.title, bold: true }));
  flow.paragraph(summary(input, frame, blocks), { heightMm: TYPE_MM.body }, 1);
  if (blocks.length > 0) putPictures(flow, blocks, pieces, height);
  const ruled = input.ruled ?? [];
  const isRuled = new Set(ruled.map(({ piece }) => piece));
  const listed = cutThings(input)
    .filter((piece) => pagesOf.has(piece.id) || isRuled.has(piece.id))
    .map((piece): ListedPiece => {
      const template = input.templates.find(({ turned }) => turned === piece.id)?.piece;
      const turned = template === undefined ? undefined : pieces.get(template)?.number;
      const pages = isRuled.has(piece.id) ? [say('by the ruler')] : (pagesOf.get(piece.id) ?? []);
      return { piece, pages, ...(turned === undefined ? {} : { turned }) };
    });
  putListAndColumns(flow, listed, tileWidthMm);
  putLegend(flow, input.templates);
  flow.breakColumn();
  flow.heading('Printed side');
  flow.paragraph(input.printedSide ?? printedSideText(input.pieces), {}, 0.8);
  putTurned(flow, input.templates);
  flow.columns(equalColumns(tileWidthMm, LIST_MM), COLUMN_GAP_MM);
  putRuled(flow, ruled, pieces);
  putSeamWork(flow, input.seamWork ?? []);
  if (input.saw !== undefined) putSawList(flow, input.saw, input.pieces);
  return flow.pages();
}

/** Puts the list, and opens the columns for the notes: beside it where paper is wide and the list short, else under it. */
function putListAndColumns(flow: Flow, listed: readonly ListedPiece[], widthMm: number): void {
  const listWidth = Math.min(WIDEST_COLUMN_MM, widthMm - COLUMN_GAP_MM - NOTES_MM);
  const beside = pieceList(listed, listWidth, flow.say);
  if (listWidth >= LIST_MM && beside.heightMm <= flow.restMm) {
    const notes = equalColumns(widthMm - listWidth - COLUMN_GAP_MM, NOTES_MM);
    flow.columns([listWidth, ...notes], COLUMN_GAP_MM);
    putPieceList(flow, beside);
    flow.breakColumn();
    return;
  }
  const columns = equalColumns(widthMm, LIST_MM);
  flow.columns(columns, COLUMN_GAP_MM);
  putPieceList(flow, pieceList(listed, columns[0], flow.say));
  flow.columns(equalColumns(widthMm, NOTES_MM), COLUMN_GAP_MM);
}

/** As many equal columns as the width holds, none wider than reads well. */
function equalColumns(widthMm: number, narrowestMm: number): readonly number[] {
  const count = Math.max(1, Math.floor((widthMm + COLUMN_GAP_MM) / (narrowestMm + COLUMN_GAP_MM)));
  const width = Math.min(WIDEST_COLUMN_MM, (widthMm - (count - 1) * COLUMN_GAP_MM) / count);
  return new Array<number>(count).fill(width);
}

/** What is cut or filled beside the pieces; nothing where that is nothing. */
function putSeamWork(flow: Flow, sentences: readonly string[]): void {
  if (sentences.length === 0) return;
  flow.heading('Seams beyond the blade');
  for (const sentence of sentences) flow.paragraph(sentence, {}, 0.8);
}

/** A map on a roll is cut off where it ends, and goes on beside itself rather than grow longer than a bench, mm. */
const ROLL_MAP_MM = 900;

function summary(input: PageInput, frame: PaperFrame, blocks: readonly Block[]): string {
  const printed = blocks.reduce((sum, block) => sum + block.isPrinted.filter(Boolean).length, 0);
  const blank = blocks.reduce((sum, block) => sum + block.isPrinted.filter((isPrinted) => !isPrinted).length, 0);
  const { say = inEnglish } = input;
  const paper = frame.roll ? frame.paperName : say(`${frame.paperName} ${frame.orientation}`);
  const shared = input.templates.filter(({ turned }) => turned !== undefined).length;
  const served = shared === 0 ? '' : ` for ${input.templates.length + shared} pieces`;
  const templates = `${input.templates.length} ${input.templates.length === 1 ? 'template' : 'templates'}${served}`;
  const pages = `${printed} ${printed === 1 ? 'page' : 'pages'}`;
  const left = blank === 0 ? [] : [say(`${blank} blank ${blank === 1 ? 'tile' : 'tiles'} left out`)];
  const strips = input.ruled?.length ?? 0;
  const byRuler =
    strips === 0 ? [] : [say(`${strips} ${strips === 1 ? 'strip' : 'strips'} without paper, cut by the ruler`)];
  return `${[say(`${templates} on ${pages}`), paper, ...left, ...byRuler].join(', ')}.`;
}
