/** Keeps the screen awake as long as it is held and the page is seen, where the browser can. */
export class WakeLock {
  #lock: WakeLockSentinel | null = null;
  #isHeld = false;
  /** @param told called when it is known whether the screen stays awake. */
  constructor(readonly told: (isAwake: boolean) => void) {}

  hold(): void {
    this.#isHeld = true;
    document.addEventListener('visibilitychange', this.#ask);
    this.#ask();
  }

  release(): void {
    this.#isHeld = false;
    document.removeEventListener('visibilitychange', this.#ask);
    void this.#lock?.release();
    this.#lock = null;
  }

  /** The browser lets go of it whenever the page is hidden. */
  readonly #ask = (): void => {
    if (document.visibilityState === 'visible') void this.#request();
  };

  async #request(): Promise<void> {
    try {
      // Not in every browser, whatever the types say; refused where power is low.
      const lock = await (navigator as Partial<Navigator>).wakeLock?.request('screen');
      if (lock !== undefined && !this.#isHeld) return void lock.release();
      this.#lock = lock ?? null;
      this.told(lock !== undefined);
    } catch {
      if (this.#isHeld) this.told(false);
    }
  }
}
