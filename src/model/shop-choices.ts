import type { FoamId, PieceId } from '../base/ids.ts';
import type { Clay } from './clay.ts';
import type { Coating } from './coatings.ts';
import type { Colour } from './colours.ts';
import type { Glue } from './glues.ts';

/** What the maker said of the work at the bench and of what it costs. */
export interface ShopChoices {
  /** The glue as its label says. Missing: the first of the list. */
  readonly glue?: Glue;
  /** In the order in which they are put on; an empty list: none. Missing: as the list suggests. */
  readonly coatings?: readonly Coating[];
  /** Paints for areas of the sculpt, with ids and names of their own. Missing: none. */
  readonly colours?: readonly Colour[];
  /** Id of the colour of all that no area says otherwise of. Missing: it keeps the coats that are put on all over. */
  readonly baseColour?: string;
  /** The clay that fillets and shapes are modelled in, as its label says. Missing: the first of the list. */
  readonly clay?: Clay;
  /** What prices are in, as it is to be written: `EUR`, `$`. Missing: no costs are told. */
  readonly currency?: string;
  /** Of one sheet of a foam, >= 0. */
  readonly sheetPrices?: readonly { readonly foam: FoamId; readonly price: number }[];
  /** Of a litre of the glue, >= 0. */
  readonly gluePricePerL?: number;
}

/**
 * A seam in an order of gluing that was accepted. It is named by its pieces, so that it is found again when others are marked; of more than one
 * between two pieces, which one, from 0, in the order of their letters.
 */
export interface SeamOfPieces {
  readonly pieces: readonly [PieceId, PieceId];
  readonly nth: number;
}
