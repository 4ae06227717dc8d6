import { peakMb } from './peak-memory.ts';
import { expectUntouched } from './expect-untouched.ts';
import type { Answer, Target } from './target.ts';

/** Longest time of one input, ms of the processor: longer is a fault of ours. */
export const MOST_INPUT_MS = 2000;

/** Most memory that one input may add to the greatest the process has had, MB. */
const MOST_INPUT_MB = 400;

export type Tried = { readonly answer: Answer } | { readonly fault: string };

/** One input through its reader. @param isMeasured  false where a slow machine must not fail it. */
export async function tryInput(target: Target, bytes: Uint8Array, isMeasured: boolean): Promise<Tried> {
  const before = isMeasured ? process.cpuUsage() : null;
  const peak = isMeasured ? peakMb() : 0;
  let answer: Answer;
  try {
    answer = await target.look(bytes);
    expectUntouched();
  } catch (error) {
    return {
      fault:
        error instanceof Error
          ? `${error.name}: ${error.message}\n${(error.stack ?? '').split('\n').slice(1, 6).join('\n')}`
          : String(error),
    };
  }
  if (before === null) return { answer };
  const { user, system } = process.cpuUsage(before);
  const ms = (user + system) / 1000;
  const mb = peakMb() - peak;
  if (ms > MOST_INPUT_MS) return { fault: `slow: ${Math.round(ms)} ms` };
  if (mb > MOST_INPUT_MB) return { fault: `large: ${Math.round(mb)} MB` };
  return { answer };
}

/** What a fault is called: faults of one name are kept once. */
export const faultName = (fault: string): string =>
  fault.startsWith('slow') || fault.startsWith('large')
    ? fault.split(':')[0]
    : fault
        .replace(/[“"][^”"]*[”"]/g, '“”')
        .replace(/[\d.,e+-]+/g, '0')
        .split('\n')
        .slice(0, 2)
        .join(' ')
        .slice(0, 160);
