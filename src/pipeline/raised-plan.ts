import { layerId } from '../base/ids.ts';
import type { Region } from '../model/flatten-settings.ts';
import type { SculptPart } from '../project/project.ts';
import { wallSpan, type LayerPlan } from './layer-plan.ts';

/**
 * Sheets that lie on the face of the wall over one area each, in the order of the areas: their backs are where the wall ends. They are no part of
 * the wall, which is as thick as it was for body, core and room.
 */
export function raisedPlans(part: Pick<SculptPart, 'layers' | 'modelIs' | 'offMm' | 'regions'>): readonly LayerPlan[] {
  const { faceMm } = wallSpan(part);
  let number = 0;
  return part.regions.flatMap((area: Region): LayerPlan[] => {
    if (area.raised === undefined || area.faces.length === 0) return [];
    number += 1;
    const choice = { ...area.raised, id: layerId(`raised-${area.id}`), allowForShrinkage: false };
    return [{ choice, sheet: 0, backMm: faceMm, raised: { area, number } }];
  });
}
