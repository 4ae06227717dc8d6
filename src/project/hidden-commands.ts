import { HIDDEN_SIDES, type HiddenSide } from '../model/hidden-side.ts';
import { onSculpt, type Command } from './commands.ts';

/** What may be said of a part's hidden side. */
export const HIDDEN_CHOICES: readonly HiddenSide[] = HIDDEN_SIDES;

/** Says on which side proposals had best hide seams; null: nowhere in particular. */
export const setHiddenSide = (side: HiddenSide | null): Command =>
  onSculpt(side === null ? 'hide seams nowhere' : 'hide seams on a side', (part) => {
    const { hiddenSide: had, ...rest } = part;
    if (had === (side ?? undefined)) return part;
    return side === null ? rest : { ...rest, hiddenSide: side };
  });
