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
    grid-template-columns: minmax(0, 9fr) minmax(0, 10fr);
    gap: var(--s6);
    align-items: start;
  }
  /* Cautions in full take room: with it they are seen whole. */
  article.minded {
    grid-template-columns: minmax(0, 1fr) minmax(0, 2fr);
  }
  article.bare {
    grid-template-columns: minmax(0, 1fr);
  }
  /* The picture stays in sight while what is said is scrolled. */
  figure {
    --height: 100cqh;
    position: sticky;
    inset-block-start: 0;
    display: grid;
    grid-template-rows: minmax(0, var(--height));
    align-items: center;
  }
  fl-work-picture,
  fl-page-picture {
    block-size: var(--height);
    max-inline-size: 100%;
  }
  fl-gluing-picture {
    --most: var(--height);
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
    font-variant-numeric: normal;
  }
  h1 {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s4);
    align-items: baseline;
  }
  .name {
    font-size: calc(1.25 * var(--bench-near));
    font-weight: 600;
    line-height: 1.15;
    overflow-wrap: break-word;
  }
  .figures {
    font-weight: 480;
    margin-block-start: var(--s1);
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
  /* A bar and no frame: what goes on below the edge of the screen is not cut through. */
  .mind {
    padding-inline-start: var(--s4);
    border-inline-start: 6px solid var(--wrong);
  }
  /* As small as is read from 1 m: 3.7 % of a 10-inch tablet's shorter side is 5.7 mm of type, an x-height of 2.9 mm, 10 minutes of arc. */
  fl-cautions {
    --t-small: max(1rem, 0.79em);
    line-height: 1.25;
  }
  p fl-cautions {
    display: inline;
  }
  .copies {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s2);
  }
  .copies button {
    min-inline-size: 64px;
    min-block-size: 64px;
    border-width: var(--wide);
    font-size: var(--bench-near);
    font-weight: 700;
  }
  .copies [aria-pressed='true'] {
    background: var(--ink);
    color: var(--paper);
  }
  .ticks {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s4);
    color: var(--ink-soft);
  }
  .text .ticks li + li {
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
      --height: 34vh;
      position: static;
      display: block;
      margin-block-end: var(--s4);
    }
  }
`;
