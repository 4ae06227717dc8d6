const UPWARDS: EventInit = { bubbles: true, composed: true };

/** The maker walks to a step of the history. */
export class WalkEvent extends Event {
  constructor(readonly step: number) {
    super('fl-walk', UPWARDS);
  }
}

/** A kept version is to be compared with how it is now. */
export class CompareAskEvent extends Event {
  constructor(readonly version: string) {
    super('fl-compare-ask', { bubbles: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-walk': WalkEvent;
    'fl-compare-ask': CompareAskEvent;
  }
}
