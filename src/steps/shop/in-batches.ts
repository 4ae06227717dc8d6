import type { Glue } from '../../model/glues.ts';
import type { GluedSculpt, GluingBatch, GluingPlan, GluingRun, GluingStep } from '../../model/gluing.ts';
import { batchTimes, type BatchTimes, type GlueLoad } from './glue-batches.ts';
import type { PlainStep } from './gluing-plan.ts';

/**
 * Gathers steps into batches, as many of one sculpt as the glue stays open for. A step that is too long for a batch of its own goes on in the next as a step
 * more.
 */
export function inBatches(plain: readonly PlainStep[], glue: Glue): Pick<GluingPlan, 'steps' | 'batches'> {
  const steps: GluingStep[] = [];
  const batches: GluingBatch[] = [];
  let open: { sculpt: GluedSculpt | undefined; steps: number[]; loads: GlueLoad[] } | null = null;
  const close = (): void => {
    if (open === null) return;
    const times = timesOf(glue, open.loads);
    const seamMm = open.loads.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    const { sculpt, steps: own } = open;
    const number = batches.length + 1;
    batches.push({ number, ...(sculpt === undefined ? {} : { sculpt }), steps: own, seamMm, ...times });
    open = null;
  };
  const put = (step: PlainStep, loads: readonly GlueLoad[]): void => {
    const { sculpt } = step;
    if (open !== null && (open.sculpt?.part !== sculpt?.part || batchTimes(glue, [...open.loads, ...loads]) === null))
      close();
    const batch = (open ??= { sculpt, steps: [], loads: [] });
    steps.push({ ...step, number: steps.length + 1, batch: batches.length + 1 });
    batch.steps.push(steps.length);
    batch.loads.push(...loads);
  };
  for (const step of plain) for (const part of partsOf(step, glue)) put(part, loadsOf(part));
  close();
  return { steps, batches };
}

/** A face that is laid down is brushed as a strip of this width is, to and fro, mm [J]. */
const BRUSH_MM = 50;

/** Seams, and what is laid as one seam as long as the brush goes over it. A step without seams is at least picked up. */
function loadsOf({ runs, laidMm2 }: PlainStep): readonly GlueLoad[] {
  const seams = runs.map(({ fromMm, toMm }) => ({ lengthMm: toMm - fromMm }));
  return laidMm2 === undefined ? seams : [{ lengthMm: laidMm2 / BRUSH_MM }, ...seams];
}

/** The step in parts that a batch of their own holds. */
function partsOf(step: PlainStep, glue: Glue): readonly PlainStep[] {
  if (batchTimes(glue, loadsOf(step)) !== null || step.runs.length < 2) return [step];
  const parts: GluingRun[][] = [[]];
  for (const run of step.runs) {
    const part = parts[parts.length - 1];
    const longer = [...part, run].map(({ fromMm, toMm }) => ({ lengthMm: toMm - fromMm }));
    if (part.length > 0 && batchTimes(glue, longer) === null) parts.push([run]);
    else part.push(run);
  }
  return parts.map((runs, i) => goingOn(step, runs, i === 0));
}

/** What goes on has nothing to warm any more and nothing to lay. */
function goingOn(step: PlainStep, runs: readonly GluingRun[], isFirst: boolean): PlainStep {
  if (isFirst) return { ...step, runs };
  const { laidMm2: _, onto: __, ...rest } = step;
  return { ...rest, work: 'close', adds: step.makes, runs, warm: [] };
}

/** A face too large to be laid in one go is laid all the same: what it takes is told. */
function timesOf(glue: Glue, loads: readonly GlueLoad[]): BatchTimes {
  return batchTimes(glue, loads) ?? need(batchTimes({ ...glue, openMin: Infinity }, loads));
}

function need(times: BatchTimes | null): BatchTimes {
  if (times === null) throw new Error('inBatches: glue that never goes off');
  return times;
}
