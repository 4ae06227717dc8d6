import { css } from 'lit';

/**
 * Sizes at the bench are shares of the screen's shorter side, for that is what a tablet's millimetres go by, not its pixels. A 10-inch tablet is
 * about 156 mm across its shorter side, 768 px.
 *
 * `--bench-far`, what to do and how many: 9.4 %, a capital of 9.8 mm, which is 17 minutes of arc at 2 m. ISO 9241-303 asks for 16 at least.
 * `--bench-near`, sentences: half of it, the same angle at 1 m, for who stands at the bench.
 * `--bench-target`: 12.5 %, 19.5 mm, for MIL-STD-1472E (5.4.3.1.3.3) asks for keys of 19 mm under mittens; and 64 px at least, 13 mm, on what is
 * smaller than a tablet.
 */
export const AT_BENCH_STYLE = css`
  :host {
    --bench-far: max(1.9rem, 9.4vmin);
    --bench-near: max(1.1rem, 4.7vmin);
    --bench-target: max(64px, 12.5vmin);
    --edge: max(var(--s3), 2vmin);
    position: fixed;
    inset: 0;
    z-index: 10;
    display: grid;
    grid-template-rows: auto auto minmax(0, 1fr) auto;
    background: var(--paper);
    overscroll-behavior: contain;
  }
  :host([hidden]) {
    display: none;
  }
  button {
    min-block-size: 64px;
    min-inline-size: 64px;
    touch-action: manipulation;
  }
  header {
    display: flex;
    gap: var(--s2);
    align-items: stretch;
    padding: var(--s2) var(--edge) 0;
  }
  nav {
    display: flex;
    flex: 1;
    gap: var(--s1);
    justify-content: end;
    min-inline-size: 0;
  }
  nav button {
    flex: 0 1 8.5em;
    display: grid;
    align-content: center;
    min-inline-size: 64px;
    padding: var(--s1);
    border-color: transparent;
    background: none;
    text-align: center;
    overflow-wrap: anywhere;
    hyphens: auto;
  }
  nav button[aria-current] {
    background: var(--lamp);
    color: var(--on-lamp);
  }
  nav .share {
    font-weight: 450;
  }
  .here {
    flex: 1;
    align-self: center;
    text-align: end;
    font-weight: 600;
  }
  .bar {
    display: grid;
    gap: var(--s1);
    padding: var(--s2) var(--edge);
  }
  progress {
    appearance: none;
    display: block;
    inline-size: 100%;
    block-size: 14px;
    border: var(--wide) solid var(--ink);
    background: var(--paper-high);
  }
  progress::-webkit-progress-bar {
    background: var(--paper-high);
  }
  progress::-webkit-progress-value {
    background: var(--ink);
  }
  progress::-moz-progress-bar {
    background: var(--ink);
  }
  .told {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s2) var(--s4);
    align-items: center;
  }
  fl-window-line {
    --target: 64px;
    --t-small: max(1rem, 0.79 * var(--bench-near));
    margin-block-end: 0;
  }
  .told p {
    font-weight: 600;
    color: var(--wrong);
  }
  .work {
    display: grid;
    min-block-size: 0;
    overflow-y: auto;
    overscroll-behavior: contain;
    touch-action: pan-y pinch-zoom;
    padding: var(--s3) var(--edge);
    border-block: var(--narrow) solid var(--rule);
    container-type: size;
    /* A shade at the foot says that there is more below; what scrolls along covers it at the end. */
    background:
      linear-gradient(var(--paper), var(--paper)) bottom / 100% 32px no-repeat local,
      linear-gradient(to top, color-mix(in srgb, var(--ink) 35%, transparent), transparent) bottom / 100% 20px no-repeat
        scroll;
  }
  /* A line at its head in place of a frame round all that there is. */
  .work:focus-visible {
    outline: 0;
    border-block-start: 4px solid var(--ink);
  }
  fl-work-line {
    align-items: stretch;
  }
  .end {
    place-self: center;
    display: grid;
    gap: var(--s6);
    max-inline-size: 44ch;
    font-size: var(--bench-near);
  }
  .end h1 {
    font-size: var(--bench-far);
    line-height: 1.05;
  }
  .end fl-cautions {
    --t-small: 1em;
  }
  .foot {
    display: grid;
    grid-template-columns: minmax(min-content, 1fr) minmax(0, 2fr) minmax(min-content, 1fr);
    gap: var(--s3);
    padding: var(--s3) var(--edge);
  }
  .foot button {
    min-block-size: var(--bench-target);
    padding-inline: var(--s2);
    font-size: var(--bench-near);
    overflow-wrap: break-word;
    hyphens: auto;
    border-width: var(--wide);
  }
  .foot .tick {
    font-size: calc(1.3 * var(--bench-near));
    font-weight: 700;
  }
  .hint {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s4);
    padding: 0 var(--edge) var(--s2);
    font-size: var(--t-small);
    color: var(--ink-soft);
  }
  @media (width < 700px) {
    nav {
      display: none;
    }
    .hint .keys {
      display: none;
    }
  }
  @media (width >= 700px) {
    .here {
      display: none;
    }
  }
  @media (pointer: coarse) {
    .hint .keys {
      display: none;
    }
  }
  /* Low and broad: buttons stand beside the work, one over the other. */
  @media (height < 560px) {
    .hint,
    nav {
      display: none;
    }
    .here {
      display: block;
    }
    .work {
      padding-block: var(--s2);
    }
  }
  @media (height < 560px) and (orientation: landscape) {
    :host {
      grid-template: auto auto minmax(0, 1fr) / minmax(0, 1fr) 11rem;
    }
    header,
    .bar {
      grid-column: 1 / -1;
    }
    .work {
      grid-area: 3 / 1;
    }
    .side {
      grid-area: 3 / 2;
      display: grid;
      min-block-size: 0;
    }
    .foot {
      grid-template: 1fr 1.4fr 1fr / minmax(0, 1fr);
      gap: var(--s2);
      padding: var(--s2);
    }
  }
  @media (forced-colors: active) {
    nav button[aria-current],
    .foot .next {
      border: 4px solid Highlight;
    }
    progress::-webkit-progress-value {
      background: Highlight;
    }
    progress::-moz-progress-bar {
      background: Highlight;
    }
  }
`;
