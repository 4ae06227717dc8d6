import type { CDPSession } from 'playwright-core';

/** Asks the workers of a page how much memory they hold. */
export class WorkerHeaps {
  readonly #session: CDPSession;
  readonly #workers = new Set<string>();
  readonly #waiting = new Map<number, (result: unknown) => void>();
  #asked = 0;

  /** Follows the workers that there are and those that come. */
  static async of(session: CDPSession): Promise<WorkerHeaps> {
    const heaps = new WorkerHeaps(session);
    await session.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
    return heaps;
  }

  private constructor(session: CDPSession) {
    this.#session = session;
    session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
      if (targetInfo.type === 'worker') this.#workers.add(sessionId);
    });
    session.on('Target.detachedFromTarget', ({ sessionId }) => void this.#workers.delete(sessionId));
    session.on('Target.receivedMessageFromTarget', ({ message }) => {
      const { id, result } = JSON.parse(message) as { id?: number; result?: unknown };
      if (id === undefined) return;
      this.#waiting.get(id)?.(result);
      this.#waiting.delete(id);
    });
  }

  /** Memory of all workers together, bytes, after each let go of what it does not need. */
  async bytes(): Promise<number> {
    let sum = 0;
    for (const worker of this.#workers) {
      for (let i = 0; i < 2; i += 1) await this.#ask(worker, 'HeapProfiler.collectGarbage');
      sum += ((await this.#ask(worker, 'Runtime.getHeapUsage')) as { usedSize: number }).usedSize;
    }
    return sum;
  }

  #ask(sessionId: string, method: string): Promise<unknown> {
    const id = (this.#asked += 1);
    const answered = new Promise((resolve) => this.#waiting.set(id, resolve));
    return this.#session
      .send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) })
      .then(() => answered);
  }
}
