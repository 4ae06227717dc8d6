import type { GluingPlan } from '../../model/gluing.ts';

/** In which order the seams are glued, in which batches, and which of them no hand reaches from within. */
export function gluingFields({ glue, steps, batches, outside }: GluingPlan): Record<string, unknown> {
  return {
    glue: glue.name,
    order: [...new Set(steps.flatMap(({ runs }) => runs.map(({ seam }) => seam)))],
    steps: steps.map(({ number, work, sculpt, sheet, adds, onto, makes, batch, runs }) => ({
      number,
      work,
      ...(sculpt === undefined ? {} : { part: sculpt.part }),
      sheet,
      adds: adds.pieces,
      onto: onto?.pieces ?? [],
      makes: makes.pieces,
      batch,
      runs: runs.map(({ seam, letter, fromMm, toMm, touch, roll, reach }) => ({
        seam,
        letter,
        fromMm,
        toMm,
        touchMm: touch.stationMm,
        roll,
        reach,
      })),
    })),
    batches: batches.map(({ number, steps: own, seamMm, brushedMin, joinFromMin, joinedMin }) => ({
      number,
      steps: own,
      seamMm,
      brushedMin,
      joinFromMin,
      joinedMin,
    })),
    pressedFromOutside: outside,
  };
}
