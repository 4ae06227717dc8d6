/** The message that hands a worker the port it is to answer on. */
interface Begin {
  readonly beats: MessagePort;
}

/** How a worker is listened for, and how long it may be silent. */
export interface BeatTimes {
  /** From one question to the next, ms. */
  readonly turnMs: number;
  /** So many turns of the window without an answer are told. A machine that sleeps has no turns. */
  readonly turns: number;
}

/** A worker lets messages in every few ms while it works; the longest stretch it does not is a second on a slow machine. */
export const BEAT_TIMES: BeatTimes = { turnMs: 1000, turns: 20 };

/** In the worker: answers whoever asks whether it still hears. */
export function answerBeats(scope: {
  addEventListener(kind: 'message', take: (event: MessageEvent) => void): void;
}): void {
  scope.addEventListener('message', ({ data }: MessageEvent<Partial<Begin> | null>) => {
    const port = data?.beats;
    if (port !== undefined) port.onmessage = () => port.postMessage(null);
  });
}

/** Asks a worker again and again whether it still hears, as long as something is waited for. */
export class Heartbeat {
  readonly #port: MessagePort;
  readonly #times: BeatTimes;
  readonly #tell: (isSilent: boolean) => void;
  #timer: ReturnType<typeof setInterval> | undefined;
  #missed = 0;
  #isSilent = false;
  #hasAnswered = false;

  /** @param tell  called when it has been silent for too long, again each time that passes anew, and when it is heard again. */
  constructor(worker: Pick<Worker, 'postMessage'>, tell: (isSilent: boolean) => void, times: BeatTimes) {
    const { port1, port2 } = new MessageChannel();
    this.#port = port1;
    this.#times = times;
    this.#tell = tell;
    port1.onmessage = () => this.#hear();
    worker.postMessage({ beats: port2 } satisfies Begin, [port2]);
    port1.postMessage(null);
  }

  /** Whether it was ever heard. */
  get hasAnswered(): boolean {
    return this.#hasAnswered;
  }

  listen(): void {
    if (this.#timer !== undefined) return;
    this.#missed = 0;
    this.#port.postMessage(null);
    this.#timer = setInterval(() => this.#turn(), this.#times.turnMs);
  }

  rest(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
  }

  end(): void {
    this.rest();
    this.#port.close();
  }

  #turn(): void {
    this.#missed += 1;
    this.#port.postMessage(null);
    if (this.#missed % this.#times.turns !== 0) return;
    this.#isSilent = true;
    this.#tell(true);
  }

  #hear(): void {
    this.#hasAnswered = true;
    this.#missed = 0;
    if (!this.#isSilent) return;
    this.#isSilent = false;
    this.#tell(false);
  }
}
