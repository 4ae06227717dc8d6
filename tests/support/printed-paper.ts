import { movePoints, type Move2 } from '../../src/geom/turn-and-move.ts';
import { LINE_STYLES } from '../../src/model/line-style.ts';
import type { PageSet } from '../../src/model/page.ts';
import type { PrinterProfile } from '../../src/model/printer.ts';
import type { PaperLayer, Template } from '../../src/model/template.ts';
import type { ReadPage, ReadPath, ReadPdf } from './read-pdf.ts';

/** 1 in = 25.4 mm = 72 pt. */
const MM_PER_PT = 25.4 / 72;

/** Lines of a template that must come out on paper; words and their leaders may move. */
const DRAWN: readonly PaperLayer[] = ['cut', 'bevel', 'fold', 'groove', 'marks'];

/** A printed line counts for a template's where it runs so near, mm. */
const SAME_LINE_MM = 0.01;

/** What was measured on the printed pages of one file, mm. */
export interface PaperMeasures {
  /** Farthest a corner or middle of a template's line lies from the nearest printed line of its layer, tiles laid where they belong. */
  readonly offMm: number;
  /** Farthest an end of a printed line lies from the nearest line of a template of its layer: what was drawn and should not be. */
  readonly strayMm: number;
  /** Longest stretch of a template's line that no page shows. */
  readonly lostMm: number;
  /** Corners of cut lines looked at, and those that no page shows. */
  readonly corners: number;
  readonly lostCorners: number;
  /** Tile pages without any line of a template. */
  readonly blankPages: number;
  /** Farthest a side of the square of the first page is off its own length. */
  readonly squareOffMm: number;
  /** Farthest a line reaches out of the paper; 0 where none does. */
  readonly outsideMm: number;
}

/**
 * Measures a file as it comes out of a printer that stretches pages by the profile's shares, about their middle or, on a roll, along it; without one
 * as it is. Only what
 * the file itself draws is looked at; of the pages that were asked for only the plan of the tiles is used.
 */
export function measurePaper(
  read: ReadPdf,
  plan: Pick<PageSet, 'pages' | 'blocks'>,
  templates: readonly Template[],
  printer: PrinterProfile | null,
  isRoll = false,
): PaperMeasures {
  const paths = read.pages.map((page) => printedPaths(page, printer, isRoll));
  let [offMm, strayMm, lostMm, corners, lostCorners] = [0, 0, 0, 0, 0];
  for (const block of plan.blocks) {
    const { pageOfTile, columns, stepXMm, stepYMm, originXMm, originYMm, placements } = block;
    const printed: { layer: string | null; segment: Segment; isEdge: boolean }[] = [];
    pageOfTile.forEach((page, tile) => {
      if (page < 0) return;
      const [dx, dy] = [(tile % columns) * stepXMm - originXMm, Math.floor(tile / columns) * stepYMm - originYMm];
      for (const { layer, points, closed } of paths[page])
        for (const [ax, ay, bx, by] of segmentsOf(points, closed))
          printed.push({
            layer,
            segment: [ax + dx, ay + dy, bx + dx, by + dy],
            // A filled arrow head that is cut has a side on the tile's edge.
            isEdge:
              layer === 'Marks' &&
              (runsAlong(ax - originXMm, bx - originXMm, block.tileWidthMm) ||
                runsAlong(ay - originYMm, by - originYMm, block.tileHeightMm)),
          });
    });
    for (const layer of DRAWN) {
      const lines = printed.filter((line) => line.layer?.toLowerCase() === layer);
      const own = lines.map(({ segment }) => segment);
      const onPaper = new SegmentGrid(own);
      const asked = placements.flatMap((placement) => linesOf(templates, placement.piece, placement, layer));
      const meant = new SegmentGrid(asked.map(({ segment }) => segment));
      for (const {
        segment: [ax, ay, bx, by],
      } of lines.filter(({ isEdge }) => !isEdge))
        for (const t of [0, 0.5, 1])
          strayMm = Math.max(strayMm, meant.distance(ax + t * (bx - ax), ay + t * (by - ay)));
      for (const { segment, isFilled } of asked) {
        const [ax, ay, bx, by] = segment;
        if (isFilled) continue;
        for (const t of [0, 0.5]) {
          const off = onPaper.distance(ax + t * (bx - ax), ay + t * (by - ay));
          offMm = Math.max(offMm, off);
          if (layer !== 'cut' || t > 0) continue;
          corners += 1;
          if (off > SAME_LINE_MM) lostCorners += 1;
        }
        lostMm = Math.max(lostMm, onPaper.longestGap(segment, SAME_LINE_MM));
      }
    }
  }
  const blankPages = plan.pages.filter(
    ({ kind }, i) =>
      kind === 'tile' && !paths[i].some(({ layer }) => DRAWN.some((drawn) => layer?.toLowerCase() === drawn)),
  ).length;
  return {
    offMm,
    strayMm,
    lostMm,
    corners,
    lostCorners,
    blankPages,
    squareOffMm: squareOff(paths[0]),
    outsideMm: Math.max(
      0,
      ...read.pages.map((page, i) => outside(page, paths[i], isRoll && printer !== null ? printer.upShare : 1)),
    ),
  };
}

/** True when both ends lie on one of two lines, at nought and at a tile's size. */
const runsAlong = (a: number, b: number, size: number): boolean =>
  [0, size].some((at) => Math.max(Math.abs(a - at), Math.abs(b - at)) < SAME_LINE_MM);

type Segment = readonly [ax: number, ay: number, bx: number, by: number];
type Printed = Pick<ReadPath, 'layer' | 'closed'> & { readonly points: readonly number[] };

/** A page's lines as they lie on the paper that comes out, mm. */
function printedPaths(
  { widthPt, heightPt, paths }: ReadPage,
  printer: PrinterProfile | null,
  isRoll: boolean,
): readonly Printed[] {
  const [mx, my] = [(widthPt * MM_PER_PT) / 2, (heightPt * MM_PER_PT) / 2];
  const [across, up] = printer === null ? [1, 1] : [printer.acrossShare, printer.upShare];
  const middleUp = isRoll ? up * my : my;
  return paths.map(({ layer, closed, points }) => ({
    layer,
    closed,
    points: points.map((pt, i) =>
      i % 2 === 0 ? mx + across * (pt * MM_PER_PT - mx) : middleUp + up * (pt * MM_PER_PT - my),
    ),
  }));
}

function segmentsOf(points: ArrayLike<number>, closed: boolean): readonly Segment[] {
  const count = points.length / 2;
  return Array.from({ length: closed ? count : count - 1 }, (_, i): Segment => {
    const j = (i + 1) % count;
    return [points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]];
  });
}

function linesOf(
  templates: readonly Template[],
  piece: string,
  move: Move2,
  layer: PaperLayer,
): readonly { segment: Segment; isFilled: boolean }[] {
  const template = templates.find((candidate) => candidate.piece === piece);
  if (template === undefined) throw new Error(`no template of ${piece}`);
  return template.drawing.strokes
    .filter(({ role }) => LINE_STYLES[role].layer === layer && role !== 'leader')
    .flatMap(({ points, closed, filled }) =>
      segmentsOf(movePoints(points, move), closed || filled === true).map((segment) => ({
        segment,
        isFilled: filled === true,
      })),
    );
}

/** How far the sides of the ruled square, the largest on the layer, are off 100 mm, or 50 on small paper. */
function squareOff(paths: readonly Printed[]): number {
  const rings = paths.filter(({ layer, closed, points }) => layer === 'Ruler' && closed && points.length === 8);
  if (rings.length !== 1) throw new Error(`${rings.length} squares on the first page`);
  const sides = segmentsOf(rings[0].points, true).map(([ax, ay, bx, by]) => Math.hypot(bx - ax, by - ay));
  const nominal = Math.min(...sides) > 75 ? 100 : 50;
  return Math.max(...sides.map((side) => Math.abs(side - nominal)));
}

function outside({ widthPt, heightPt }: ReadPage, paths: readonly Printed[], up: number): number {
  const most = [widthPt * MM_PER_PT, up * heightPt * MM_PER_PT];
  let worst = 0;
  for (const { points } of paths) points.forEach((mm, i) => (worst = Math.max(worst, -mm, mm - most[i % 2])));
  return worst;
}

/** Finds what of many straight parts lies near a place. */
class SegmentGrid {
  readonly #segments: readonly Segment[];
  readonly #cells = new Map<string, number[]>();

  constructor(segments: readonly Segment[]) {
    this.#segments = segments;
    for (const [i, segment] of segments.entries())
      for (const key of cellsOf(segment)) {
        const cell = this.#cells.get(key);
        if (cell === undefined) this.#cells.set(key, [i]);
        else cell.push(i);
      }
  }

  /** To the nearest part within a cell's size; Infinity where there is none. */
  distance(x: number, y: number): number {
    let best = Infinity;
    for (const i of this.#near([x, y, x, y])) best = Math.min(best, distanceTo(this.#segments[i], x, y));
    return best;
  }

  /** Longest stretch of a part that no other within a distance runs along. */
  longestGap(segment: Segment, within: number): number {
    const [ax, ay, bx, by] = segment;
    const length = Math.hypot(bx - ax, by - ay);
    if (length < within) return 0;
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    const spans: [number, number][] = [];
    for (const i of this.#near(segment)) {
      const [cx, cy, dx, dy] = this.#segments[i];
      const away = [
        [cx, cy],
        [dx, dy],
      ].map(([x, y]) => [(x - ax) * ux + (y - ay) * uy, Math.abs((y - ay) * ux - (x - ax) * uy)]);
      if (Math.max(away[0][1], away[1][1]) > within) continue;
      spans.push([Math.min(away[0][0], away[1][0]), Math.max(away[0][0], away[1][0])]);
    }
    spans.sort((a, b) => a[0] - b[0]);
    let [reached, gap] = [0, 0];
    for (const [from, to] of spans) {
      if (from > reached) gap = Math.max(gap, Math.min(from, length) - reached);
      reached = Math.max(reached, to);
    }
    return Math.max(gap, length - reached);
  }

  #near(segment: Segment): ReadonlySet<number> {
    return new Set([...cellsOf(segment, 1)].flatMap((key) => this.#cells.get(key) ?? []));
  }
}

const CELL_MM = 5;

function* cellsOf([ax, ay, bx, by]: Segment, grow = 0): Generator<string> {
  // Cells along the line, cut into steps of a cell: a long slanting line is in few.
  const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / CELL_MM));
  const seen = new Set<string>();
  for (let k = 0; k < steps; k += 1) {
    const at = (a: number, b: number, share: number): number => a + ((b - a) * share) / steps;
    const [x0, x1] = [at(ax, bx, k), at(ax, bx, k + 1)].sort((a, b) => a - b);
    const [y0, y1] = [at(ay, by, k), at(ay, by, k + 1)].sort((a, b) => a - b);
    for (let i = Math.floor(x0 / CELL_MM) - grow; i <= Math.floor(x1 / CELL_MM) + grow; i += 1)
      for (let j = Math.floor(y0 / CELL_MM) - grow; j <= Math.floor(y1 / CELL_MM) + grow; j += 1) seen.add(`${i} ${j}`);
  }
  yield* seen;
}

function distanceTo([ax, ay, bx, by]: Segment, x: number, y: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(ax + t * dx - x, ay + t * dy - y);
}
