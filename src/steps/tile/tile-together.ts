import type { Stepwise } from '../../base/stepwise.ts';
import type { Ring } from '../../geom/ring.ts';
import type { Template } from '../../model/template.ts';
import { placeTemplate, type Block } from './block.ts';
import { drawnOutline } from './drawn-outline.ts';
import type { Lattice } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import type { NestedPlace, PaperNester } from './paper-nester.ts';
import { settled } from './settle-labels.ts';
import { TEMPLATE_GAP_MM } from './share-pages.ts';
import { fixedPart, tileTogether } from './tile-template.ts';

/** A template that is larger than a page, parted by itself, and how many of its labels found no free place. */
export interface TiledAlone {
  readonly template: Template;
  readonly block: Block;
  readonly crowded: number;
}

/** Columns and rows of the lattices that several templates are laid on together. */
const LATTICES = [
  [2, 1],
  [1, 2],
  [3, 1],
  [1, 3],
  [2, 2],
  [3, 2],
  [2, 3],
] as const;

/** More templates than this are tried on the first two lattices only: each try takes longer. */
const MANY = 12;

const printedOf = ({ isPrinted }: Block): number => isPrinted.filter(Boolean).length;

/** Blocks of templates that are larger than a page: side by side on joined pages where that takes fewer of them, else each by itself. */
export function* tiledBlocks(
  alone: readonly TiledAlone[],
  frame: PaperFrame,
  nester: PaperNester | undefined,
): Stepwise<readonly Block[]> {
  const blocks = alone.map(({ block }) => block);
  if (nester === undefined || alone.length < 2) return blocks;
  const outlines = alone.map(({ template }) => drawnOutline(fixedPart(template.drawing)));
  const plans: { readonly pages: number; readonly groups: readonly Group[] }[] = [];
  for (const [columns, rows] of alone.length > MANY ? LATTICES.slice(0, 2) : LATTICES) {
    yield;
    const groups = yield* groupsOn(latticeOf(frame, columns, rows), alone, outlines, nester);
    if (groups !== null) plans.push({ pages: groups.reduce((sum, group) => sum + pagesOf(group), 0), groups });
  }
  let best: readonly Block[] = blocks;
  // Labels are settled for the plans that promise most alone: it takes long.
  for (const { pages, groups } of plans.toSorted((a, b) => a.pages - b.pages)) {
    if (pages >= sumOf(best)) break;
    yield;
    const found: Block[] = [];
    for (const group of groups) {
      yield;
      found.push(...settledGroup(group));
    }
    if (sumOf(found) < sumOf(best)) best = found;
  }
  return best;
}

/** Templates that lie on one lattice, each by itself and, where that is fewer pages, together. */
interface Group {
  readonly apart: readonly TiledAlone[];
  readonly together: Block | null;
}

function* groupsOn(
  lattice: Lattice,
  alone: readonly TiledAlone[],
  outlines: readonly Ring[],
  nester: PaperNester,
): Stepwise<readonly Group[] | null> {
  const width = (lattice.columns - 1) * lattice.stepXMm + lattice.tileWidthMm;
  const height = (lattice.rows - 1) * lattice.stepYMm + lattice.tileHeightMm;
  const places = yield* nester.onSheets(outlines, { width, height }, TEMPLATE_GAP_MM);
  if (places === null) return null;
  return [...bySheet(places)].map((own): Group => {
    const apart = own.map(({ index }) => alone[index]);
    if (own.length === 1) return { apart, together: null };
    const laid = own.map(({ index, move }) => placeTemplate(alone[index].template, move));
    const together = tileTogether(lattice, laid);
    return { apart, together: printedOf(together) < sumOf(apart.map(({ block }) => block)) ? together : null };
  });
}

const pagesOf = ({ apart, together }: Group): number =>
  together === null ? sumOf(apart.map(({ block }) => block)) : printedOf(together);

/** Together where that leaves no more labels without a free place than each by itself. */
function settledGroup({ apart, together }: Group): readonly Block[] {
  const blocks = apart.map(({ block }) => block);
  if (together === null) return blocks;
  const { block, crowded } = settled(together);
  return crowded > apart.reduce((sum, each) => sum + each.crowded, 0) ? blocks : [block];
}

const sumOf = (blocks: readonly Block[]): number => blocks.reduce((sum, block) => sum + printedOf(block), 0);

function bySheet(places: readonly NestedPlace[]): Iterable<readonly NestedPlace[]> {
  const sheets = new Map<number, NestedPlace[]>();
  for (const place of places) sheets.set(place.room, [...(sheets.get(place.room) ?? []), place]);
  return sheets.values();
}

const latticeOf = (frame: PaperFrame, columns: number, rows: number): Lattice => ({
  columns,
  rows,
  tileWidthMm: frame.tileWidthMm,
  tileHeightMm: frame.tileHeightMm,
  stepXMm: frame.tileWidthMm - frame.overlapMm,
  stepYMm: frame.tileHeightMm - frame.overlapMm,
});
