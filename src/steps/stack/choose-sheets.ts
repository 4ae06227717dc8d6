import { fail, ok, type Result } from '../../base/result.ts';
import type { StackRule } from '../../model/stack.ts';

/** Heights are added up in steps of this, mm: no sheet is known better, and sums stay whole numbers. */
const STEP_MM = 0.01;

/** Within this of the height a stack is right, mm: sanded off or filled without a thought. Among those the fewest sheets win. */
export const HEIGHT_RIGHT_MM = 0.5;

/** More layers than this are no work for hands. */
export const MOST_LAYERS = 1000;

/**
 * Chooses how many sheets of each thickness come to a height: for every sum that can be made the fewest sheets, by one pass over all sums, which
 * leaves none out. The larger rule takes no sum under the height, the smaller none over it. Of the sums within 0.5 mm the one with fewest sheets
 * is taken, else the nearest; of equals the nearer, then the thicker sheets.
 * @param heightMm   of the solid, > 0.
 * @param sheetsMm   thicknesses in hand, mm, rounded to 0.01 mm.
 * @returns thicknesses, thickest first. Fails with `stack/sheets` where a thickness is none, `stack/layers` where there would be too many, and
 *   `stack/too-low` where the smaller rule finds no sheet thin enough.
 */
export function chooseSheets(
  heightMm: number,
  sheetsMm: readonly number[],
  rule: StackRule,
): Result<readonly number[]> {
  const steps = [...new Set(sheetsMm.map((one) => Math.round(one / STEP_MM)))].sort((a, b) => b - a);
  if (steps.length === 0 || !steps.every((one) => one > 0 && Number.isFinite(one)))
    return fail('stack/sheets', 'A sheet has no thickness: give thicknesses in mm over 0, as 10,6.');
  const thickest = steps[0] * STEP_MM;
  if (heightMm / thickest > MOST_LAYERS)
    return fail(
      'stack/layers',
      `There would be more than ${MOST_LAYERS} layers: take thicker sheets, or check the size of the model.`,
    );
  const most = Math.ceil(heightMm / STEP_MM) + steps[0];
  const fewest = new Int32Array(most + 1).fill(-1);
  const last = new Int32Array(most + 1);
  fewest[0] = 0;
  for (let sum = 1; sum <= most; sum += 1) {
    for (const one of steps) {
      if (one > sum || fewest[sum - one] < 0) continue;
      if (fewest[sum] >= 0 && fewest[sum] <= fewest[sum - one] + 1) continue;
      fewest[sum] = fewest[sum - one] + 1;
      last[sum] = one;
    }
  }
  let best = -1;
  const offBy = (sum: number): number => Math.abs(sum * STEP_MM - heightMm);
  const isBetter = (sum: number): boolean => {
    if (best < 0) return true;
    const [isRight, wasRight] = [offBy(sum) <= HEIGHT_RIGHT_MM, offBy(best) <= HEIGHT_RIGHT_MM];
    if (isRight !== wasRight) return isRight;
    if (isRight && fewest[sum] !== fewest[best]) return fewest[sum] < fewest[best];
    return offBy(sum) < offBy(best);
  };
  // A sum that is off by rounding alone is not under or over the height.
  const rounding = STEP_MM / 2;
  for (let sum = 1; sum <= most; sum += 1) {
    if (fewest[sum] < 0) continue;
    const over = sum * STEP_MM - heightMm;
    if ((rule === 'larger' && over < -rounding) || (rule === 'smaller' && over > rounding)) continue;
    if (isBetter(sum)) best = sum;
  }
  if (best < 0)
    return fail(
      'stack/too-low',
      `The solid is ${Number(heightMm.toFixed(2))} mm high, less than the thinnest sheet: take thinner sheets, or the larger face.`,
    );
  const chosen: number[] = [];
  for (let sum = best; sum > 0; sum -= last[sum]) chosen.push(last[sum] * STEP_MM);
  if (chosen.length > MOST_LAYERS)
    return fail(
      'stack/layers',
      `There would be more than ${MOST_LAYERS} layers: take thicker sheets, or check the size of the model.`,
    );
  return ok(chosen.map((one) => Number(one.toFixed(2))).sort((a, b) => b - a));
}
