import { css } from 'lit';

/** How a group of fields lies inside a line of the job sheet. */
export const FIELDS_STYLE = css`
  :host {
    display: block;
  }
  fieldset > legend {
    padding: 0;
    font-size: var(--t-small);
    font-weight: 600;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s2) var(--s4);
  }
  .fields label {
    display: flex;
    flex-direction: column;
    color: var(--ink-soft);
  }
  .wrong {
    color: var(--wrong);
  }
`;

/** Groups of fields one below the other. */
export const FIELDS_BELOW = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--s3);
  }
`;

/** A small drawing between fields, as wide as they are. */
export const DRAWING_STYLE = css`
  :host {
    display: block;
    padding: var(--s3);
    background: var(--paper-low);
  }
  svg {
    display: block;
    inline-size: 100%;
    max-block-size: 15rem;
  }
`;
