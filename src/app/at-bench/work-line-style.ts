import { css } from 'lit';

/** A line of the work: its picture beside what is said where the screen is broad, above it where it is high. */
export const WORK_LINE_STYLE = css`
  :host {
    display: grid;
    min-block-size: 0;
    font-size: var(--bench-near);
    line-height: 1.3;
  }
  article {
    display: grid;
    grid-template: minmax(0, 1fr) / minmax(0, 9fr) minmax(0, 10fr);
    gap: var(--s6);
    min-block-size: 0;
  }
  article.bare {
    grid-template-columns: minmax(0, 1fr);
  }
  figure {
    display: grid;
    align-items: center;
    min-block-size: 0;
  }
  figure > * {
    block-size: 100%;
    min-block-size: 0;
    max-inline-size: 100%;
  }
  fl-gluing-picture {
    --most: 100%;
    block-size: auto;
    max-block-size: 100%;
  }
  .text > * + * {
    margin-block-start: var(--s3);
  }
  .far {
    font-size: var(--bench-far);
    font-weight: 660;
    line-height: 1.05;
    letter-spacing: -0.015em;
    overflow-wrap: break-word;
    hyphens: auto;
  }
  .figures {
    white-space: nowrap;
  }
  .wrong {
    color: var(--wrong);
    font-weight: 700;
  }
  .is-done {
    font-weight: 700;
  }
  .text ul li + li,
  .text ol li + li {
    margin-block-start: var(--s2);
  }
  .batch {
    padding-inline-start: var(--s4);
    border-inline-start: 6px solid var(--ink);
  }
  .mind {
    padding: var(--s3) var(--s4);
    border: 3px solid var(--wrong);
  }
  fl-cautions {
    --t-small: 1em;
  }
  p fl-cautions {
    display: inline;
  }
  .ticks {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s4);
    color: var(--ink-soft);
  }
  .ticks li + li {
    margin: 0;
  }
  .ticks .done {
    color: var(--ink);
    font-weight: 700;
  }
  .ticks .changed {
    color: var(--wrong);
    font-weight: 700;
  }
  button.large {
    min-block-size: var(--bench-target);
    padding-inline: var(--s6);
    font-size: var(--bench-near);
  }

  /* Upright, or a phone: the picture has its own height and all is scrolled together. */
  @media (orientation: portrait), (width < 700px) {
    article {
      display: block;
    }
    figure {
      block-size: 34vh;
      margin-block-end: var(--s4);
    }
  }
`;
