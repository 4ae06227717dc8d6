import { sayThickness, type Say } from '../../base/paper-language.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import type { Flow, FlowItem } from './flow.ts';
import { LEADING, TYPE_MM } from './pen.ts';
import { CELL_GAP_MM, rowItem } from './table-row.ts';
import { wrapText } from './text-fit.ts';

/** A piece and the pages it has lines on, by name. */
export interface ListedPiece {
  readonly piece: CutThing;
  readonly pages: readonly string[];
  /** Number of the twin whose template it is cut with, turned over; left out where it has its own. */
  readonly turned?: number;
}

interface Column {
  readonly heading: string;
  readonly textOf: (listed: ListedPiece, say: Say) => string;
  /** mm, or the share of what the fixed columns leave. */
  readonly widthMm?: number;
  readonly share?: number;
}

const COLUMNS: readonly Column[] = [
  { heading: 'no.', textOf: ({ piece }) => String(piece.number), widthMm: 9 },
  { heading: 'piece', textOf: ({ piece }, say) => nameWithHand(piece, say), share: 0.58 },
  { heading: 'cut', textOf: ({ piece }) => `${piece.quantity} ×`, widthMm: 11 },
  {
    heading: 'foam',
    textOf: ({ piece: { thicknessMm } }, say) =>
      say.unit === 'in' ? sayThickness(thicknessMm, say) : say(`${thicknessMm} mm`),
    widthMm: 16,
  },
  { heading: 'traced on', textOf: ({ piece }, say) => say(piece.tracedSide), widthMm: 19 },
  { heading: 'revision', textOf: ({ piece }) => piece.revision, widthMm: 18 },
  { heading: 'pages', textOf: pagesText, share: 0.42 },
];

/** On narrower paper only what leads to a page is listed: the rest stands on each template, mm. */
const FULL_WIDTH_MM = 125;
const NEEDED: readonly string[] = ['no.', 'piece', 'revision', 'pages'];

/** A name longer than this is told by its beginning. */
const MOST_LINES = 4;

/** More pages than this are told as a range. */
const MOST_PAGES_LISTED = 8;

/** The list of all pieces, ready to be put. */
export interface PieceList {
  readonly heading: FlowItem;
  readonly rows: readonly FlowItem[];
  readonly heightMm: number;
}

/** A row for each piece, in columns that fill the width, mm; what is too long for its column goes on under itself. */
export function pieceList(listed: readonly ListedPiece[], widthMm: number, say: Say): PieceList {
  const columns = widthMm < FULL_WIDTH_MM ? COLUMNS.filter(({ heading }) => NEEDED.includes(heading)) : COLUMNS;
  const own = columns.map((column) => (column.widthMm === undefined ? undefined : roomOf(column, column.widthMm, say)));
  const fixed = own.reduce<number>((sum, mm) => sum + (mm ?? 0) + CELL_GAP_MM, -CELL_GAP_MM);
  const widths = columns.map((column, i) => own[i] ?? (column.share ?? 0) * (widthMm - fixed));
  const heading = rowItem(
    columns.map((column) => [say(column.heading)]),
    widths,
    true,
  );
  const rows = listed.map((one) => {
    const cells = columns.map((column, i) =>
      wrapText(column.textOf(one, say), TYPE_MM.body, widths[i]).slice(0, MOST_LINES),
    );
    return rowItem(cells, widths, false);
  });
  const heightMm = [heading, ...rows].reduce((sum, item) => sum + item.gapMm + item.heightMm, TITLE_MM);
  return { heading, rows, heightMm };
}

/** The room of a column, mm: more than it needs in English where its heading, or the name of a side, is longer. */
function roomOf({ heading }: Column, widthMm: number, say: Say): number {
  const words = [heading, ...(heading === 'traced on' ? ['face', 'back'] : [])].map(say);
  return Math.max(widthMm, ...words.map((word) => textWidthMm(word, TYPE_MM.body) + 0.5));
}

/** Height of the list's title with its white, mm. */
const TITLE_MM = 5 + TYPE_MM.heading * LEADING;

export function putPieceList(flow: Flow, { heading, rows }: PieceList): void {
  flow.heading('Pieces');
  flow.put(heading);
  for (const row of rows) flow.put(row, heading);
}

function pagesText({ pages, turned }: ListedPiece, say: Say): string {
  const where =
    pages.length <= MOST_PAGES_LISTED
      ? pages.join(', ')
      : say(`${pages[0]} to ${pages[pages.length - 1]}, ${pages.length} pages`);
  return turned === undefined ? where : `${say(`${turned} turned over`)}, ${where}`;
}

function nameWithHand({ name, hand }: CutThing, say: Say): string {
  const known = [hand ?? '', say(hand ?? '')].some((word) => name.toLowerCase().includes(word));
  return hand === undefined || known ? name : `${name}, ${say(hand)}`;
}
