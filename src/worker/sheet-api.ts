import type { FreeAsk, FreePlaces } from '../model/free-places.ts';

/** What can be asked about sheets of the last compute. */
export interface SheetAsking {
  /** Where a piece may be put by hand; null before there is a layout with it. Answered while a compute runs. */
  freePlaces(ask: FreeAsk): Promise<FreePlaces | null>;
}
