import type { PieceId } from '../base/ids.ts';
import type { Say } from '../base/paper-language.ts';
import type { CutThing } from '../model/foam-strip.ts';
import type { Page } from '../model/page.ts';

/** One line of the list a reader shows beside the pages. */
export interface Bookmark {
  readonly title: string;
  /** Counted from 0. */
  readonly page: number;
}

/**
 * Where everything is: the scale square, the map, then every piece and strip by its number, with the first page that shows it.
 * @param printedWith the piece on whose template another one is cut, by the other's id.
 * @param say the language of the paper.
 */
export function bookmarksOf(
  pages: readonly Page[],
  things: readonly CutThing[],
  printedWith: ReadonlyMap<PieceId, PieceId>,
  say: Say,
): readonly Bookmark[] {
  const first = (is: (page: Page) => boolean, title: string): readonly Bookmark[] => {
    const page = pages.findIndex(is);
    return page < 0 ? [] : [{ title, page }];
  };
  const front = [
    ...first(({ kind }) => kind === 'scale', say('Scale square')),
    ...first(({ kind }) => kind === 'map', say('Map')),
  ];
  const pieces = [...things]
    .sort((a, b) => a.number - b.number)
    .flatMap(({ id, number, name }) => {
      const shown = printedWith.get(id) ?? id;
      return first((page) => page.pieces.includes(shown), `${number} ${name}`);
    });
  return [...front, ...pieces];
}
