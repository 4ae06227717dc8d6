/** Who works on a job where several windows have it open: one of them at a time. */

/** `mine`: this window works on it; `elsewhere`: another does, and the maker has not said what to do; `looking`: this one only looks. */
export type Hold = 'mine' | 'elsewhere' | 'looking';

/** What windows of one browser can say to each other. */
export interface LockDoor {
  /**
   * Holds a name for this window.
   * @param onLost called when another window takes it
   * @returns what lets go of it; null where another window holds it
   */
  hold(name: string, way: 'if-free' | 'take', onLost: () => void): Promise<(() => void) | null>;
  send(message: WindowMessage): void;
  onMessage(take: (message: WindowMessage) => void): void;
}

/** `give`: write what waits and let go of the job. `given`: that is done. */
export interface WindowMessage {
  readonly kind: 'give' | 'given';
  readonly job: string;
}

/** How long a window that holds a job has to write what waits before it is taken, ms. */
const GIVE_MS = 2000;

const LOCK = 'foamloft job ';

export class JobLock {
  readonly #door: LockDoor | null;
  readonly #onChange: () => void;
  readonly #flush: () => Promise<void>;
  readonly #held = new Map<string, () => void>();
  #job: string | null = null;
  #hold: Hold = 'mine';
  #settled: Promise<void> = Promise.resolve();
  #given: (() => void) | null = null;

  /**
   * @param door     null where windows cannot speak to each other: each then works alone
   * @param onChange called when what this window may do changed
   * @param flush    writes what waits
   */
  constructor(door: LockDoor | null, onChange: () => void, flush: () => Promise<void>) {
    this.#door = door;
    this.#onChange = onChange;
    this.#flush = flush;
    door?.onMessage((message) => void this.#hear(message));
  }

  get hold(): Hold {
    return this.#hold;
  }

  /** Whether this window works on a job, once that is known. */
  async isMine(job: string): Promise<boolean> {
    if (this.#door === null || this.#held.has(job)) return true;
    await this.#settled;
    return this.#held.has(job);
  }

  /** Takes a job in hand where no other window has it. The job before is let go of when what waits of it is written. */
  take(job: string): void {
    const before = this.#job;
    if (job === before) return;
    this.#job = job;
    // Nothing is known of it yet.
    this.#hold = 'mine';
    this.#settled = this.#settled.then(() => this.#take(job));
    if (before !== null) void this.#settled.then(() => this.#leave(before));
  }

  async #take(job: string): Promise<void> {
    const isMine = this.#held.has(job) || (await this.#ask(job, 'if-free'));
    if (job === this.#job) this.#set(isMine ? 'mine' : 'elsewhere');
  }

  async #leave(job: string): Promise<void> {
    await this.#flush();
    if (job !== this.#job) this.#letGo(job);
  }

  #letGo(job: string): void {
    this.#held.get(job)?.();
    this.#held.delete(job);
  }

  /** Works on the job here; the other window is told and only looks from then on. */
  async takeOver(): Promise<void> {
    const job = this.#job;
    if (job === null || this.#hold === 'mine' || this.#door === null) return;
    const isMine = (await this.#ask(job, 'if-free')) || (await this.#askToGive(this.#door, job));
    if (isMine && job === this.#job) this.#set('mine');
  }

  async #askToGive(door: LockDoor, job: string): Promise<boolean> {
    const given = new Promise<void>((resolve) => {
      this.#given = resolve;
      setTimeout(resolve, GIVE_MS);
    });
    door.send({ kind: 'give', job });
    await given;
    this.#given = null;
    return await this.#ask(job, 'take');
  }

  /** The maker has seen that another window works on the job, and only looks here. */
  look(): void {
    if (this.#hold === 'elsewhere') this.#set('looking');
  }

  async #ask(job: string, way: 'if-free' | 'take'): Promise<boolean> {
    if (this.#door === null) return true;
    const release = await this.#door.hold(LOCK + job, way, () => this.#lost(job));
    if (release !== null) this.#held.set(job, release);
    return release !== null;
  }

  #lost(job: string): void {
    this.#held.delete(job);
    if (job === this.#job) this.#set('elsewhere');
  }

  async #hear({ kind, job }: WindowMessage): Promise<void> {
    if (kind === 'given') {
      if (job === this.#job) this.#given?.();
      return;
    }
    if (!this.#held.has(job)) return;
    await this.#flush();
    this.#letGo(job);
    this.#lost(job);
    this.#door?.send({ kind: 'given', job });
  }

  #set(hold: Hold): void {
    if (hold === this.#hold) return;
    this.#hold = hold;
    this.#onChange();
  }
}

/** The browser's own locks and messages; null where it has none. */
export function browserLocks(): LockDoor | null {
  if (!('locks' in navigator) || !('BroadcastChannel' in globalThis)) return null;
  const channel = new BroadcastChannel('foamloft windows');
  return {
    hold: (name, way, onLost) => new Promise((resolve) => hold(name, way, onLost, resolve)),
    send: (message) => channel.postMessage(message),
    onMessage: (take) => channel.addEventListener('message', ({ data }: MessageEvent<WindowMessage>) => take(data)),
  };
}

function hold(
  name: string,
  way: 'if-free' | 'take',
  onLost: () => void,
  resolve: (release: (() => void) | null) => void,
): void {
  let isHeld = false;
  navigator.locks
    .request(name, way === 'take' ? { steal: true } : { ifAvailable: true }, (lock) => {
      if (lock === null) return resolve(null);
      isHeld = true;
      return new Promise<void>((release) => resolve(release));
    })
    .catch(() => {
      // Taken by another window; or locks are refused here, and then this window works alone.
      if (isHeld) onLost();
      else resolve(() => undefined);
    });
}
