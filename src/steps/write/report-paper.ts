import type { FoamPiece } from '../../model/foam-piece.ts';
import type { PageSet } from '../../model/page.ts';
import type { Template } from '../../model/template.ts';

/** Which paper was chosen and how much of it is printed. */
export const pagesReport = (paper: string, { pages, blankTiles, ruled }: PageSet): Record<string, unknown> => ({
  paper,
  count: pages.length,
  blankTiles,
  ...(ruled === undefined ? {} : { ruled }),
});

/**
 * With whose template a piece is cut, turned over, or why it has one of its own though it has a twin.
 * @param templates of all pieces, each its own.
 */
export function piecePaperReport(
  { id }: FoamPiece,
  { turned }: PageSet,
  templates: readonly Template[],
): Record<string, unknown> {
  const served = turned.find(({ piece }) => piece === id);
  if (served !== undefined) return { printedWith: served.template };
  const apart = templates.find(({ piece }) => piece === id)?.apart;
  return apart === undefined ? {} : { printedApart: apart };
}
