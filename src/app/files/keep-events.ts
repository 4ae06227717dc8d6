/** Something is asked of a state that is kept in the browser. */
export type StateAsk =
  /** To be the state of the job in hand, or to open its job with it. */
  { readonly kind: 'bring'; readonly id: string } | { readonly kind: 'forget'; readonly job: string };

export class StateEvent extends Event {
  constructor(
    readonly ask: StateAsk,
    /** To be called when it is done. */
    readonly onDone: () => void,
  ) {
    super('fl-state', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-state': StateEvent;
  }
}
