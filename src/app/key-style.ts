import { css, unsafeCSS } from 'lit';

const KEYS = [...'abcdefghijklmnopqrstuvwxyz0123456789'];

/** A key on a button is not shown while `--key-…: none` is said of it around. A rule for each: the page takes no style from attributes. */
export const KEY_STYLE = css`
  ${unsafeCSS(KEYS.map((key) => `kbd.key-${key}{display:var(--key-${key},inline-block)}`).join(''))}
`;
