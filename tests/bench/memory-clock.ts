import { readFileSync, writeFileSync } from 'node:fs';
import type { Work } from '../../src/base/work.ts';

/** What a phase of a job took. */
export interface PhaseBounds {
  readonly ms: number;
  /** Time of the processor, which another program on the same machine does not add to; threads that clear up count too. */
  readonly cpuMs: number;
  /** The longest stretch between two pauses, the shorter of both clocks: as long may a call-off go unheard. */
  readonly longestMs: number;
  readonly pauses: number;
  /** Most memory of the whole process at any moment of the phase, MB; of Linux alone, else that of the job so far. */
  readonly peakMb: number;
  /** What is still held when the phase is over, once all that nobody reaches was let go, MB. */
  readonly heldMb: number;
}

const MB = 2 ** 20;

/** What is held in memory now: objects and buffers, once what nobody reaches was let go. Node is to be run with `--expose-gc`. */
export function heldMb(): number {
  const { gc } = globalThis as { gc?: () => void };
  gc?.();
  gc?.();
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / MB;
}

/** The most the process had since {@link forgetPeak}, MB. */
export function peakMb(): number {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]) / 1024;
  } catch {
    return process.resourceUsage().maxRSS / 1024;
  }
}

/** Begins anew to note the peak (proc(5), clear_refs); other systems than Linux keep that of the process. */
export function forgetPeak(): void {
  try {
    writeFileSync('/proc/self/clear_refs', '5');
  } catch {
    // The peak stays that of the whole process.
  }
}

/** Notes time and memory of a job, phase by phase: a phase is what the pause before had named. Looking at memory is no part of any phase. */
export class MemoryClock implements Work {
  readonly phases = new Map<string, PhaseBounds>();
  #phase = 'start';
  #since = performance.now();
  #cpu = process.cpuUsage();

  constructor() {
    forgetPeak();
  }

  pause(_done: number, text?: string): undefined {
    const ms = performance.now() - this.#since;
    const { user, system } = process.cpuUsage(this.#cpu);
    const cpuMs = (user + system) / 1000;
    const before = this.phases.get(this.#phase);
    const isOver = text !== undefined && text !== this.#phase;
    this.phases.set(this.#phase, {
      ms: (before?.ms ?? 0) + ms,
      cpuMs: (before?.cpuMs ?? 0) + cpuMs,
      longestMs: Math.max(before?.longestMs ?? 0, Math.min(ms, cpuMs)),
      pauses: (before?.pauses ?? 0) + 1,
      peakMb: isOver ? Math.max(before?.peakMb ?? 0, peakMb()) : (before?.peakMb ?? 0),
      heldMb: isOver ? heldMb() : (before?.heldMb ?? 0),
    });
    if (isOver) {
      forgetPeak();
      this.#phase = text;
    }
    this.#since = performance.now();
    this.#cpu = process.cpuUsage();
    return undefined;
  }
}
