import type { CDPSession, Page } from 'playwright-core';

/** A task of the page's main thread that took long. */
export interface LongTask {
  readonly wallMs: number;
  /** Processor time, which others on the machine do not lengthen. */
  readonly cpuMs: number;
  /** What it was, the largest share first: `script 61, garbage 12, style 4`, ms of processor time. */
  readonly what: string;
  /** Functions that were longest on top, where that was asked for. */
  readonly tops: readonly string[];
}

/** What was recorded. */
export interface Recorded {
  /** Those that took longer than the limit. */
  readonly tasks: readonly LongTask[];
  /** Processor time of all tasks together, ms. */
  readonly busyMs: number;
  /** How many times as long as on the usual machine a plain loop took this thread: of processor time. */
  readonly slow: number;
}

interface TraceEvent {
  readonly name: string;
  readonly cat: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly id?: string;
  readonly args: { readonly name?: string; readonly data?: TraceData };
}

interface TraceData {
  readonly functionName?: string;
  readonly url?: string;
  readonly lineNumber?: number;
  readonly cpuProfile?: { readonly nodes?: readonly ProfileNode[]; readonly samples?: readonly number[] };
  readonly timeDeltas?: readonly number[];
  readonly startTime?: number;
}

interface ProfileNode {
  readonly id: number;
  readonly parent?: number;
  readonly callFrame: { readonly functionName: string; readonly url?: string; readonly lineNumber?: number };
}

/** Names of what the browser does inside a task, as we tell it. */
const KINDS: Readonly<Record<string, string>> = {
  FunctionCall: 'script',
  EvaluateScript: 'script',
  'v8.evaluateModule': 'script',
  RunMicrotasks: 'script',
  'v8.compile': 'compile',
  'v8.compileModule': 'compile',
  UpdateLayoutTree: 'style',
  Layout: 'layout',
  PrePaint: 'paint',
  Paint: 'paint',
  Layerize: 'paint',
  Commit: 'paint',
  MinorGC: 'garbage',
  MajorGC: 'garbage',
  'V8.GC_MARK_COMPACTOR': 'garbage',
  'V8.GC_SCAVENGER': 'garbage',
  ParseHTML: 'parse',
  ParseAuthorStyleSheet: 'parse',
  HitTest: 'hit test',
};

/** A tenth of the loop of `calibration.ts`: 10 ms on the usual machine. */
const CALIBRATION = { additions: 1e7, usualMs: 10, mark: 'calibration' } as const;

const CATEGORIES = [
  'blink.user_timing',
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'toplevel',
  'v8',
  'v8.execute',
];
const FOR_TOPS = ['disabled-by-default-v8.cpu_profiler'];
/** Long, as the web platform has it, ms (W3C, Long Tasks). */
export const LONG_MS = 50;
const TOPS = 4;
const MOST_OF_IT = 0.4;

/** Records what the main thread of a page does. */
export class MainThread {
  readonly #session: CDPSession;
  readonly #page: Page;
  readonly #wantsTops: boolean;
  #events: TraceEvent[] = [];

  static async of(page: Page, wantsTops: boolean): Promise<MainThread> {
    const session = await page.context().browser()!.newBrowserCDPSession();
    return new MainThread(session, page, wantsTops);
  }

  private constructor(session: CDPSession, page: Page, wantsTops: boolean) {
    this.#session = session;
    this.#page = page;
    this.#wantsTops = wantsTops;
    session.on('Tracing.dataCollected', ({ value }) => void this.#events.push(...(value as unknown as TraceEvent[])));
  }

  async start(): Promise<void> {
    this.#events = [];
    const includedCategories = [...CATEGORIES, ...(this.#wantsTops ? FOR_TOPS : [])];
    await this.#session.send('Tracing.start', {
      transferMode: 'ReportEvents',
      traceConfig: { recordMode: 'recordAsMuchAsPossible', includedCategories },
    });
    await this.#calibrate();
  }

  /** Has the main thread do a plain loop as a task of its own: how slow it is here and now. */
  async #calibrate(): Promise<void> {
    await this.#page.evaluate(
      ([additions, mark]) => {
        performance.mark(mark);
        let sum = 0;
        for (let i = 0; i < additions; i += 1) sum += i % 7;
        return sum;
      },
      [CALIBRATION.additions, CALIBRATION.mark] as const,
    );
  }

  /** @param limitMs  of the clock. */
  async stop(limitMs: number): Promise<Recorded> {
    await this.#calibrate();
    const complete = new Promise((done) => this.#session.once('Tracing.tracingComplete', done));
    await this.#session.send('Tracing.end');
    await complete;
    return longTasks(this.#events, limitMs);
  }
}

const isTask = ({ name, ph }: TraceEvent): boolean => ph === 'X' && (name === 'RunTask' || name.endsWith('::RunTask'));

function longTasks(events: readonly TraceEvent[], limitMs: number): Recorded {
  const mains = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain').map(threadOf),
  );
  const busyOf = new Map<string, number>();
  for (const event of events)
    if (isTask(event) && mains.has(threadOf(event)))
      busyOf.set(threadOf(event), (busyOf.get(threadOf(event)) ?? 0) + (event.dur ?? 0));
  const [main] = [...busyOf].sort(([, a], [, b]) => b - a)[0] ?? [''];
  const ofMain = events.filter((event) => threadOf(event) === main);
  const samples = samplesOf(events, main);
  // Two layers of the browser tell of tasks: the inner one is within the outer.
  const all = ofMain.filter(isTask).sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const tasks: LongTask[] = [];
  const marks = ofMain.filter(({ name }) => name === CALIBRATION.mark);
  const slows: number[] = [];
  let end = -Infinity;
  let sum = 0;
  for (const task of all) {
    if (task.ts < end) continue;
    end = task.ts + (task.dur ?? 0);
    const [wallMs, cpuMs] = [(task.dur ?? 0) / 1000, (task.tdur ?? NaN) / 1000];
    if (marks.some(({ ts }) => ts >= task.ts && ts < end)) {
      slows.push(cpuMs / CALIBRATION.usualMs);
      continue;
    }
    sum += cpuMs;
    if (wallMs <= limitMs) continue;
    const [from, to] = [task.ts, end];
    const within = ofMain.filter(({ ts, name }) => ts >= from && ts < to && !name.endsWith('RunTask'));
    tasks.push({ wallMs, cpuMs, what: kindsOf(within), tops: topsOf(samples, from, to) });
  }
  return { tasks, busyMs: sum, slow: slows.reduce((all, one) => all + one, 0) / slows.length };
}

const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;

/** Processor time that each kind took by itself, without what it had inside it. */
function kindsOf(events: readonly TraceEvent[]): string {
  const sums = new Map<string, number>();
  const open: { kind: string; end: number }[] = [];
  const add = (kind: string, us: number): void => void sums.set(kind, (sums.get(kind) ?? 0) + us);
  const told = events.filter(({ ph, name }) => ph === 'X' && KINDS[name] !== undefined);
  for (const event of [...told].sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))) {
    while (open.length > 0 && open.at(-1)!.end <= event.ts) open.pop();
    const us = event.tdur ?? event.dur ?? 0;
    if (open.length > 0) add(open.at(-1)!.kind, -us);
    add(KINDS[event.name], us);
    open.push({ kind: KINDS[event.name], end: event.ts + (event.dur ?? 0) });
  }
  return [...sums]
    .filter(([, us]) => us > 2000)
    .sort(([, a], [, b]) => b - a)
    .map(([kind, us]) => `${kind} ${(us / 1000).toFixed(0)}`)
    .join(', ');
}

interface Sample {
  readonly us: number;
  readonly at: number;
  /** Names of the functions that were running, the outermost first. */
  readonly stack: readonly string[];
}

function samplesOf(events: readonly TraceEvent[], thread: string): Sample[] {
  const profiles = events.filter((event) => event.name === 'Profile' && threadOf(event) === thread);
  return profiles.flatMap((profile) => {
    const stacks = new Map<number, readonly string[]>();
    let at = profile.args.data?.startTime ?? 0;
    const samples: Sample[] = [];
    const chunks = events.filter(
      ({ name, id, pid }) => name === 'ProfileChunk' && id === profile.id && pid === profile.pid,
    );
    for (const chunk of chunks) {
      const { cpuProfile, timeDeltas = [] } = chunk.args.data ?? {};
      for (const { id, parent, callFrame } of cpuProfile?.nodes ?? []) {
        const name = callFrame.functionName;
        const outer = stacks.get(parent ?? -1) ?? [];
        stacks.set(id, name === '' || name === '(root)' ? outer : [...outer, name]);
      }
      (cpuProfile?.samples ?? []).forEach((node, i) => {
        at += timeDeltas[i] ?? 0;
        samples.push({ at, us: timeDeltas[i] ?? 0, stack: stacks.get(node) ?? [] });
      });
    }
    return samples;
  });
}

/** Functions that were longest on top, and the way into the task as far as most of it goes the same way. */
function topsOf(samples: readonly Sample[], from: number, to: number): string[] {
  const within = samples.filter(({ at, stack }) => at >= from && at < to && stack[0] !== '(idle)' && stack.length > 0);
  const tops = heaviest(within, ({ stack }) => stack.at(-1)!).slice(0, TOPS);
  const way: string[] = [];
  for (let depth = 0, rest = within; ; depth += 1) {
    rest = rest.filter(({ stack }) => stack.length > depth && (depth === 0 || stack[depth - 1] === way[depth - 1]));
    const next = heaviest(rest, ({ stack }) => stack[depth]).at(0);
    if (next === undefined || next.us < sumOf(within) * MOST_OF_IT) break;
    way.push(next.name);
  }
  const told = tops.map(({ name, us }) => `${name} ${(us / 1000).toFixed(0)}`);
  return way.length === 0 ? told : [...told, way.join(' > ')];
}

const sumOf = (samples: readonly Sample[]): number => samples.reduce((sum, { us }) => sum + us, 0);

function heaviest(samples: readonly Sample[], nameOf: (sample: Sample) => string): { name: string; us: number }[] {
  const sums = new Map<string, number>();
  for (const sample of samples) sums.set(nameOf(sample), (sums.get(nameOf(sample)) ?? 0) + sample.us);
  return [...sums].map(([name, us]) => ({ name, us })).sort((a, b) => b.us - a.us);
}
