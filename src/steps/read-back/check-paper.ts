import type { PieceId } from '../../base/ids.ts';
import type { Ring } from '../../geom/ring.ts';
import type { PageSet, PaperBlock } from '../../model/page.ts';
import type { PrinterProfile } from '../../model/printer.ts';
import { joinTiles } from './join-tiles.ts';
import { pageSizeMm, printedLines, type PrintedLine } from './printed-lines.ts';
import type { ReadPage, ReadPdf } from './read-pdf.ts';
import { ringFigures, type RingFigures } from './ring-figures.ts';

/** What must come out on paper of one piece: the lines to cut in true size, as they are seen from the side that is traced, mm. */
export interface WantedPiece {
  readonly piece: PieceId;
  readonly number: number;
  readonly rings: readonly Ring[];
  /** Round holes that are drawn with straight sides, mm²: what comes out is a little less. */
  readonly roundMm2: readonly number[];
  /** True where lines to cut end inside it: where it is parted to travel. */
  readonly isParted: boolean;
}

/** What the finished file must agree with. */
export interface WantedPaper {
  readonly plan: Pick<PageSet, 'pages' | 'blocks' | 'turned' | 'ruled'>;
  readonly pieces: readonly WantedPiece[];
  /** The printer that the pages are made for; null for one that prints true. */
  readonly printer: PrinterProfile | null;
  readonly isRoll: boolean;
}

/** Where the finished file is not what was asked for, with what was found and what was wanted. */
export interface PaperFault {
  readonly what:
    | 'unreadable'
    | 'pages' // so many pages
    | 'page-size'
    | 'viewer-scales' // the file lets the print dialogue fit pages to the paper
    | 'square' // the square to measure
    | 'missing' // a piece that no page shows
    | 'twice' // a piece that is laid twice
    | 'outline' // a piece whose lines are not those of the piece
    | 'stray'; // lines to cut that belong to no piece
  /** Counted from 1. */
  readonly page?: number;
  readonly piece?: PieceId;
  readonly number?: number;
  readonly found: string;
  readonly wanted: string;
}

/** A page may be off its size, and the square off its sides, by so little, mm. */
const SIZE_MM = 0.02;

/** A line that was rounded to the file's digits lies no farther than this from where it belongs, mm. */
const LINE_MM = 0.01;

/**
 * What the shape of a ring may be off by: less than its size, for a mirror image often differs by little. Digits of the file and joints of tiles
 * take a tenth of this, mm.
 */
const SHAPE_MM = 0.001;

/** Of a round hole its straight sides leave at least this share. */
const ROUND_SHARE = 0.97;

/** The sides a square to measure can have, mm. */
const SQUARES_MM = [100, 50];

/** Compares a finished file, as another reader sees it, with the pieces it was made for. @returns nothing where all agrees. */
export function checkPaper(read: ReadPdf, wanted: WantedPaper): readonly PaperFault[] {
  const { plan, printer, isRoll } = wanted;
  // Asked of each page once, and of few pages alone.
  const ofPage = (i: number): readonly PrintedLine[] =>
    read.pages.slice(i, i + 1).flatMap((page) => printedLines(page, printer, isRoll));
  return [
    ...pageFaults(read, plan.pages),
    ...squareFaults(plan.pages, ofPage),
    ...placeFaults(wanted),
    ...plan.blocks.flatMap((block) => outlineFaults(block, ofPage, wanted.pieces)),
  ];
}

function pageFaults({ pages, preferences }: ReadPdf, planned: PageSet['pages']): PaperFault[] {
  const faults: PaperFault[] = [];
  if (pages.length !== planned.length)
    faults.push({ what: 'pages', found: String(pages.length), wanted: String(planned.length) });
  if (preferences.PrintScaling !== 'None')
    faults.push({ what: 'viewer-scales', found: String(preferences.PrintScaling), wanted: 'None' });
  for (const [i, page] of pages.slice(0, planned.length).entries()) {
    const { widthMm, heightMm } = planned[i];
    const found = pageSizeMm(page);
    const off = Math.max(Math.abs(found.widthMm - widthMm), Math.abs(found.heightMm - heightMm));
    if (off <= SIZE_MM && page.turnDeg === 0) continue;
    faults.push({
      what: 'page-size',
      page: i + 1,
      found: sizeText(found, page),
      wanted: sizeText({ widthMm, heightMm }),
    });
  }
  return faults;
}

const sizeText = (size: { widthMm: number; heightMm: number }, page?: Pick<ReadPage, 'turnDeg'>): string =>
  `${mm(size.widthMm)} × ${mm(size.heightMm)} mm${page === undefined || page.turnDeg === 0 ? '' : `, turned by ${page.turnDeg}°`}`;

/** The square on the first page that is for measuring, where there is such a page. */
function squareFaults(planned: PageSet['pages'], ofPage: (page: number) => readonly PrintedLine[]): PaperFault[] {
  const pages = planned.flatMap(({ kind }, i) => (kind === 'scale' ? [i] : []));
  if (pages.length === 0) return [];
  const squares = pages.flatMap((page) =>
    ofPage(page)
      .filter(({ layer, closed, points }) => layer === 'ruler' && closed && points.length === 8)
      .map(({ points }) => ({ page: page + 1, points })),
  );
  const wanted = `one square of ${SQUARES_MM.join(' or ')} mm`;
  if (squares.length !== 1) return [{ what: 'square', found: `${squares.length} squares`, wanted }];
  const [{ page, points }] = squares;
  const lengths = [0, 2, 4, 6].map((i) => apart(points, i, (i + 2) % 8));
  const diagonals = [apart(points, 0, 4), apart(points, 2, 6)];
  const isTrue = SQUARES_MM.some(
    (side) =>
      lengths.every((length) => Math.abs(length - side) <= SIZE_MM) &&
      diagonals.every((length) => Math.abs(length - Math.SQRT2 * side) <= 2 * SIZE_MM),
  );
  return isTrue ? [] : [{ what: 'square', page, found: `sides of ${lengths.map(mm).join(', ')} mm`, wanted }];
}

const apart = (points: Float64Array, i: number, j: number): number =>
  Math.hypot(points[j] - points[i], points[j + 1] - points[i + 1]);

/** Each piece has one place on paper: its own, that of its twin, or none where it is cut by the ruler. */
function placeFaults({ plan, pieces }: WantedPaper): PaperFault[] {
  const times = new Map<PieceId, number>();
  const served = [
    ...plan.blocks.flatMap(({ placements }) => placements.map(({ piece }) => piece)),
    ...plan.turned.map(({ piece }) => piece),
    ...(plan.ruled ?? []).map(({ piece }) => piece),
  ];
  for (const piece of served) times.set(piece, (times.get(piece) ?? 0) + 1);
  return pieces.flatMap(({ piece, number }): PaperFault[] => {
    const count = times.get(piece) ?? 0;
    if (count === 1) return [];
    return [{ what: count === 0 ? 'missing' : 'twice', piece, number, found: `${count} times`, wanted: 'once' }];
  });
}

function outlineFaults(
  block: PaperBlock,
  ofPage: (page: number) => readonly PrintedLine[],
  pieces: readonly WantedPiece[],
): PaperFault[] {
  const { rings, looseEnds } = joinTiles(block, ofPage, 'cut');
  const printed = new Set(rings.map(ringFigures).filter((figures) => figures !== null));
  const faults: PaperFault[] = [];
  for (const { piece } of block.placements) {
    const wanted = pieces.find((one) => one.piece === piece);
    if (wanted === undefined) {
      faults.push({ what: 'stray', piece, found: 'a piece that the job does not have', wanted: 'nothing' });
      continue;
    }
    for (const ring of wanted.rings) {
      const figures = ringFigures(ring);
      if (figures === null) continue;
      const match = [...printed].find((one) => isSameRing(one, figures));
      if (match !== undefined) {
        printed.delete(match);
        continue;
      }
      const found = nearest(printed, figures);
      faults.push({
        what: found === null ? 'missing' : 'outline',
        piece,
        number: wanted.number,
        found: found === null ? 'no closed line' : ringText(found),
        wanted: ringText(figures),
      });
      if (found !== null) printed.delete(found);
    }
  }
  for (const { piece, number, roundMm2 } of pieces) {
    if (!block.placements.some((placed) => placed.piece === piece)) continue;
    for (const wanted of roundMm2) {
      const hole = [...printed].find(({ areaMm2 }) => areaMm2 <= 1.001 * wanted && areaMm2 >= ROUND_SHARE * wanted);
      if (hole !== undefined) printed.delete(hole);
      else faults.push({ what: 'missing', piece, number, found: 'no round hole', wanted: `one of ${mm(wanted)} mm²` });
    }
  }
  for (const figures of printed) faults.push({ what: 'stray', found: ringText(figures), wanted: 'nothing' });
  const isParted = block.placements.some(({ piece }) => pieces.some((one) => one.piece === piece && one.isParted));
  if (faults.length === 0 && looseEnds.length > 0 && !isParted)
    faults.push({ what: 'stray', found: `${looseEnds.length / 2} lines that end in nothing`, wanted: 'closed lines' });
  return faults;
}

/** True where no point of one need be farther off the other than a line may be for the figures to differ so. */
export function isSameRing(a: RingFigures, b: RingFigures): boolean {
  const isAsLong = Math.abs(a.lengthMm - b.lengthMm) <= LINE_MM + 1e-4 * b.lengthMm;
  if (a.isSlit || b.isSlit) return a.isSlit && b.isSlit && isAsLong;
  // What is long and thin has less area for its rim, and its figures are off by more.
  const share = SHAPE_MM * Math.max(1 / Math.sqrt(b.areaMm2), b.lengthMm / (4 * b.areaMm2));
  // How far moments of the second and of the third order can be off.
  const second = 4 * share * (b.slender + b.spread);
  const third = 8 * share * (b.lopsided + b.spread);
  const hand = b.slender * third * (2 * b.lopsided + third) + second * (b.lopsided + third) ** 2;
  return (
    Math.abs(a.areaMm2 - b.areaMm2) <= LINE_MM * b.lengthMm &&
    isAsLong &&
    Math.abs(a.spread - b.spread) <= 8 * share * b.spread &&
    Math.abs(a.slender - b.slender) <= second &&
    Math.abs(a.lopsided - b.lopsided) <= third &&
    Math.abs(a.hand - b.hand) <= hand
  );
}

function nearest(printed: Iterable<RingFigures>, { areaMm2 }: RingFigures): RingFigures | null {
  let found: RingFigures | null = null;
  for (const one of printed)
    if (found === null || Math.abs(one.areaMm2 - areaMm2) < Math.abs(found.areaMm2 - areaMm2)) found = one;
  return found;
}

const ringText = ({ areaMm2, lengthMm, hand }: RingFigures): string =>
  `${mm(areaMm2)} mm², ${mm(lengthMm)} mm round, hand ${hand.toExponential(3)}`;

const mm = (value: number): string => value.toFixed(3);
