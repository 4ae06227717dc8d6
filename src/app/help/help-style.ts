import { css } from 'lit';

/** Words in a sentence that lead to the glossary: they stay within their line. */
export const LINK_STYLE = css`
  button.word {
    display: inline;
    min-block-size: 0;
    margin: 0;
    padding: 0;
    border: 0;
    font: inherit;
    text-decoration-style: dotted;
    text-align: start;
  }
`;
