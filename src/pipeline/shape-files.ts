import { fail, ok, type Result } from '../base/result.ts';
import type { PlainDraft } from '../model/plain-piece.ts';
import type { Shape } from '../model/shape.ts';
import { foamOfShape } from '../steps/shapes/foam-of-shape.ts';
import { shapeWork } from '../steps/shapes/shape-work.ts';
import { writeOutlineDxf } from '../steps/write/outline-dxf.ts';
import { writeOutlineSvg } from '../steps/write/outline-svg.ts';

/** Foam of which nothing was said. */
const NO_FOAM = { thicknessMm: 0, neutralFraction: 0.5 };

/** Pieces of a shape as exact SVG and DXF, names to contents. @returns fails with `shape/no-pieces` for a table of figures. */
export function shapeFiles(shape: Shape): Result<ReadonlyMap<string, string>> {
  const drafts = shapeWork(shape, foamOfShape(shape, NO_FOAM)).pieces;
  if (drafts.length === 0)
    return fail('shape/no-pieces', `${shape.name} is a table of figures and has no pieces to draw: leave --out out.`);
  return ok(outlineFiles(drafts, shape.name));
}

/** Any drafts as SVG and DXF of one name. */
export const outlineFiles = (drafts: readonly PlainDraft[], name: string): ReadonlyMap<string, string> =>
  new Map([
    [`${name}.svg`, writeOutlineSvg(drafts, name)],
    [`${name}.dxf`, writeOutlineDxf(drafts, name)],
  ]);
