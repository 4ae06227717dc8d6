import { spoken } from '../language/spoken.ts';
import { MEANS_SCULPT } from './means-sculpt-words.ts';
import { MEANS_SHEET } from './means-sheet-words.ts';
import { MEANS_SHOP } from './means-shop-words.ts';

/** What every field of the window means, why it matters and what is usual, by what stands on the field as `data-means`. */
export const MEANS_WORDS = spoken('means', { ...MEANS_SCULPT, ...MEANS_SHEET, ...MEANS_SHOP });

/** A field that is spoken of. */
export type Meant = keyof typeof MEANS_SCULPT | keyof typeof MEANS_SHEET | keyof typeof MEANS_SHOP;

export const isMeant = (of: string): of is Meant => Object.hasOwn(MEANS_WORDS, of);
