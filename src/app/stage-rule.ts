import { LitElement, css, html, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { keyCap } from './key-cap.ts';
import { ViewEvent } from './events.ts';
import { LOOK_WORDS } from './look-words.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Our pictures of the four places, on a 20 px grid. */
const PICTURES = [
  svg`<path d="M3 14.5V8a7 7 0 0 1 14 0v6.5M3 14.5h14M10 1v13.5" />`,
  svg`<path d="M1.5 15V9a7 7 0 0 1 5-6.700V15zM18.500 15V9a7 7 0 0 0-5-6.700V15zM10 5v8" />`,
  svg`<path d="M2 14c1-5 1-8 4-10 2 3 2 6 2.500 10zM12 14c.5-4 .5-7 2.500-10 3 2 3 5 3.500 10zM1 17.500h18" />`,
  svg`<path d="M1 4.500h18v11H1zM4 13V9l2-2 2 2v4zM11 13V9l2-2 2 2v4z" />`,
];
const LAST = 3;

/** The slider under the scene: whole, apart, flat, on the sheet. */
@customElement('fl-stage-rule')
export class StageRule extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        container-type: inline-size;
      }
      .track {
        position: relative;
        block-size: 28px;
        margin-inline: 12.5%;
      }
      /* The line of travel, drawn as the wide line of a cut with its four stops. */
      .track::before {
        content: '';
        position: absolute;
        inset-inline: 0;
        inset-block-start: 13px;
        border-block-start: var(--wide) solid var(--ink);
      }
      .stop {
        position: absolute;
        inset-block-start: 7px;
        inline-size: 0;
        block-size: 14px;
        border-inline-start: var(--wide) solid var(--ink);
        margin-inline-start: -1px;
      }
      .stop:nth-of-type(1) {
        inset-inline-start: 0;
      }
      .stop:nth-of-type(2) {
        inset-inline-start: 33.333%;
      }
      .stop:nth-of-type(3) {
        inset-inline-start: 66.667%;
      }
      .stop:nth-of-type(4) {
        inset-inline-start: 100%;
      }
      input {
        appearance: none;
        position: absolute;
        inset-block: 0;
        inset-inline: -13px;
        inline-size: calc(100% + 26px);
        block-size: 28px;
        margin: 0;
        background: none;
        cursor: pointer;
        touch-action: pan-y;
      }
      input::-webkit-slider-thumb {
        appearance: none;
        inline-size: 26px;
        block-size: 26px;
        border-radius: 50%;
        border: var(--wide) solid var(--ink);
        background: var(--lamp);
      }
      input::-moz-range-thumb {
        inline-size: 22px;
        block-size: 22px;
        border-radius: 50%;
        border: var(--wide) solid var(--ink);
        background: var(--lamp);
      }
      .over {
        margin: 0;
        line-height: 28px;
        text-align: center;
      }
      .names {
        display: grid;
        grid-template-columns: repeat(4, 1fr);
      }
      button {
        display: flex;
        justify-content: center;
        align-items: center;
        gap: var(--s2);
        padding-inline: 0;
        border: 0;
        background: none;
        font-size: var(--t-body);
        font-weight: 450;
        white-space: nowrap;
      }
      @media (width < 22.5em) {
        button {
          white-space: normal;
        }
      }
      button:hover:not(:disabled) {
        background: none;
        text-decoration: underline;
      }
      button[aria-pressed='true'] {
        background: none;
        color: inherit;
        font-weight: 700;
      }
      svg {
        inline-size: 20px;
        block-size: 20px;
        fill: none;
        stroke: currentcolor;
        stroke-width: 1.5;
        stroke-linejoin: round;
      }
      @container (width < 700px) {
        svg {
          display: none;
        }
      }
      @container (width < 520px) {
        button kbd[class] {
          display: none;
        }
        button {
          font-size: var(--t-small);
          white-space: normal;
        }
      }
    `,
  ];

  /** 0 whole, 1 apart, 2 flat, 3 on the sheet. */
  @property({ type: Number }) stage = 0;
  /** The farthest place that can be reached yet. */
  @property({ type: Number }) last = LAST;

  /** What hides the scene: then no place of the slider is seen. */
  @property() over: 'page' | 'sheet' | null = null;

  protected override render() {
    const near = this.over === null ? Math.round(this.stage) : -1;
    return html`${this.over === null ? this.#track(near) : html`<p class="over">${LOOK_WORDS.laidOver[this.over]}</p>`}
      <div class="names">
        ${WORDS.stages.map(
          (name, i) =>
            html`<button
              aria-pressed=${i === near}
              ?disabled=${i > this.last}
              @click=${() => this.dispatchEvent(new StageGoEvent(i))}
            >
              <svg viewBox="0 0 20 20" aria-hidden="true">${PICTURES[i]}</svg>${name}${keyCap(WORDS.stageKeys[i])}
            </button>`,
        )}
      </div>`;
  }

  #track(near: number) {
    return html`<div class="track">
      <i class="stop"></i><i class="stop"></i><i class="stop"></i><i class="stop"></i>
      <input
        data-means="stage"
        type="range"
        min="0"
        max=${LAST}
        step="0.01"
        aria-label=${WORDS.stage.slider}
        aria-valuetext=${WORDS.stages[near]}
        .value=${String(this.stage)}
        ?disabled=${this.last === 0}
        @input=${this.#slide}
        @keydown=${this.#step}
      />
    </div>`;
  }

  #slide(event: Event): void {
    const value = Math.min(this.last, (event.target as HTMLInputElement).valueAsNumber);
    this.dispatchEvent(new ViewEvent({ stage: value }));
  }

  /** Arrow keys go from stop to stop; a hundredth of the way would be no step. */
  #step(event: KeyboardEvent): void {
    const on = getComputedStyle(this).direction === 'rtl' ? -1 : 1;
    const way = { ArrowRight: on, ArrowUp: 1, ArrowLeft: -on, ArrowDown: -1 }[event.key];
    if (way === undefined) return;
    event.preventDefault();
    const next = way > 0 ? Math.floor(this.stage + 1) : Math.ceil(this.stage - 1);
    this.dispatchEvent(new StageGoEvent(Math.max(0, Math.min(this.last, next))));
  }
}

/** A stop was asked for: the pieces travel there. */
export class StageGoEvent extends Event {
  constructor(readonly stage: number) {
    super('fl-stage-go', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-stage-go': StageGoEvent;
  }
}
