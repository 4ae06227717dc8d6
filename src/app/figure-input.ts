import { formatPlain } from '../base/format-length.ts';
import { readFigure } from '../base/read-figure.ts';

/**
 * A plain text field for a number. The browser's own number field drops the comma in some languages, and 3,5 becomes 35; so a number is typed as
 * text and read here, and the arrow keys still count it up and down.
 */

/** What was typed, NaN for no number: of the field an event is of. */
export const figureTyped = (event: Event): number => readFigure((event.target as HTMLInputElement).value);

/** A number as it stands in a field. @param decimals at most. */
export const figureShown = (value: number, decimals = 3): string => formatPlain(value, decimals);

/**
 * Arrow keys count a number up and down, from the least to the greatest that is taken.
 * @param step by which; fields that take whole numbers are counted by 1.
 */
export function countByArrows(least: number, most: number, step = 1): (event: KeyboardEvent) => void {
  return (event) => {
    const way = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (way === 0 || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const input = event.target as HTMLInputElement;
    const now = readFigure(input.value);
    const next = Math.min(most, Math.max(least, Number.isNaN(now) ? least : now + way * step));
    input.value = figureShown(next);
    input.dispatchEvent(new Event('change', { bubbles: true }));
  };
}
