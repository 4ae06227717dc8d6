import type { Finding, FindingPlace } from '../base/finding.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { CutBeside } from '../model/plain-piece.ts';
import type { CopyName, OddCopies, SheetLayout, SplitPath } from '../model/sheet.ts';
import { fillOf } from '../project/fill-rule.ts';
import type { Project } from '../project/project.ts';

/** What the maker should know of a layout on foam: what has no place, what is held badly, and what was moved. */
export function sheetFindings(
  { foams, stock }: Pick<Project, 'foams' | 'stock'>,
  cut: readonly (FoamPiece | CutBeside)[],
  { tooLarge, splits = [], odd = NONE }: SheetLayout,
): readonly Finding[] {
  const pieceOf = (id: string): FoamPiece | CutBeside => {
    const piece = cut.find((candidate) => candidate.id === id);
    if (piece === undefined) throw new Error(`sheetFindings: no piece ${id}`);
    return piece;
  };
  const foamName = ({ foam }: FoamPiece | CutBeside): string => foams.find(({ id }) => id === foam)?.name ?? foam;
  const of = (
    code: string,
    severity: Finding['severity'],
    id: string,
    text: (piece: FoamPiece | CutBeside) => string,
  ): Finding => ({
    code,
    severity,
    text: text(pieceOf(id)),
    where: placeOf(pieceOf(id)),
  });
  return [
    ...tooLarge.map((id) => {
      const split = splits.find(({ piece }) => piece === id);
      return of('nest/too-large', 'warning', id, (piece) =>
        fillOf(stock, piece.foam).buys
          ? `${piece.name} is larger than a sheet of ${foamName(piece)}: ${splitText(split)}, or take a larger sheet.`
          : `No sheet of ${foamName(piece)} in hand is large enough for ${piece.name}: put a larger one into stock, let sheets be bought, or ${splitText(split)}.`,
      );
    }),
    ...byPiece(odd.unlaid).map(([id, count]) =>
      of(
        'nest/no-room',
        'warning',
        id,
        (piece) =>
          `The sheets of ${foamName(piece)} in hand have no room for ${piece.name}${times(count)}: put another sheet into stock, or let sheets be bought.`,
      ),
    ),
    ...byPiece(odd.heldBadly).map(([id]) =>
      of(
        'nest/held-badly',
        'warning',
        id,
        (piece) =>
          `${piece.name} is held where it lies over another piece, over a place to keep clear of, or off its sheet: move it, or let it go.`,
      ),
    ),
    ...byPiece(odd.heldNowhere).map(([id]) =>
      of(
        'nest/held-nowhere',
        'warning',
        id,
        (piece) =>
          `${piece.name} is held on a sheet that is not in stock: it was laid anew; let it go, or hold it where it lies now.`,
      ),
    ),
    ...byPiece(odd.movedOn).map(([id]) =>
      of(
        'nest/moved-on',
        'note',
        id,
        (piece) => `${piece.name} no longer fits where it lay in the layout that was taken: it was laid anew.`,
      ),
    ),
  ];
}

/** What to do: part it, along which line where one was found. */
function splitText(split: SplitPath | undefined): string {
  if (split === undefined) return 'part it once more';
  const line = `part it along the straight line of ${Math.round(split.lengthMm)} mm that is offered`;
  return split.doBothFit
    ? `${line}, so that both parts fit`
    : `${line}, so that one part fits, and the other once more`;
}

const placeOf = (piece: FoamPiece | CutBeside): FindingPlace =>
  'seam' in piece ? { seam: piece.seam } : { piece: piece.id };

/** Each piece once, with how many of its copies. */
function byPiece(copies: readonly CopyName[]): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const { piece } of copies) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  return [...counts];
}

const NONE: OddCopies = { unlaid: [], heldBadly: [], heldNowhere: [], movedOn: [] };

const times = (count: number): string => (count === 1 ? '' : ` (${count} times)`);
