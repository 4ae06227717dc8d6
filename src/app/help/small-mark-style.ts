import { css } from 'lit';

/** A sign that is pressed, drawn alone in the middle of its target; to be put into a rule. */
export const SMALL_MARK = css`
  display: grid;
  place-items: center;
  inline-size: 36px;
  block-size: 36px;
  padding: 0;
  border: 0;
  background: none;
`;
