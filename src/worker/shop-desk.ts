import type { Finding } from '../base/finding.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import { Cancelled } from '../base/work.ts';
import type { SeamId } from '../base/ids.ts';
import type { SeamOfPieces } from '../model/shop-choices.ts';
import type { LayerOutcome, Outcome } from '../pipeline/outcome.ts';
import { partWorks } from '../pipeline/plain/part-works.ts';
import { isWhole, shopPlanSteps, type ShopPlan } from '../pipeline/shop-plan.ts';
import { namesOfOrder, orderFindingSteps } from '../pipeline/shop-order.ts';
import { stepPictureSteps } from '../pipeline/shop-pictures.ts';
import { batchTimesText, batchTitle, runText, stepTitle, warmText, type Named } from '../steps/tile/build-words.ts';
import { paintedBefore } from '../steps/tile/finish-words.ts';
import { pictureSize } from '../steps/tile/build-sheet.ts';
import { finishView } from './finish-view.ts';
import type { OrderedSeam, Shop, ShopView, StepPicture } from './shop-api.ts';
import { WaitingWork } from './waiting-work.ts';

/** Works out in the background what lies beside the work. */
export class ShopDesk implements Shop {
  readonly #outcome: () => Outcome | null;
  readonly #isBusy: () => boolean;
  readonly #works = new Set<WaitingWork>();

  constructor(outcome: () => Outcome | null, isBusy: () => boolean) {
    this.#outcome = outcome;
    this.#isBusy = isBusy;
  }

  async shop(): Promise<ShopView | null> {
    return await this.#make(function* (outcome) {
      return viewOf(outcome, yield* shopPlanSteps(outcome));
    });
  }

  async stepPicture(number: number): Promise<StepPicture | null> {
    return await this.#make(function* (outcome) {
      const { gluing } = yield* shopPlanSteps(outcome);
      const step = gluing.steps.at(number - 1);
      if (step === undefined) return null;
      const size = pictureSize(step);
      // What is laid stands among all that lies there already.
      const before = step.work === 'lay' ? gluing.steps.slice(0, number - 1) : [];
      const laid = new Set(before.flatMap(({ makes }) => makes.pieces));
      const [drawing] = yield* stepPictureSteps(outcome, [step], () => size, laid);
      return { drawing, ...size };
    });
  }

  async tryGluing(order: readonly SeamOfPieces[]): Promise<readonly Finding[] | null> {
    return await this.#make((outcome) => {
      const inner = outcome.layers.at(-1);
      return inner === undefined ? nothing() : orderFindingSteps(inner, order);
    });
  }

  /** Calls all of it off: what it was about is on its way out. */
  stop(): void {
    for (const work of this.#works) work.cancel();
  }

  async #make<T>(steps: (outcome: Outcome) => Stepwise<T>): Promise<T | null> {
    const outcome = this.#outcome();
    if (outcome === null || !isWhole(outcome)) return null;
    const work = new WaitingWork(this.#isBusy);
    this.#works.add(work);
    try {
      return await runWithPauses(steps(outcome), () => work.pause(0));
    } catch (error) {
      if (!(error instanceof Cancelled)) throw error;
      return null;
    } finally {
      this.#works.delete(work);
    }
  }
}

function* nothing(): Stepwise<readonly Finding[]> {
  return [];
}

function viewOf(
  { project, pieces, layers, plain, assembly }: Outcome,
  { gluing, quantities, finish, findings }: ShopPlan,
): ShopView {
  const named: Named = new Map((pieces ?? []).map((piece) => [piece.id, piece]));
  return {
    gluing,
    quantities,
    parts: partWorks({ plain, assembly }),
    order: orderIn(layers.at(-1), gluing),
    steps: gluing.steps.map((step) => ({
      title: stepTitle(step, named).replace(/^\d+\. /, ''),
      runs: step.runs.map((run) => runText(run)),
      warm: step.warm.map((work) => warmText(work, named)),
      painted: paintedBefore(finish.plan, step.number, named),
    })),
    finish: finishView(finish, named, project.shop ?? {}),
    batches: gluing.batches.map((batch) => ({ title: batchTitle(batch), times: batchTimesText(batch) })),
    // What is said of colours and clay stands beside them.
    findings: findings.filter((finding) => !finish.findings.includes(finding)),
  };
}

/** The seams of the innermost sheet as the steps come to them, each once. */
function orderIn(inner: LayerOutcome | undefined, { steps }: ShopView['gluing']): readonly OrderedSeam[] {
  if (inner === undefined) return [];
  const indexOf = new Map((inner.cut?.chains ?? []).map(({ id }, i) => [id, i]));
  const seams = new Set(steps.flatMap(({ runs }) => runs.map(({ seam }) => seam)));
  const own = [...seams].flatMap((seam: SeamId) => {
    const chain = indexOf.get(seam);
    return chain === undefined ? [] : [{ seam, chain }];
  });
  const names = namesOfOrder(
    inner,
    own.map(({ chain }) => chain),
  );
  return own.map(({ seam }, i) => ({ seam, name: names[i] }));
}
