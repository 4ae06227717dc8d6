import type { Finding } from '../../base/finding.ts';
import type { FoamId } from '../../base/ids.ts';
import { Memo } from '../../base/memo.ts';
import type { Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainPiece, PlainWork } from '../../model/plain-piece.ts';
import type { Project } from '../../project/project.ts';
import { plainPieces } from '../../steps/foam/plain-pieces.ts';
import { remembered } from '../remembered.ts';
import { foamForThickness } from './foam-for-thickness.ts';
import { plainWorkOf } from './plain-work-of.ts';
import type { PlainOutcome } from './plain-outcome.ts';

/** Parts whose last results are kept: a prop has a few dozen, and a maker goes a few steps back and forth. */
const KEPT = 256;

/** Whole lists of parts that are kept. */
const KEPT_LISTS = 8;

/** Makes the parts of a project that no sculpt is parted for. */
export class PlainStage {
  readonly #works = new Memo<unknown[], Result<PlainWork>>(KEPT);
  readonly #pieces = new Memo<unknown[], readonly PlainPiece[]>(KEPT);
  readonly #outcomes = new Memo<unknown[], PlainOutcome>(KEPT);
  readonly #lists = new Memo<unknown[], readonly PlainOutcome[]>(KEPT_LISTS);
  readonly #piecesOf = new Memo<unknown[], readonly PlainPiece[]>(KEPT_LISTS);

  /**
   * The same list while nothing of it changes.
   * @param firstNumber of their first piece.
   * @param findings    what is found is added.
   */
  make({ plain = [], foams }: Project, firstNumber: number, findings: Finding[]): readonly PlainOutcome[] {
    let next = firstNumber;
    const all = plain.map((part) => {
      const own = part.foams.map((id) => foamOf(foams, id));
      const made = remembered(this.#works, [part, ...own], () => plainWorkOf(part, own));
      if (!made.ok) {
        findings.push({
          code: made.problem.code,
          severity: 'error',
          text: `${part.name} cannot be made: ${made.problem.text}`,
          where: { part: part.id },
        });
        return remembered(this.#outcomes, [part, made], () => ({ part, work: null, pieces: [] }));
      }
      const work = made.value;
      for (const finding of [...work.findings, ...made.notes])
        findings.push({
          ...finding,
          text: `${part.name}: ${finding.text}`,
          where: { ...finding.where, part: part.id },
        });
      const [first] = own;
      const pieces = remembered(this.#pieces, [work, part, next, ...own], () =>
        plainPieces(part, work.pieces, next, (mm): FoamId => foamForThickness(own, mm) ?? first.id),
      );
      next += pieces.length;
      const foreign = [
        ...new Set(
          pieces.filter((piece) => foamForThickness(own, piece.thicknessMm) === null).map((p) => p.thicknessMm),
        ),
      ];
      for (const mm of foreign)
        findings.push({
          code: 'plain/no-foam',
          severity: 'error',
          text: `${part.name} needs foam of ${mm} mm, and none of its foams is: add one.`,
          where: { part: part.id },
        });
      return remembered(this.#outcomes, [part, pieces], () => ({ part, work, pieces }));
    });
    return remembered(this.#lists, all, () => all);
  }

  /** The pieces of all of them, in one list that stays the same object while none of them changes. */
  piecesOf(all: readonly PlainOutcome[]): readonly PlainPiece[] {
    return remembered(this.#piecesOf, [all], () => all.flatMap((one) => one.pieces));
  }
}

function foamOf(foams: readonly FoamSheet[], id: FoamId): FoamSheet {
  const foam = foams.find((candidate) => candidate.id === id);
  if (foam === undefined) throw new Error(`plain: foam ${id} is not in the project`);
  return foam;
}
