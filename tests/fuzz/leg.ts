import { Inputs } from './inputs.ts';
import type { Target } from './target.ts';
import { faultName, tryInput } from './try-input.ts';

/** What a run over inputs of one target came to. */
export interface Leg {
  readonly inputs: number;
  readonly oks: number;
  readonly codes: ReadonlySet<string>;
  readonly kinds: number;
  readonly slowestMs: number;
  /** The first input of each fault, by the fault's name. */
  readonly faults: ReadonlyMap<string, { readonly fault: string; readonly bytes: Uint8Array }>;
}

export interface LegWish {
  readonly target: Target;
  readonly seed: number;
  readonly count: number;
  readonly isMeasured: boolean;
  /** Hears of each input before it is tried. */
  readonly before?: (bytes: Uint8Array, number: number) => void;
}

/** So many inputs of one target, one after the other. */
export async function runLeg({ target, seed, count, isMeasured, before }: LegWish): Promise<Leg> {
  const inputs = await Inputs.of(target, seed);
  const codes = new Set<string>();
  const faults = new Map<string, { fault: string; bytes: Uint8Array }>();
  let [oks, slowestMs] = [0, 0];
  for (let i = 0; i < count; i += 1) {
    const bytes = inputs.next();
    before?.(bytes, i);
    const start = isMeasured ? performance.now() : 0;
    const tried = await tryInput(target, bytes, isMeasured);
    if (isMeasured) slowestMs = Math.max(slowestMs, performance.now() - start);
    if ('fault' in tried) {
      const name = faultName(tried.fault);
      if (!faults.has(name)) faults.set(name, { fault: tried.fault, bytes });
      continue;
    }
    if (tried.answer.isOk) oks += 1;
    if (tried.answer.code !== undefined) codes.add(tried.answer.code);
    inputs.answered(bytes, tried.answer);
  }
  return { inputs: count, oks, codes, kinds: inputs.kinds, slowestMs, faults };
}
