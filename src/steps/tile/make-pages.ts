import type { PieceId } from '../../base/ids.ts';
import { inEnglish } from '../../base/paper-language.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import type { PageSet, PaperBlock } from '../../model/page.ts';
import { sizeOf, type Block } from './block.ts';
import type { FilledPage } from './flow.ts';
import { tilesAlong } from './lattice.ts';
import { blockSteps } from './make-blocks.ts';
import { mapPages } from './map-page.ts';
import { frontPage } from './front-page.ts';
import { cutThings, type PageInput } from './page-input.ts';
import { FOOT_MM, MOST_PAGES, paperFrame, type PaperFrame } from './paper-frame.ts';
import { scalePages } from './scale-page.ts';
import { fullBox } from './words-box.ts';
import { tileContent, tileName, tilePage, type TileContent } from './tile-page.ts';

/**
 * Puts all templates on paper: a page to measure first, a map, then the tiles, block by block, row by row from the lower left.
 * @returns fails with `tile/margin` or `tile/overlap` where the paper leaves no room, `tile/nothing` without templates, and
 *          `tile/too-many-pages` where the pieces are so large that their size must be wrong.
 */
export const makePages = (input: PageInput): Result<PageSet> => runAtOnce(pageSteps(input));

/** The same in stretches of a page or two. */
export function* pageSteps(input: PageInput): Stepwise<Result<PageSet>> {
  const framed = paperFrame(input.paper, input.orientation, input.marginMm, input.overlapMm);
  if (!framed.ok) return framed;
  const frame = framed.value;
  const { ruled = [], say = inEnglish } = input;
  if (input.templates.length === 0 && ruled.length === 0)
    return fail('tile/nothing', 'There is no template to print yet: part the sculpt into pieces first.');
  if (latticeSize(input, frame) > MOST_TILES) return tooMany('more than a thousand');
  const blocks = yield* blockSteps(input.templates, frame, input.nester);
  const printed = blocks.reduce((sum, block) => sum + block.isPrinted.filter(Boolean).length, 0);
  if (printed > MOST_PAGES) return tooMany(String(printed));

  const set: { block: Block; names: string[]; contents: TileContent[] }[] = [];
  for (const [b, block] of blocks.entries()) {
    const names = block.isPrinted.map((_, tile) => tileName(block, b + 1, blocks.length, tile));
    const contents: TileContent[] = [];
    for (const [tile, isPrinted] of block.isPrinted.entries()) {
      yield;
      if (isPrinted) contents.push(tileContent(block, tile, frame));
    }
    set.push({ block, names, contents });
  }
  const hasJoints = blocks.some((block) => block.isPrinted.filter(Boolean).length > 1);
  const scale = scalePages(input, frame, hasJoints);
  yield;
  const map = mapPages(input, frame, blocks, pagesOfPieces(set));
  yield;
  const pageCount = scale.length + map.length + printed;
  const title = titleOf(input);
  const front = [...scale.map(named('scale')), ...map.map(named('map'))];
  const pages = front.map(({ kind, name, filled }, i) =>
    frontPage(kind, name, filled, frame, { title, pageNumber: i + 1, pageCount, say }),
  );
  const pieces = new Map<PieceId, CutThing>(cutThings(input).map((piece) => [piece.id, piece]));
  const records: PaperBlock[] = [];
  for (const [b, { block, names, contents }] of set.entries()) {
    const pageOfTile = block.isPrinted.map(() => -1);
    for (const content of contents) {
      yield;
      pageOfTile[content.tile] = pages.length;
      const said = {
        title,
        pageNumber: pages.length + 1,
        pageCount,
        pieces,
        nameOfTile: (tile: number) => names[tile],
        say,
      };
      pages.push(tilePage(block, content, frame, said));
    }
    records.push(recordOf(block, b + 1, frame, pageOfTile));
  }
  const blankTiles = records.reduce((sum, record) => sum + record.pageOfTile.filter((page) => page < 0).length, 0);
  const turned = input.templates.flatMap(({ piece, turned: twin }) =>
    twin === undefined ? [] : [{ piece: twin, template: piece }],
  );
  return ok({ pages, blocks: records, blankTiles, turned, ...(ruled.length === 0 ? {} : { ruled }) }, framed.notes);
}

/** Tiles tried for one template at most: more would take long to find out that they are too many. */
const MOST_TILES = 8 * MOST_PAGES;

function latticeSize({ templates }: PageInput, { tileWidthMm, tileHeightMm, overlapMm }: PaperFrame): number {
  const sizes = templates.map((template) => sizeOf(fullBox(template)));
  const tiles = sizes.map(({ width, height }) => {
    const columns = tilesAlong(width, tileWidthMm, tileWidthMm - overlapMm);
    return columns * tilesAlong(height, tileHeightMm, tileHeightMm - overlapMm);
  });
  return tiles.reduce((most, count) => Math.max(most, count), 0);
}

function tooMany(count: string): ReturnType<typeof fail> {
  return fail(
    'tile/too-many-pages',
    `The templates would fill ${count} pages: check the size of the model, or choose larger paper.`,
  );
}

function titleOf({ projectName, projectRevision, date, printer, say = inEnglish }: PageInput): string {
  const isFor = printer === undefined ? [] : [say(`for ${printer.name}`)];
  return [projectName, say(`revision ${projectRevision}`), ...(date === undefined ? [] : [date]), ...isFor].join(' · ');
}

/** Names of the pages each piece is on, in their order. */
function pagesOfPieces(
  set: readonly { readonly names: readonly string[]; readonly contents: readonly TileContent[] }[],
): ReadonlyMap<PieceId, readonly string[]> {
  const pagesOf = new Map<PieceId, string[]>();
  for (const { names, contents } of set) {
    for (const { tile, pieces } of contents) {
      for (const { piece } of pieces) pagesOf.set(piece, [...(pagesOf.get(piece) ?? []), names[tile]]);
    }
  }
  return pagesOf;
}

function named(kind: 'scale' | 'map') {
  return (filled: FilledPage, i: number) => ({ kind, name: i === 0 ? kind : `${kind} ${i + 1}`, filled });
}

function recordOf(block: Block, number: number, frame: PaperFrame, pageOfTile: readonly number[]): PaperBlock {
  return {
    number,
    ...block.lattice,
    originXMm: frame.marginMm,
    originYMm: frame.marginMm + FOOT_MM,
    placements: block.templates.map(({ piece, move }) => ({ piece, ...move })),
    pageOfTile,
  };
}
