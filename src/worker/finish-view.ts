import { HATCHINGS, hatchingPlaces } from '../model/hatching.ts';
import type { ShopChoices } from '../model/shop-choices.ts';
import type { Finish } from '../pipeline/finish.ts';
import type { Named } from '../steps/tile/build-words.ts';
import {
  BEFORE_GLUING_RULE,
  clayText,
  finishGroups,
  finishReason,
  finishTexts,
  finishTitle,
  finishWhen,
  MASKING_RULE,
  waitSummary,
} from '../steps/tile/finish-words.ts';
import type { FinishView } from './finish-api.ts';

/** The same in the words of the build sheet. */
export function finishView(
  { plan, findings }: Finish,
  named: Named,
  { colours = [], baseColour }: ShopChoices,
): FinishView {
  const all = new Set(plan.steps.flatMap(({ pieces }) => pieces)).size;
  const items = plan.clay?.items ?? [];
  const places = hatchingPlaces(colours, baseColour);
  return {
    plan,
    findings,
    hatchings: Object.fromEntries(colours.map(({ id }) => [id, HATCHINGS[places.get(id) ?? -1] ?? null])),
    groups: finishGroups(plan).map((group) => ({
      when: finishWhen(group[0], named),
      why: finishReason(group[0]),
      steps: group.map((step) => ({
        number: step.number,
        title: finishTitle(step, named, step.pieces.length === all),
        texts: finishTexts(
          step,
          step.work === 'clay' ? items.filter(({ pieces }) => pieces.every((id) => step.pieces.includes(id))) : [],
        ),
        cautions: step.cautions,
      })),
    })),
    rules: [
      ...(plan.colours.length > 1 || plan.tapeMm > 0 ? [MASKING_RULE] : []),
      ...(plan.steps.some(({ beforeStep }) => beforeStep !== null) ? [BEFORE_GLUING_RULE] : []),
      ...(plan.steps.length > 0 ? [waitSummary(plan)] : []),
    ],
    clay: items.map((item) => clayText(item)),
  };
}
