import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { VerbEvent } from './events.ts';
import { SHARED } from './styles.ts';
import { VERDICT_WORDS } from './verdict/verdict-words.ts';
import { WORDS } from './words.ts';

/** How a line of the job stands: decided, still to be decided, something is wrong, being worked out. */
export type LineMark = 'so' | 'missing' | 'wrong' | 'wait';

const BOX = svg`<rect x="2.5" y="2.5" width="15" height="15" />`;
const MARKS = {
  so: svg`${BOX}<path d="M5.5 10.5 9 14l6.5-8.5" class="stroke" />`,
  missing: BOX,
  wrong: svg`<rect x="2.5" y="2.5" width="15" height="15" class="full" /><path d="M10 5.5v6M10 13.5v1.5" class="gap" />`,
  wait: svg`${BOX}<path d="M6 10h2M9 10h2M12 10h2" class="stroke" />`,
};

/**
 * One step of the job as the printed sheet shows it: a box to tick in the margin, what the step is, the answer in large figures, then
 * what it takes to change it.
 * @slot answer the step's result, one short phrase
 * @slot everything else
 */
@customElement('fl-job-line')
export class JobLine extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        grid-template-columns: 20px minmax(0, 1fr);
        column-gap: var(--s4);
        padding-block: var(--s6);
        scroll-margin-block: var(--s4);
      }
      svg {
        inline-size: 20px;
        block-size: 20px;
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
        margin-block-start: 1px;
      }
      .stroke {
        stroke-width: 2;
      }
      .full {
        fill: var(--ink);
      }
      .gap {
        stroke: var(--paper);
        stroke-width: 2.2;
      }
      :host([mark='wrong']) .full {
        fill: var(--wrong);
        stroke: var(--wrong);
      }
      h2:focus-visible {
        outline: 0;
        text-decoration: underline;
        text-decoration-thickness: 2px;
        text-underline-offset: 4px;
      }
      h2 {
        font-size: var(--t-body);
        font-weight: 500;
        color: var(--ink-soft);
        line-height: 22px;
      }
      ::slotted([slot='answer']) {
        display: block;
        font-size: var(--t-figure);
        font-weight: 580;
        line-height: 1.2;
      }
      .standing {
        font-size: var(--t-small);
        color: var(--ink-soft);
      }
      .body {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--s4);
        margin-block-start: var(--s3);
      }
    `,
  ];

  /** How the step stands. */
  @property({ reflect: true }) mark: LineMark = 'missing';
  /** What the step is. */
  @property() heading = '';
  /** True where what is missing is asked for here, and waits for nothing else. */
  @property({ type: Boolean }) asks = false;

  /** The heading takes the focus: on the element itself a tabindex would take all controls in the line out of the tab order. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('h2')?.focus(options);
  }

  protected override render() {
    return html`
      <svg viewBox="0 0 20 20" role="img" aria-label=${WORDS.marks[this.mark]}>${MARKS[this.mark]}</svg>
      <div>
        <h2 tabindex="-1">${this.heading}</h2>
        <slot name="answer"></slot>
        ${this.#standing()}
        <div class="body"><slot></slot></div>
      </div>
    `;
  }

  /** What is missing or wrong, in one sentence with the way to what helps. */
  #standing() {
    const { missing, before, wrong, see } = VERDICT_WORDS.standing;
    const isWrong = this.mark === 'wrong';
    if (!isWrong && (this.mark !== 'missing' || this.asks)) return nothing;
    const verb = isWrong ? 'see-findings' : 'next-step';
    return html`<p class="standing">
      ${isWrong ? wrong : missing}
      <button class="plain" @click=${() => this.dispatchEvent(new VerbEvent(verb))}>${isWrong ? see : before}</button>
    </p>`;
  }
}
