import { css } from 'lit';

const HEADING = css`
  :host {
    display: block;
  }
  h3 {
    font-size: var(--t-small);
    font-weight: 600;
  }
`;

/** What is folded away under its name, in small type. */
export const FOLDED_LIST_STYLE = css`
  :host {
    display: block;
    font-size: var(--t-small);
  }
  h2,
  h3 {
    font-size: var(--t-small);
    font-weight: 600;
    overflow-wrap: anywhere;
  }
`;

/** A list whose lines have fields of their own, each under the last. */
export const FIELD_LIST_STYLE = css`
  ${HEADING}
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: var(--s1) var(--s3);
    align-items: center;
    padding-block: var(--s2);
    border-block-start: var(--narrow) solid var(--rule-soft);
    font-size: var(--t-small);
  }
  li:first-child {
    border-block-start: 0;
  }
  select {
    border-block-end-width: var(--narrow);
  }
`;

/** A list of places that its lines lead to. */
export const PLACE_LIST_STYLE = css`
  ${HEADING}
  button.place {
    min-block-size: 28px;
  }
  li + li {
    border-block-start: var(--narrow) solid var(--rule-soft);
  }
`;

/** A table of seams, each under its letter. */
export const SEAM_ROWS_STYLE = css`
  :host {
    display: block;
  }
  button.letter {
    min-inline-size: 2.2em;
    min-block-size: 28px;
    padding: 0 var(--s1);
    text-align: center;
    border-radius: 50%;
  }
  tbody tr:hover {
    background: var(--paper-low);
  }
  .wrong {
    color: var(--wrong);
  }
`;
