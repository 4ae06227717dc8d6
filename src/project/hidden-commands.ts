import type { HiddenSide } from '../model/hidden-side.ts';
import { onSculpt, type Command } from './commands.ts';

/** Says on which side proposals had best hide seams; null: nowhere in particular. */
export const setHiddenSide = (side: HiddenSide | null): Command =>
  onSculpt(side === null ? 'hide seams nowhere' : 'hide seams on a side', (part) => {
    const { hiddenSide: had, ...rest } = part;
    if (had === (side ?? undefined)) return part;
    return side === null ? rest : { ...rest, hiddenSide: side };
  });
