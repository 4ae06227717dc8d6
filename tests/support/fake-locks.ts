import type { LockDoor, WindowMessage } from '../../src/app/files/job-lock.ts';

/** Windows of one browser, as far as locks and messages go. */
export class FakeWindows {
  readonly #holders = new Map<string, { readonly onLost: () => void }>();
  readonly #ears: { readonly door: LockDoor; readonly take: (message: WindowMessage) => void }[] = [];
  /** Windows that are too busy to answer. */
  readonly deaf = new Set<LockDoor>();

  open(): LockDoor {
    const door: LockDoor = {
      hold: async (name, way, onLost) => {
        await Promise.resolve();
        const before = this.#holders.get(name);
        if (before !== undefined && way === 'if-free') return null;
        const own = { onLost };
        this.#holders.set(name, own);
        before?.onLost();
        return () => {
          if (this.#holders.get(name) === own) this.#holders.delete(name);
        };
      },
      send: (message) => {
        for (const ear of this.#ears) if (ear.door !== door && !this.deaf.has(ear.door)) ear.take(message);
      },
      onMessage: (take) => void this.#ears.push({ door, take }),
    };
    return door;
  }
}
