import type { FoamId, PieceId } from '../base/ids.ts';
import type { HeldCopy, KeptSheet, SheetName } from '../model/stock.ts';
import type { Command } from './commands.ts';
import { holdCopy, keepLayout } from './stock-commands.ts';

/** A sheet of the layout that lies on the bench: what the document keeps of it. */
export interface LaidSheet {
  readonly foam: FoamId;
  readonly name: SheetName;
  readonly placements: readonly {
    readonly piece: PieceId;
    readonly copy: number;
    readonly x: number;
    readonly y: number;
    readonly turnRad: number;
    readonly isFlipped?: boolean;
  }[];
}

/** The layout on the bench as the document keeps it. */
export const keptOf = (sheets: readonly LaidSheet[]): readonly KeptSheet[] =>
  sheets.map(({ foam, name, placements }) => ({
    foam,
    sheet: { stock: name.stock, nth: name.nth },
    places: placements.map(({ piece, copy, x, y, turnRad, isFlipped = false }) => ({
      piece,
      copy,
      x,
      y,
      turnRad,
      ...(isFlipped ? { isFlipped } : {}),
    })),
  }));

/**
 * Puts a copy of a piece where a hand laid it and holds it there; all other pieces stay where they lie.
 * @param sheets  the layout on the bench, with the copy in it.
 * @param held    where it comes to lie; its sheet is one of those, of the same foam.
 */
export function placeCopy(sheets: readonly LaidSheet[], piece: PieceId, held: HeldCopy, mergeKey?: string): Command {
  const isOwn = (name: SheetName): boolean => name.stock === held.sheet.stock && name.nth === held.sheet.nth;
  const from = sheets.find(({ placements }) => placements.some((one) => one.piece === piece && one.copy === held.copy));
  const { sheet: _, ...place } = held;
  const kept = keptOf(sheets).map((one) => {
    const others = one.places.filter((other) => other.piece !== piece || other.copy !== held.copy);
    const isTarget = one.foam === from?.foam && isOwn(one.sheet);
    if (!isTarget) return others.length === one.places.length ? one : { ...one, places: others };
    return { ...one, places: [...others, { piece, ...place }] };
  });
  const commands = [keepLayout(kept.filter(({ places }) => places.length > 0)), holdCopy(piece, held)];
  return {
    label: 'move a piece on its sheet',
    ...(mergeKey === undefined ? {} : { mergeKey }),
    apply: (project) => commands.reduce((changed, command) => command.apply(changed), project),
  };
}
