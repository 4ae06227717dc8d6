import { css } from 'lit';

/** How the fields of one tape, core or way in differ from others. */
export const WEAR_STYLE = css`
  fieldset > legend {
    font-size: inherit;
    font-weight: 600;
    color: inherit;
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
`;
