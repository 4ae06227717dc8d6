import { boxOfPoints } from '../../../src/geom/ring.ts';
import { doesSegmentMeetBox, doTurnedBoxesMeet, growTurnedBox, uprightBox } from '../../../src/geom/turned-box.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import type { Page, PageSet, PaperBlock } from '../../../src/model/page.ts';
import type { LineRole, Stroke, Template } from '../../../src/model/template.ts';
import { findPaper, PAPERS } from '../../../src/model/papers.ts';
import { turnedWordsBox } from '../../../src/steps/tile/words-box.ts';
import type { PageInput } from '../../../src/steps/tile/page-input.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { handMadeTemplate, pieceOf, shieldTemplate, stripTemplate } from '../../support/hand-made-templates.ts';

/** One large piece, strips short and long, and small parts. */
export function kit(): readonly Template[] {
  return [
    shieldTemplate('shield'),
    stripTemplate('rim', 620, 40),
    stripTemplate('strap', 240, 35),
    stripTemplate('grip', 180, 60),
    ...Array.from({ length: 9 }, (_, i) => stripTemplate(`stud ${i + 1}`, 28 + i, 24)),
    handMadeTemplate('boss', octagon(48)),
  ];
}

function octagon(radius: number): readonly number[] {
  return Array.from({ length: 8 }, (_, i) => [
    radius * Math.cos((i * Math.PI) / 4),
    radius * Math.sin((i * Math.PI) / 4),
  ]).flat();
}

/** What pages are made of, A4 upright unless said otherwise. */
export function pageInput(change: Partial<PageInput> = {}): PageInput {
  const templates = change.templates ?? kit();
  return {
    templates,
    pieces: templates.map((template, i) => pieceOf(template, i + 1)),
    paper: expectOk(findPaper('A4')),
    orientation: 'portrait',
    marginMm: 10,
    overlapMm: 10,
    projectName: 'Lamplighter shield',
    projectRevision: 4,
    date: '2026-11-25',
    cautions: ['Knife: fresh blade.', 'Read the label.'],
    ...change,
  };
}

/** Every paper, upright and across, and rolls. */
export const PAPER_CASES: readonly { readonly name: string; readonly change: Partial<PageInput> }[] = [
  ...PAPERS.flatMap((paper) =>
    (['portrait', 'landscape'] as const).map((orientation) => ({
      name: `${paper.name} ${orientation}`,
      change: { paper, orientation },
    })),
  ),
  ...[310, 610, 914].map((width) => ({ name: `roll ${width}`, change: { paper: expectOk(findPaper('roll', width)) } })),
  { name: 'small own size', change: { paper: expectOk(findPaper('custom', 120, 160)), overlapMm: 5 } },
  { name: 'tiles that only meet', change: { overlapMm: 0 } },
  { name: 'wide overlap, wide margin', change: { marginMm: 20, overlapMm: 40 } },
];

/** The tiles of a block with their pages. */
export function tilesOf(block: PaperBlock, pages: readonly Page[]): readonly { tile: number; page: Page }[] {
  return block.pageOfTile.flatMap((page, tile) => (page < 0 ? [] : [{ tile, page: pages[page] }]));
}

/** From a page to its block. */
export function blockFromPage(block: PaperBlock, tile: number): { x: number; y: number; turnRad: number } {
  return {
    x: (tile % block.columns) * block.stepXMm - block.originXMm,
    y: Math.floor(tile / block.columns) * block.stepYMm - block.originYMm,
    turnRad: 0,
  };
}

/** A stroke's straight parts, packed ax ay bx by. */
export function segmentsOf({ points, closed }: Pick<Stroke, 'points' | 'closed'>): readonly (readonly number[])[] {
  const count = points.length / 2;
  return Array.from({ length: closed ? count : count - 1 }, (_, i) => {
    const j = (i + 1) % count;
    return [points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]];
  });
}

/** All printed lines of one kind, block space. */
function printed(block: PaperBlock, pages: readonly Page[], role: LineRole): readonly (readonly number[])[] {
  return tilesOf(block, pages).flatMap(({ tile, page }) =>
    page.drawing.strokes
      .filter((stroke) => stroke.role === role)
      .flatMap((stroke) => segmentsOf({ ...stroke, points: movePoints(stroke.points, blockFromPage(block, tile)) })),
  );
}

/** Greatest distance from a point of the templates' lines of one kind to the nearest printed one, tiles laid where they belong, mm. */
export function rejoinError(templates: readonly Template[], { pages, blocks }: PageSet, role: LineRole): number {
  let worst = 0;
  for (const block of blocks) {
    const lines = printed(block, pages, role);
    for (const placement of block.placements) {
      const template = templates.find(({ piece }) => piece === placement.piece);
      if (template === undefined) throw new Error(`no template of ${placement.piece}`);
      for (const stroke of template.drawing.strokes) {
        if (stroke.role !== role) continue;
        for (const [ax, ay, bx, by] of segmentsOf({ ...stroke, points: movePoints(stroke.points, placement) })) {
          for (const t of [0, 0.31, 0.5, 0.77])
            worst = Math.max(worst, nearest(ax + t * (bx - ax), ay + t * (by - ay), lines));
        }
      }
    }
  }
  return worst;
}

function nearest(x: number, y: number, segments: readonly (readonly number[])[]): number {
  let best = Infinity;
  for (const [ax, ay, bx, by] of segments) {
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
    best = Math.min(best, Math.hypot(ax + t * dx - x, ay + t * dy - y));
  }
  return best;
}

/** True when all points of all strokes lie in the box, within rounding. */
export function areLinesInside({ drawing }: Page, minX: number, minY: number, maxX: number, maxY: number): boolean {
  return drawing.strokes.every(({ points }) => {
    const box = boxOfPoints(points);
    return box.minX > minX - 1e-6 && box.minY > minY - 1e-6 && box.maxX < maxX + 1e-6 && box.maxY < maxY + 1e-6;
  });
}

/** Words of a page that touch lines or other words. */
export function collisions(page: Page): readonly string[] {
  // A leader may end at the border of its words.
  const boxes = page.drawing.words.map((words) => ({
    text: words.text,
    box: growTurnedBox(turnedWordsBox(words), -0.05),
  }));
  const segments = page.drawing.strokes.flatMap((stroke) =>
    segmentsOf(stroke).map((segment) => ({ segment, round: boxOfPoints(segment), role: stroke.role })),
  );
  return boxes.flatMap(({ text, box }, i) => {
    const upright = uprightBox(box);
    const onWords = boxes.slice(i + 1).filter((other) => doTurnedBoxesMeet(box, other.box));
    const onLines = segments.filter(
      ({ segment: [ax, ay, bx, by], round }) =>
        round.minX <= upright.maxX &&
        round.maxX >= upright.minX &&
        round.minY <= upright.maxY &&
        round.maxY >= upright.minY &&
        doesSegmentMeetBox(ax, ay, bx, by, box),
    );
    return [
      ...onWords.map((other) => `${page.name}: ${text} on ${other.text}`),
      ...onLines.map(({ role }) => `${page.name}: ${text} on a ${role} line`),
    ];
  });
}
