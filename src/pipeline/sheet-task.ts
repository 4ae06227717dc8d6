import type { FoamPiece } from '../model/foam-piece.ts';
import type { CutBeside } from '../model/plain-piece.ts';
import type { Template } from '../model/template.ts';
import { fillOf } from '../project/fill-rule.ts';
import type { Project } from '../project/project.ts';
import type { SheetTask } from '../steps/nest/lay-on-sheets.ts';

/**
 * What is to be laid on foam, and on what. Plain data, so that it crosses to another thread as it is.
 * @param cut        all pieces, then what is cut beside them.
 * @param templates  one for each of them, in their order.
 */
export const sheetTaskOf = (
  { foams, stock }: Pick<Project, 'foams' | 'stock'>,
  cut: readonly (FoamPiece | CutBeside)[],
  templates: readonly Template[],
): SheetTask => ({
  items: cut.map(({ id, quantity, foam }, i) => {
    const { foamRings, foamBox, grainRad } = templates[i];
    return {
      piece: id,
      template: {
        foamBox,
        ...(foamRings === undefined ? {} : { foamRings }),
        ...(grainRad === undefined ? {} : { grainRad }),
      },
      quantity,
      foam,
    };
  }),
  foams,
  fills: foams.map(({ id }) => fillOf(stock, id)),
  stock: stock ?? {},
});
