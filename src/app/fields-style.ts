import { css } from 'lit';

/** How a group of fields lies inside a line of the job sheet. */
export const FIELDS_STYLE = css`
  :host {
    display: block;
  }
  fieldset > legend {
    padding: 0;
    font-size: var(--t-small);
    color: var(--ink-soft);
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
