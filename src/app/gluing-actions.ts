import type { SeamId } from '../base/ids.ts';
import type { GluingStep } from '../model/gluing.ts';
import { acceptGluing } from '../project/shop-commands.ts';
import type { OrderedSeam, ShopView } from '../worker/shop-api.ts';
import { chainIndex, pieceIndex, type Bench } from './bench-state.ts';
import { GLUING_WORDS } from './gluing-words.ts';
import type { Verb } from './verb.ts';
import type { Pointed, ViewState } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** Number of the step that a seam is first glued in; null where none is. */
export const stepOfSeam = (shop: ShopView | null, seam: SeamId): number | null =>
  shop?.gluing.steps.find(({ runs }) => runs.some((run) => run.seam === seam))?.number ?? null;

/** Seams that a step is the first to glue, as far as their order is the maker's: none of what is laid on another sheet. */
export function seamsOfStep(shop: ShopView, step: GluingStep): readonly OrderedSeam[] {
  if (step.work === 'lay') return [];
  return shop.order.filter(({ seam }) => stepOfSeam(shop, seam) === step.number);
}

/** True where its place among the steps is the maker's to choose. */
export const isMovable = (shop: ShopView, step: GluingStep): boolean => seamsOfStep(shop, step).length > 0;

/**
 * The order with a step moved.
 * @param before number of the step it is to come before; one past the last: after all.
 * @returns null where it stands there already.
 */
export function orderWithStep(shop: ShopView, number: number, before: number): readonly OrderedSeam[] | null {
  const step = shop.gluing.steps.at(number - 1);
  if (step === undefined || before === number || before === number + 1) return null;
  const moved = seamsOfStep(shop, step);
  const others = shop.order.filter((seam) => !moved.includes(seam));
  const at = others.findIndex(({ seam }) => (stepOfSeam(shop, seam) ?? Infinity) >= before);
  const place = at < 0 ? others.length : at;
  const order = [...others.slice(0, place), ...moved, ...others.slice(place)];
  return order.every((one, i) => one === shop.order[i]) ? null : order;
}

/** Moves a step before another; where it cannot be glued there, says why and moves nothing. */
export async function moveStep(bench: Workbench, number: number, before: number): Promise<void> {
  const { shop } = bench.view.gluing;
  const step = shop?.gluing.steps.at(number - 1);
  if (shop === null || step === undefined) return;
  const { spoken } = GLUING_WORDS;
  if (bench.isStale) return bench.say(spoken.wait);
  const [first] = seamsOfStep(shop, step);
  if (first === undefined) return bench.say(spoken.fixed);
  const order = orderWithStep(shop, number, before);
  if (order === null) return bench.say(before < number ? spoken.first : spoken.last);
  const names = order.map(({ name }) => name);
  const why = await bench.workshop.tryGluing(names);
  // Something else was changed meanwhile: the answer is of another job.
  if (why === null || bench.view.gluing.shop !== shop) return;
  const { gluing } = bench.view;
  if (why.length > 0) {
    const seams = why.map(({ where }) => chainIndex(bench.bench, where.seam ?? '')).filter((chain) => chain >= 0);
    bench.setView({ gluing: { ...gluing, refused: { seam: first.seam, why } }, pointed: { seams } });
    return bench.say([GLUING_WORDS.refused(number), ...why.map(({ text }) => GLUING_WORDS.why(text))].join(' '));
  }
  bench.setView({ gluing: { ...gluing, refused: null, moved: first.seam }, choice: { kind: 'step', step: number } });
  bench.run(acceptGluing(names));
  bench.say(spoken.moved);
}

/** One step earlier or later. */
export const nudgeStep = (bench: Workbench, number: number, way: -1 | 1): Promise<void> =>
  moveStep(bench, number, way < 0 ? number - 1 : number + 2);

/** Lets go of the order as it was moved. */
export function findAnew(bench: Workbench): void {
  const { gluing } = bench.view;
  bench.setView({ gluing: { ...gluing, refused: null, moved: null } });
  bench.run(acceptGluing([]));
}

/** What of the bench a step is about. */
export function partsOfStep(bench: Bench, step: GluingStep): Pointed {
  const pieces = step.work === 'close' ? [] : step.adds.pieces;
  const seams = step.runs.map(({ seam }) => chainIndex(bench, seam)).filter((chain) => chain >= 0);
  return { pieces: pieces.map((id) => pieceIndex(bench, id)).filter((index) => index >= 0), seams };
}

/** What is lit while a step is chosen; null where it is no more. */
export function litByStep(bench: Bench, { gluing, choice }: ViewState): Pointed | null {
  const step = choice.kind === 'step' ? gluing.shop?.gluing.steps.at(choice.step - 1) : undefined;
  return step === undefined ? null : partsOfStep(bench, step);
}

/** What can be done about the order, and about the step that is chosen. */
export function gluingVerbs(bench: Workbench): { readonly near: readonly Verb[]; readonly rest: readonly Verb[] } {
  const { gluing, choice } = bench.view;
  const words = GLUING_WORDS.verbs;
  const anew: Verb[] =
    bench.part?.gluing === undefined ? [] : [{ id: 'glue-anew', label: words.anew, run: () => findAnew(bench) }];
  const step = choice.kind === 'step' ? gluing.shop?.gluing.steps.at(choice.step - 1) : undefined;
  if (gluing.shop === null || step === undefined || !isMovable(gluing.shop, step)) return { near: [], rest: anew };
  const move = (id: string, label: string, way: -1 | 1): Verb => ({
    id,
    label,
    isNear: true,
    run: () => void nudgeStep(bench, step.number, way),
  });
  return { near: [move('glue-earlier', words.earlier, -1), move('glue-later', words.later, 1)], rest: anew };
}
