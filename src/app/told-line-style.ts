import { css } from 'lit';

/** A line of its own that tells something, in a frame: one sentence and what can be done about it. */
export const TOLD_LINE = css`
  :host {
    display: block;
    margin-block-end: var(--s4);
  }
  .told {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--s1) var(--s3);
    padding: var(--s2) var(--s3);
    border: var(--narrow) solid var(--ink);
    background: var(--paper-high);
    font-size: var(--t-small);
  }
  .told p {
    flex: 1 1 14em;
  }
`;
