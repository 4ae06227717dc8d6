import { Memo } from '../base/memo.ts';
import type { SheetLayout, SplitPath } from '../model/sheet.ts';
import type { SheetTask } from '../steps/nest/lay-on-sheets.ts';
import type { CutSculpt } from './outcome.ts';
import { remembered } from './remembered.ts';
import type { SculptRun } from './sculpt-run.ts';
import { offerOfSplit, splitPaths } from './split-offers.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/** No offers, always the same object. */
const NONE: readonly SplitPath[] = [];

/** How pieces of one sculpt that are larger than any sheet may be parted. */
export class SplitStage {
  readonly #known = new Memo<unknown[], { readonly splits: readonly SplitPath[]; readonly cut: CutSculpt }>(KEPT);

  /**
   * Offers for pieces of the sheet of the wall that is seen; its cuts are offered with it from now on.
   * @param taskOf  gives what was laid on foam.
   */
  offer(run: SculptRun, sheets: SheetLayout, taskOf: () => SheetTask): readonly SplitPath[] {
    const { seen, pieces, drawn } = run;
    if (seen === undefined || pieces === null) return NONE;
    const large = pieces.filter(({ id, layer }) => sheets.tooLarge.includes(id) && layer === seen.plan.choice.id);
    if (large.length === 0) return NONE;
    const parted = seen.needCut();
    const made = remembered(this.#known, [sheets, parted, pieces], () => {
      const splits = splitPaths(large, taskOf(), parted, run.needSculpt(), drawn);
      if (splits.length === 0) return { splits: NONE, cut: parted };
      const offers = splits.map((split) => offerOfSplit(split, pieces));
      return { splits, cut: { ...parted, offers: [...parted.offers, ...offers] } };
    });
    seen.cut = made.cut;
    return made.splits;
  }
}
