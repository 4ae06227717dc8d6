import { css } from 'lit';

/** A row at the foot of the sheet: what it is about, and beside it what there is to choose. */
export const FOOT_ROW = css`
  :host {
    display: grid;
    grid-template-columns: 7.5em minmax(0, 1fr);
    align-items: baseline;
  }
`;
