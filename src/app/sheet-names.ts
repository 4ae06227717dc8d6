import { formatThickness } from '../base/format-length.ts';
import type { PieceId } from '../base/ids.ts';
import type { PieceFill, TurnRule } from '../model/stock.ts';
import { fillOf } from '../project/fill-rule.ts';
import type { Project } from '../project/project.ts';
import type { InTheWay } from '../viewport/free-place.ts';
import { allCut, type Bench } from './bench-state.ts';
import { PLACING_WORDS } from './placing-words.ts';

/** A piece of the bench, whatever it is cut for. */
export const cutPiece = (bench: Bench, piece: PieceId) => allCut(bench).find(({ id }) => id === piece);

/** `4 Brow, copy 2 of 2`. */
export function nameOfCopy(bench: Bench, piece: PieceId, copy: number): string {
  const found = cutPiece(bench, piece);
  return found === undefined ? '' : PLACING_WORDS.piece(found.number, found.name, copy, found.quantity);
}

/** What is in the way, in one of the sentences for it. */
export function nameOfWay(
  bench: Bench,
  way: InTheWay,
  words: { readonly over: (name: string) => string; readonly clear: string; readonly edge: string },
): string {
  if (way === 'edge') return words.edge;
  return way.piece === null ? words.clear : words.over(nameOfCopy(bench, way.piece, way.copy));
}

/** How a piece may be turned on its sheet: one with a grain only half round, however its foam may lie. */
export function turnsOf(project: Project | null, bench: Bench, piece: PieceId): TurnRule {
  const foam = cutPiece(bench, piece)?.foam;
  if (foam === undefined) return 'none';
  const { turns } = fillOf(project?.stock, foam);
  const template = bench.pieces?.templates.find((one) => one.piece === piece);
  return turns === 'any' && template?.grainRad !== undefined ? 'half' : turns;
}

/** What was said of a piece's place. */
export const fillOfPiece = (project: Project | null, piece: PieceId): PieceFill | undefined =>
  project?.stock?.pieces?.find((one) => one.piece === piece);

/** `Sheet 1, EVA 6 mm`, and whatever is written on it, for each sheet of the layout. */
export function sheetTitles(project: Project | null, bench: Bench): readonly string[] {
  return (bench.sheets?.sheets ?? []).map(({ foam, thicknessMm, label }, i) => {
    const name = project?.foams.find(({ id }) => id === foam)?.name ?? '';
    const thickness = formatThickness(thicknessMm, project?.lengthUnit ?? 'mm');
    // Names of foams often say it, with whatever space.
    const isSaid = name.replace(/\s/g, '').includes(thickness.replace(/\s/g, ''));
    return [
      PLACING_WORDS.sheet(i + 1),
      isSaid ? name : `${name} ${thickness}`.trim(),
      ...(label === undefined ? [] : [label]),
    ].join(', ');
  });
}
