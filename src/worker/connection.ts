import * as Comlink from 'comlink';
import { BEAT_TIMES, Heartbeat, type BeatTimes } from './heartbeat.ts';
import type { Workshop } from './workshop-api.ts';

/** Said to whoever waited for a worker that is gone. */
export class WorkshopLost extends Error {}

type Remote = Comlink.Remote<Workshop>;
type Call = (...words: unknown[]) => Promise<unknown>;

interface Running {
  readonly worker: Worker;
  readonly remote: Remote;
  readonly beat: Heartbeat;
  /** Done when it has all files. */
  readonly ready: Promise<unknown>;
}

/**
 * A worker that may die or hang, and is then started anew with all files it had. It is started when something is asked of it, and watched as long as
 * an answer is due.
 */
export class Connection {
  readonly #start: () => Worker;
  readonly #onSilent: (isSilent: boolean) => void;
  readonly #times: BeatTimes;
  #running: Running | null = null;
  #starts = 0;
  /** Who waits for an answer. */
  readonly #waiting = new Set<(error: Error) => void>();
  /** Files by their hashes: kept by the browser, which may put them on the disk, and not once more in memory. */
  readonly #files = new Map<string, { readonly fileName: string; readonly blob: Blob }>();

  constructor(start: () => Worker, onSilent: (isSilent: boolean) => void, times = BEAT_TIMES) {
    this.#start = start;
    this.#onSilent = onSilent;
    this.#times = times;
    // What begins before anything is asked is there sooner.
    this.#running = this.#begin();
  }

  /** How often it was started. */
  get starts(): number {
    return this.#starts;
  }

  /** Whatever is asked of this is asked of the worker. Rejects with {@link WorkshopLost} where that is gone before it answers. */
  readonly remote = new Proxy({} as Remote, {
    get:
      (_, name: string) =>
      (...words: unknown[]) =>
        this.#ask(name, words),
  });

  /** Keeps a file for a worker that is started anew. */
  keep(hash: string, fileName: string, bytes: Uint8Array): void {
    if (!this.#files.has(hash)) this.#files.set(hash, { fileName, blob: new Blob([bytes as Uint8Array<ArrayBuffer>]) });
  }

  /** Ends the worker, whatever it does; the next question starts another. */
  restart(): void {
    const { worker, beat } = this.#running ?? {};
    this.#running = null;
    worker?.terminate();
    beat?.end();
    const waiting = [...this.#waiting];
    this.#waiting.clear();
    for (const reject of waiting) reject(new WorkshopLost('the worker was ended'));
  }

  #begin(): Running {
    this.#starts += 1;
    const worker = this.#start();
    const remote = Comlink.wrap<Workshop>(worker);
    const beat = new Heartbeat(worker, (isSilent) => this.#onSilent(isSilent), this.#times);
    worker.addEventListener('error', (event) => {
      if (this.#running?.worker !== worker || beat.hasAnswered) return;
      // It could not even be started: what is waited for will not come.
      event.preventDefault();
      this.restart();
    });
    return { worker, remote, beat, ready: this.#handOver(remote) };
  }

  async #handOver(remote: Remote): Promise<void> {
    for (const { fileName, blob } of this.#files.values())
      await remote.keepFile(new Uint8Array(await blob.arrayBuffer()), fileName);
  }

  #ask(name: string, words: readonly unknown[]): Promise<unknown> {
    this.#running ??= this.#begin();
    const { remote, beat, ready } = this.#running;
    return new Promise((resolve, reject) => {
      this.#waiting.add(reject);
      beat.listen();
      const over = (): void => {
        this.#waiting.delete(reject);
        if (this.#waiting.size === 0) beat.rest();
      };
      const call = (): Promise<unknown> => (remote as unknown as Record<string, Call>)[name](...words);
      // Without files to hand over it is asked at once: the order of questions is theirs.
      (this.#files.size === 0 || this.#starts === 1 ? call() : ready.then(call)).then(resolve, reject).finally(over);
    });
  }
}
