import type { Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { StrapFields } from '../../project/trim-part.ts';
import { makeStrap } from '../../steps/trim/strap.ts';

/** A strap in a foam. */
export const strapPartWork = ({ strap }: StrapFields, { thicknessMm, neutralFraction }: FoamSheet): Result<PlainWork> =>
  makeStrap({ ...strap, thicknessMm }, neutralFraction);
