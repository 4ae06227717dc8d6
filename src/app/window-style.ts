import { css } from 'lit';

/** Where bench and job sheet stand: side by side where there is width, the sheet under the picture where there is not. */
export const WINDOW_STYLE = css`
  :host {
    display: block;
    font-family: var(--type);
    line-height: var(--lead);
  }
  main {
    display: grid;
    grid-template-columns: minmax(0, 1fr) clamp(25rem, 36vw, 31rem);
    block-size: 100vh;
    block-size: 100dvh;
    overflow: hidden;
  }
  .bench {
    position: relative;
    display: grid;
    grid-template: minmax(0, 1fr) auto / minmax(0, 1fr);
    min-inline-size: 0;
    container-type: inline-size;
    background: var(--bench-ground);
  }
  fl-stage,
  fl-page-view,
  fl-sheet-view,
  .over {
    grid-area: 1 / 1;
    min-block-size: 0;
  }
  fl-page-view,
  fl-sheet-view {
    z-index: 1;
  }
  /* Over the bench and all that stands by it. */
  fl-help-sheet {
    position: absolute;
    z-index: 2;
    inset: 0;
  }
  .over {
    position: relative;
    place-self: center;
    max-inline-size: 30ch;
    padding: var(--s6);
    text-align: center;
    text-wrap: balance;
    font-size: var(--t-large);
    pointer-events: none;
  }
  .over.drop {
    z-index: 2;
    place-self: stretch;
    display: grid;
    place-content: center;
    max-inline-size: none;
    margin: var(--s3);
    font-size: var(--t-title);
    font-weight: 640;
    border: var(--wide) dashed var(--ink);
    background: color-mix(in srgb, var(--lamp) 30%, var(--bench-ground));
  }
  /* What is looked at, and under it how far the work is: neither lies over the other. */
  .top {
    grid-area: 1 / 1;
    z-index: 1;
    align-self: start;
    display: grid;
    gap: var(--s2);
    margin: var(--s4) var(--s4) 0;
    pointer-events: none;
  }
  fl-legend {
    justify-self: end;
    inline-size: min(25rem, 100%);
    pointer-events: auto;
  }
  fl-progress-line {
    justify-self: end;
    pointer-events: auto;
  }
  /* Over the picture's foot and not under it: the picture keeps its size while things are chosen. */
  fl-chosen-row {
    grid-area: 1 / 1;
    z-index: 1;
    align-self: end;
    margin: 0 var(--s4) var(--s2);
  }
  /* A sheet laid over the bench hides what is for the sculpt, from the eye and from the Tab key. */
  fl-sheet-view ~ fl-look-row,
  fl-sheet-view ~ .top fl-look-row,
  fl-sheet-view ~ .top fl-stage-sides,
  fl-sheet-view ~ fl-chosen-row {
    visibility: hidden;
  }
  fl-stage-rule {
    grid-row: 2;
    padding: var(--s3) var(--s4) var(--s3);
  }
  /* Where the next step of the guided job is done. */
  fl-stage-rule[data-next] {
    box-shadow: inset 0 var(--s1) 0 var(--lamp);
  }
  fl-finder {
    position: absolute;
    z-index: 3;
    inset-block-start: var(--s6);
    inset-inline: 0;
    margin-inline: auto;
    inline-size: min(34rem, calc(100% - 2 * var(--s4)));
  }
  /* What lies unseen inside it scrolls with it: else the window grows by it, and is scrolled away to where it lies. */
  fl-job-sheet {
    position: relative;
    overflow-y: auto;
    scroll-padding-block-start: 72px;
    scrollbar-gutter: stable;
  }
  /* Until it is loaded the sheet is blank paper. */
  fl-job-sheet:not(:defined) {
    background: var(--paper);
    border-inline-start: var(--wide) solid var(--ink);
  }
  fl-stage-rule:not(:defined) {
    min-block-size: 5rem;
  }
  input[type='file'] {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    opacity: 0;
    pointer-events: none;
  }

  /* A sheet of the help comes out of the printer by itself. */
  @media print {
    main:has(fl-help-sheet) {
      display: block;
      block-size: auto;
      overflow: visible;
    }
    main:has(fl-help-sheet) > fl-job-sheet,
    main:has(fl-help-sheet) > .bench > :not(fl-help-sheet) {
      display: none;
    }
  }

  @media (width >= 56.25em) {
    @container (width < 720px) {
      fl-chosen-row {
        --target: 28px;
      }
    }
  }

  @media (width < 56.25em) {
    main {
      grid-template-columns: minmax(0, 1fr);
      block-size: auto;
      overflow: visible;
    }
    /* The picture keeps its height and nothing lies over it: what is chosen and looked at stands under the slider. */
    .bench {
      grid-template-rows: 56vh auto auto auto;
      grid-template-rows: 56svh auto auto auto;
      padding-block-end: var(--s2);
      border-block-end: var(--wide) solid var(--ink);
    }
    fl-job-sheet {
      overflow: visible;
    }
    fl-chosen-row,
    fl-look-row,
    fl-stage-sides {
      justify-content: start;
      margin: 0 var(--s2) var(--s2);
    }
    .top {
      display: contents;
    }
    /* In the hand at the shop lists come first: the picture is small and goes by. */
    @media (width < 37.5em) {
      .bench {
        grid-template-rows: 38vh auto auto auto;
        grid-template-rows: 38svh auto auto auto;
      }
    }
    fl-progress-line {
      position: absolute;
      inset-block-start: var(--s4);
      inset-inline-start: var(--s4);
      z-index: 2;
    }
    fl-chosen-row {
      grid-area: 3 / 1;
    }
    fl-stage-sides {
      grid-area: 4 / 1;
    }
    fl-look-row {
      grid-area: 5 / 1;
    }
    fl-legend {
      grid-area: 6 / 1;
      justify-self: stretch;
      inline-size: auto;
      margin: 0 var(--s2);
    }
    fl-stage-rule {
      padding-inline: 0;
    }
  }
`;
