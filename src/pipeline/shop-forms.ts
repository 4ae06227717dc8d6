import { placedPoints4 } from '../geom/matrix4.ts';
import { surfaceArea } from '../mesh/measure.ts';
import { openRims } from '../mesh/open-rims.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { FormInPlace } from '../steps/shop/prop-measures.ts';
import { massG } from '../steps/shop/quantities.ts';
import type { Outcome } from './outcome.ts';

/** What the parts that no sculpt was parted for are to the prop as a whole. */
export interface ShopForms {
  /** The first of each part that has a form, in its place. */
  readonly forms: readonly FormInPlace[];
  /** Foam whose place is not known: further copies, and parts without a form, g. */
  readonly elsewhereG: number;
  /** All round the forms of all copies, hidden faces too, mm². */
  readonly surfaceMm2: number;
}

/** @param foamOf  foam of an id. */
export function shopForms(plain: Outcome['plain'], foamOf: (id: string) => FoamSheet): ShopForms {
  const forms: FormInPlace[] = [];
  let [elsewhereG, surfaceMm2] = [0, 0];
  for (const { part, work, pieces } of plain) {
    const all = pieces.reduce(
      (sum, { areaMm2, quantity, thicknessMm, foam }) =>
        sum + massG(areaMm2 * quantity, thicknessMm, foamOf(foam).densityKgM3),
      0,
    );
    const form = work?.form ?? null;
    const one = form === null ? 0 : all / part.copies;
    elsewhereG += all - one;
    if (form === null) continue;
    const { positions, triangles } = form;
    forms.push({
      positions: placedPoints4(part.transform, positions),
      triangles,
      isClosed: openRims(triangles, topologyOf(form)).length === 0,
      massG: one,
    });
    surfaceMm2 += part.copies * surfaceArea(positions, triangles);
  }
  return { forms, elsewhereG, surfaceMm2 };
}
