import { KEEPER, type KeeperReply, type KeeperRequest } from './keeper-talk.ts';

/** What a window is told of the worker that keeps its files. */
export interface KeeperEvents {
  /** All files are kept. `isFirst`: they were not before this visit. */
  onKept(isFirst: boolean): void;
  /**
   * There is a newer version than this window's, which comes with the next load of the page. `takeOver`: puts it in force; to be awaited before.
   * `isElsewhere`: another window put it in force already.
   */
  onNewer(takeOver: () => Promise<void>, isElsewhere: boolean): void;
}

/** What of the browser is used. */
export type Keepers = Pick<ServiceWorkerContainer, 'register' | 'controller' | 'addEventListener'>;

/** A window looks for a new version no more often than this, ms. */
const HOUR_MS = 3_600_000;

/** Has the files of the app kept, and watches for newer versions. */
export class Keeper {
  #registration: ServiceWorkerRegistration | null = null;
  #asked = 0;
  #isTaking = false;
  #hadController: boolean;

  /** @param entry  address of the first script of this window, which every version has another of */
  constructor(
    readonly keepers: Keepers,
    readonly entry: string,
    readonly events: KeeperEvents,
  ) {
    this.#hadController = keepers.controller !== null;
    keepers.addEventListener('controllerchange', () => void this.#onController());
  }

  /** Begins, or begins anew where it was broken off. Rejects where the browser keeps nothing, or the network is gone. */
  async begin(): Promise<void> {
    // Whatever the server says of how long its files hold, the worker itself is always asked for.
    const registration = await this.keepers.register(KEEPER, { updateViaCache: 'none' });
    this.#asked = Date.now();
    if (registration === this.#registration) return;
    this.#registration = registration;
    registration.addEventListener('updatefound', () => this.#follow(registration.installing));
    const isKept = registration.active !== null;
    if (isKept) this.events.onKept(false);
    this.#follow(registration.installing);
    this.#follow(registration.waiting);
    if (isKept && this.keepers.controller !== null) await this.#compare();
  }

  /** Looks for a new version, unless it did a short while ago. Without a network it stays as it is. */
  async lookAgain(): Promise<void> {
    if (this.#registration?.active == null) return this.begin();
    if (Date.now() - this.#asked < HOUR_MS) return;
    this.#asked = Date.now();
    await this.#registration.update();
  }

  #follow(worker: ServiceWorker | null): void {
    if (worker === null) return;
    const isFirst = this.#registration?.active === null;
    const onState = (): void => {
      if (worker.state === 'installed' && !isFirst) this.events.onNewer(() => this.#takeOver(worker), false);
      if (worker.state === 'activated' && isFirst) this.events.onKept(true);
    };
    worker.addEventListener('statechange', onState);
    onState();
  }

  #takeOver(worker: ServiceWorker): Promise<void> {
    this.#isTaking = true;
    return new Promise((resolve) => {
      const onState = (): void => {
        // A still newer one may have pushed it out: then that one waits, and is told of after the load.
        if (worker.state === 'activated' || worker.state === 'redundant') resolve();
      };
      worker.addEventListener('statechange', onState);
      onState();
      worker.postMessage({ kind: 'take-up' } satisfies KeeperRequest);
    });
  }

  async #onController(): Promise<void> {
    const isElsewhere = this.#hadController;
    this.#hadController = true;
    if (!this.#isTaking) await this.#compare(isElsewhere);
  }

  /** Whether this window is of the version in force. */
  async #compare(isElsewhere = false): Promise<void> {
    const { controller } = this.keepers;
    if (controller === null) return;
    const { port1, port2 } = new MessageChannel();
    const reply = new Promise<KeeperReply>((resolve) => {
      port1.onmessage = (event) => resolve(event.data as KeeperReply);
    });
    controller.postMessage({ kind: 'begun', entry: this.entry } satisfies KeeperRequest, [port2]);
    const { isOfVersion } = await reply;
    port1.close();
    if (!isOfVersion) this.events.onNewer(() => Promise.resolve(), isElsewhere);
  }
}
