import type { AreaInClay } from '../model/clay-core.ts';
import { onSculpt, type Command } from './commands.ts';
import { withRegions } from './finish-commands.ts';

/**
 * Models an area of the sculpt in clay over a core of sheet, so that it leaves the flattening; null: it is of foam like the rest.
 * @param mergeKey changes in a row with one key undo as one.
 */
export const setClayCore = (area: string, wish: AreaInClay | null, mergeKey?: string): Command =>
  onSculpt(
    wish === null ? 'make an area of foam again' : 'model an area in clay over a core',
    (part) =>
      withRegions(part, (region) => {
        if (region.id !== area || JSON.stringify(region.clayCore ?? null) === JSON.stringify(wish)) return region;
        const { clayCore: _, ...bare } = region;
        return wish === null ? bare : { ...bare, clayCore: wish };
      }),
    mergeKey,
  );
