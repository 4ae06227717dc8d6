import type { Ring } from '../../geom/ring.ts';
import { uprightBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Stroke, Words } from '../../model/template.ts';
import type { Block, PlacedTemplate } from './block.ts';
import { findLabelPlace, holdsBox, movedLabel, type Cell } from './label-place.ts';
import { brokenLabel, drawingOf, labelsOf, type Label } from './labels.ts';
import { Obstacles } from './obstacles.ts';
import { refitLine } from './refit-line.ts';
import { visibleCell } from './visible-cell.ts';
import { isBoxInside, turnedWordsBox, wordsBox } from './words-box.ts';

/** A block's templates with every label where it stays whole. */
export interface SettledBlock {
  readonly templates: readonly PlacedTemplate[];
  /** Labels for which no place off lines and other words was found, their leaders included. */
  readonly crowded: number;
}

/**
 * Gives every label of a block a place where it stays whole once the pages are joined: where it was meant to stand if it is whole there,
 * else as near as keeps it off lines and other words, its leader drawn anew. Blocks of lines are broken, and words made smaller, only where
 * no page could hold them. No words are lost.
 */
export function settleLabels({ lattice, templates, isPrinted }: Block): SettledBlock {
  const cells = isPrinted.flatMap((is, tile) => (is ? [visibleCell(lattice, isPrinted, tile)] : []));
  const obstacles = new Obstacles();
  const isWhole = (line: Words): boolean => cells.some((cell) => isBoxInside(wordsBox(line), cell));
  const drawn = templates.map((template) => ({ template, ...labelsOf(template.drawing) }));
  for (const { strokes } of drawn) obstacles.addStrokes(strokes);
  const inside = drawn.map(({ labels }) =>
    labels.filter((label) => label.leader === null && label.lines.every(isWhole)),
  );
  for (const { box } of inside.flat()) obstacles.addBox(box);
  const keptBeside: Label[] = [];
  const parted = drawn.map(({ template, strokes, labels }, i) => {
    // Words beside one template may lie on another.
    const isClear = clearOf(
      drawn.filter((_, other) => other !== i).map((other) => other.strokes),
      [...inside.filter((_, other) => other !== i).flat(), ...keptBeside],
    );
    const beside = labels.filter((label) => label.leader !== null && label.lines.every(isWhole) && isClear(label));
    for (const { box, leader } of beside) {
      obstacles.addBox(box);
      if (leader !== null) obstacles.addStrokes([leader]);
    }
    keptBeside.push(...beside);
    return { template, strokes, labels, kept: new Set([...inside[i], ...beside]) };
  });
  let crowded = 0;
  const settled = parted.map(({ template, strokes, labels, kept }) => {
    const placer = new Placer(cells, obstacles, cutRings(strokes));
    const placed = labels.flatMap((label) => (kept.has(label) ? [label] : placer.place(label)));
    crowded += placer.crowded;
    return { ...template, drawing: drawingOf({ strokes, labels: placed }) };
  });
  return { templates: settled, crowded };
}

/** Whether a label lies clear of what is drawn of others, and so does its leader of their words. */
function clearOf(strokes: readonly (readonly Stroke[])[], labels: readonly Label[]): (label: Label) => boolean {
  if (strokes.length === 0) return () => true;
  const others = new Obstacles();
  for (const list of strokes) others.addStrokes(list);
  for (const { box, leader } of labels) {
    others.addBox(box);
    if (leader !== null) others.addStrokes([leader]);
  }
  return ({ box, leader }) => others.isFree(box) && (leader === null || isLeaderOpen(leader, others));
}

const isLeaderOpen = ({ points }: Stroke, obstacles: Obstacles): boolean =>
  obstacles.isOpen({ x: points[0], y: points[1] }, { x: points[points.length - 2], y: points[points.length - 1] });

/** The block with its labels settled. */
export function settled(block: Block): { readonly block: Block; readonly crowded: number } {
  const { templates, crowded } = settleLabels(block);
  return { block: { ...block, templates }, crowded };
}

/** Finds places for the labels of one template, one after the other. */
class Placer {
  crowded = 0;
  readonly #cells: readonly Cell[];
  readonly #obstacles: Obstacles;
  readonly #rings: readonly Ring[];

  constructor(cells: readonly Cell[], obstacles: Obstacles, rings: readonly Ring[]) {
    this.#cells = cells;
    this.#obstacles = obstacles;
    this.#rings = rings;
  }

  place(label: Label): readonly Label[] {
    const { lines, box } = label;
    if (this.#cells.some((cell) => holdsBox(cell, box))) {
      const found = findLabelPlace(label, this.#cells, this.#obstacles, this.#rings);
      if (found !== null) return [this.#put(label, found)];
    }
    if (lines.length > 1) return brokenLabel(label).flatMap((line) => this.place(line));
    if (!this.#cells.some((cell) => holdsBox(cell, box))) {
      const parts = refitLine(lines[0], this.#cells);
      if (parts.length > 1 || parts[0] !== lines[0]) {
        return parts.flatMap((line, i) =>
          this.place({ lines: [line], box: turnedWordsBox(line), leader: i === 0 ? label.leader : null }),
        );
      }
    }
    this.crowded += 1;
    return [this.#put(label, nearestInto(box, this.#cells))];
  }

  #put(label: Label, place: TurnedBox): Label {
    const moved = movedLabel(label, place);
    if (moved.leader !== null) {
      if (!isLeaderOpen(moved.leader, this.#obstacles)) this.crowded += 1;
      this.#obstacles.addStrokes([moved.leader]);
    }
    this.#obstacles.addBox(moved.box);
    return moved;
  }
}

function cutRings(strokes: readonly Stroke[]): readonly Ring[] {
  return strokes.filter(({ role, closed }) => role === 'cut' && closed).map(({ points }) => points);
}

/** The box moved as little as brings it into a cell, whatever is drawn there. */
function nearestInto(box: TurnedBox, cells: readonly Cell[]): TurnedBox {
  const upright = uprightBox(box);
  const moves = cells.map((cell) => ({
    x: Math.max(0, cell.minX - upright.minX) - Math.max(0, upright.maxX - cell.maxX),
    y: Math.max(0, cell.minY - upright.minY) - Math.max(0, upright.maxY - cell.maxY),
  }));
  const { x, y } = moves.reduce((best, move) =>
    Math.hypot(move.x, move.y) < Math.hypot(best.x, best.y) ? move : best,
  );
  return { ...box, x: box.x + x, y: box.y + y };
}
