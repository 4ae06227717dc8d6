import type { Stepwise } from '../base/stepwise.ts';
import type { PropPlate } from '../model/bench-view.ts';
import { hatchingPlaces } from '../model/hatching.ts';
import type { Drawing } from '../model/template.ts';
import type { SculptPart } from '../project/project.ts';
import { finishPicture, type PaintedPlate } from '../steps/shop/finish-picture.ts';
import { FINISH_PICTURE_MM, type FinishInput } from '../steps/tile/finish-section.ts';
import type { Finish } from './finish.ts';
import type { LayerOutcome, Outcome } from './outcome.ts';
import { propSteps } from './prop.ts';
import { inRow } from './sculpts-in-place.ts';

/** What the build sheet tells of finishing. The picture is made only where something is painted in a colour. */
export function* finishPaperSteps(outcome: Outcome, { plan, found }: Finish): Stepwise<FinishInput> {
  const { colours = [], baseColour } = outcome.project.shop ?? {};
  const hatchingOf = hatchingPlaces(colours, baseColour);
  const hatchings = colours.map(({ id }) => hatchingOf.get(id) ?? -1);
  const picture = plan.colours.length === 0 ? null : yield* pictureSteps(outcome, found, hatchings);
  return { plan, hatchingOf, picture };
}

function* pictureSteps(
  { sculpts, project }: Outcome,
  { skin, placeOf }: Finish['found'],
  hatchings: readonly number[],
): Stepwise<Drawing> {
  const layerOf = (id: string): LayerOutcome | undefined =>
    [...placeOf.keys()].find((layer) => layer.pieces?.some((piece) => piece.id === id) === true);
  const standing: { readonly upAxis: SculptPart['upAxis']; readonly plates: (PropPlate & PaintedPlate)[] }[] = [];
  for (const own of sculpts) {
    const prop = yield* propSteps({ ...own, project });
    const pieces = own.pieces ?? [];
    const plates = (prop?.plates ?? []).flatMap((plate): (PropPlate & PaintedPlate)[] => {
      const { id, patch } = pieces[plate.piece];
      const layer = layerOf(id);
      const place = layer === undefined ? undefined : placeOf.get(layer);
      if (place === undefined || layer?.cut == null) return [];
      const hatchingOf = Int32Array.from(layer.cut.patches[patch].meshTriangles, (t) => {
        const colour = place[t] < 0 ? -1 : skin.colourOf[place[t]];
        return colour < 0 ? -1 : hatchings[colour];
      });
      return [{ ...plate, hatchingOf }];
    });
    standing.push({ upAxis: own.part.upAxis, plates });
  }
  yield;
  const { widthMm, heightMm } = FINISH_PICTURE_MM;
  return finishPicture(inRow(standing), standing[0].upAxis, widthMm, heightMm);
}
