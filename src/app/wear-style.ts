import { css } from 'lit';

/** How the fields of one tape, core or way in lie. */
export const WEAR_STYLE = css`
  :host {
    display: block;
  }
  fieldset > legend {
    padding: 0;
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
  .slide {
    display: grid;
    font-size: var(--t-body);
  }
  input[type='range'] {
    accent-color: var(--ink);
    inline-size: 100%;
    min-block-size: 28px;
    margin: 0;
  }
  .figure {
    font-weight: 600;
  }
  .wrong {
    color: var(--wrong);
  }
`;
