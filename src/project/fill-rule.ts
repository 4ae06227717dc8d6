import type { FoamId } from '../base/ids.ts';
import type { FillRule, StockChoices, TurnRule } from '../model/stock.ts';

/**
 * How sheets are filled where nothing is said. Border: the edges of a sheet are often bruised [J]. Spacing: a knife takes nothing away, and what
 * leans is within the piece's own room.
 */
export const USUAL_FILL: Omit<FillRule, 'foam'> = {
  borderMm: 10,
  spacingMm: 0,
  turns: 'any',
  turnOver: false,
  buys: true,
};

/** Most that may be kept free, mm: the same for the project's file, the window and the command line. */
export const FILL_LIMITS = { borderMm: 200, spacingMm: 50 } as const;

export const TURN_RULES: readonly TurnRule[] = ['any', 'half', 'none'];

/** What is said of the sheets of a foam, or what is usual. */
export const fillOf = (stock: StockChoices | undefined, foam: FoamId): FillRule =>
  stock?.fills?.find((fill) => fill.foam === foam) ?? { foam, ...USUAL_FILL };

/** True where a rule says what is usual. */
export const isUsualFill = (fill: FillRule): boolean =>
  fill.borderMm === USUAL_FILL.borderMm &&
  fill.spacingMm === USUAL_FILL.spacingMm &&
  fill.turns === USUAL_FILL.turns &&
  fill.turnOver === USUAL_FILL.turnOver &&
  fill.buys === USUAL_FILL.buys;
