import { css } from 'lit';
import { KEY_STYLE } from './key-style.ts';

/** Type and controls that all elements share: native controls, drawn as a printed form would draw them. */
export const SHARED = css`
  ${KEY_STYLE}
  :host {
    box-sizing: border-box;
    font-variant-numeric: tabular-nums;
    color: var(--ink);
  }
  :host([hidden]) {
    display: none;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  p,
  h1,
  h2,
  h3,
  ul,
  ol,
  dl,
  dd,
  figure,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
    min-inline-size: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  .soft {
    color: var(--ink-soft);
  }
  .small {
    font-size: var(--t-small);
  }
  .figure {
    font-size: var(--t-figure);
    font-weight: 560;
    line-height: 1.15;
    letter-spacing: -0.005em;
  }
  /* Says what the field in it is, and has no place of its own. */
  .means {
    display: contents;
  }
  .no-break {
    white-space: nowrap;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s2) var(--s3);
    align-items: center;
  }
  .stack > * + * {
    margin-block-start: var(--s3);
  }
  /* Drawings keep their sides in every language. */
  svg {
    direction: ltr;
  }
  .unseen {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  :focus-visible {
    outline: 3px solid var(--lamp-ink);
    outline-offset: 2px;
  }

  button,
  .button {
    font: inherit;
    font-size: var(--t-small);
    font-weight: 600;
    line-height: 1.2;
    color: var(--ink);
    min-block-size: var(--target);
    padding: var(--s1) var(--s3);
    border: var(--narrow) solid var(--ink);
    border-radius: 0;
    background: var(--paper-high);
    cursor: pointer;
  }
  /* What is pressed begins with a capital, as its verb does not within a sentence. */
  button:not(.word, .place)::first-letter {
    text-transform: uppercase;
  }
  button:hover:not(:disabled) {
    background: var(--paper-low);
  }
  button:active:not(:disabled) {
    transform: translateY(1px);
  }
  button:disabled {
    color: var(--ink-soft);
    border-color: var(--rule-soft);
    cursor: default;
  }
  button[aria-pressed='true'],
  button.next {
    background: var(--lamp);
    border-color: var(--lamp);
    color: var(--on-lamp);
  }
  button[aria-pressed='true']:hover:not(:disabled),
  button.next:hover:not(:disabled) {
    background: var(--lamp);
    border-color: var(--ink);
  }
  button.plain {
    border-color: transparent;
    background: none;
    padding-inline: var(--s1);
    /* Its words stand under those above it. */
    margin-inline: calc(-1 * var(--s1));
    min-block-size: var(--target-plain);
    font-weight: 500;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 3px;
    justify-self: start;
  }
  button.plain:hover:not(:disabled) {
    background: var(--paper-low);
  }
  /* A line of a list that leads to the place it speaks of. */
  button.place {
    display: block;
    inline-size: 100%;
    min-block-size: var(--target-plain);
    padding: 2px 0;
    border: 0;
    background: none;
    text-align: start;
    font-weight: 450;
    line-height: var(--lead);
  }
  button.place:hover:not(:disabled) {
    text-decoration: underline;
    background: none;
  }
  kbd {
    font: inherit;
    font-size: 0.8em;
    font-weight: 600;
    display: inline-block;
    min-inline-size: 1.5em;
    text-align: center;
    padding-inline: 3px;
    margin-inline-start: var(--s1);
    border: 1px solid currentcolor;
    border-radius: 2px;
  }

  /* Where nobody types, keys are only in the way. */
  @media (hover: none) and (pointer: coarse) {
    kbd {
      display: none !important;
    }
  }

  label {
    font-size: var(--t-small);
  }
  /* The least of all: what says more of a label is not outweighed. */
  :where(label:has(> input[type='checkbox'], > input[type='radio'])) {
    min-block-size: var(--target-plain);
  }
  input[type='text'],
  input[type='number'],
  select {
    font: inherit;
    font-variant-numeric: tabular-nums;
    color: var(--ink);
    background: var(--paper-high);
    border: 0;
    border-block-end: var(--wide) solid var(--ink);
    border-radius: 0;
    min-block-size: var(--target);
    padding: 0 var(--s2);
    max-inline-size: 100%;
  }
  input:disabled,
  select:disabled {
    color: var(--ink-soft);
    border-color: var(--rule-soft);
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s4);
  }
  .choices label {
    display: inline-flex;
    align-items: center;
    gap: var(--s2);
    min-block-size: var(--target);
    cursor: pointer;
  }
  input[type='range'] {
    min-block-size: var(--s6);
  }
  input[type='radio'],
  input[type='checkbox'] {
    appearance: none;
    inline-size: 18px;
    block-size: 18px;
    margin: 0;
    flex: none;
    border: var(--wide) solid var(--ink);
    background: var(--paper-high);
    cursor: pointer;
  }
  input[type='radio'] {
    border-radius: 50%;
  }
  input[type='radio']:checked,
  input[type='checkbox']:checked {
    background: var(--lamp);
    box-shadow: inset 0 0 0 3px var(--paper-high);
  }

  table {
    border-collapse: collapse;
    inline-size: 100%;
    font-size: var(--t-small);
  }
  th {
    font-weight: 500;
    color: var(--ink-soft);
    text-align: start;
    vertical-align: bottom;
  }
  th,
  td {
    padding: var(--s1) var(--s2);
    border-block-end: var(--narrow) solid var(--rule-soft);
  }
  th:first-child,
  td:first-child {
    padding-inline-start: 0;
  }
  th:last-child,
  td:last-child {
    padding-inline-end: 0;
  }
  thead th {
    border-block-end-color: var(--ink);
  }
  .number {
    text-align: end;
    white-space: nowrap;
  }
  tbody tr.is-chosen {
    background: color-mix(in srgb, var(--lamp) 38%, transparent);
  }
  details > summary {
    cursor: pointer;
    font-size: var(--t-small);
    font-weight: 600;
    min-block-size: var(--target);
    padding-block: calc((var(--target) - 1lh) / 2);
    display: flex;
    align-items: baseline;
    gap: var(--s2);
    list-style: none;
  }
  details > summary::before {
    content: '+';
    inline-size: 1ch;
    text-align: center;
  }
  details[open] > summary::before {
    content: '\u2212';
  }

  @media (forced-colors: active) {
    button.next,
    button[aria-pressed='true'] {
      border: 3px solid Highlight;
    }
  }
`;
