import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { HistoryStep, LeftBehind, Trail } from '../../project/history.ts';
import { whenSaid } from '../files/when.ts';
import { FOLDED_LIST_STYLE } from '../list-style.ts';
import { SHARED } from '../styles.ts';
import { WalkEvent } from './history-events.ts';
import { HISTORY_WORDS } from './history-words.ts';
import { stepSaid } from './step-said.ts';

/** Way of the arrow keys through the list; Infinity to its end. */
const WAYS: Readonly<Record<string, number>> = { ArrowUp: -1, ArrowDown: 1, Home: -Infinity, End: Infinity };

/** The steps of this visit: the present one marked, each a way to walk there. */
@customElement('fl-step-list')
export class StepList extends LitElement {
  static override styles = [
    SHARED,
    FOLDED_LIST_STYLE,
    css`
      .steps {
        max-block-size: 22rem;
        overflow-y: auto;
        border-block: var(--narrow) solid var(--rule-soft);
      }
      button.place {
        display: grid;
        grid-template-columns: 1.2em minmax(4.5em, auto) minmax(0, 1fr) auto;
        gap: var(--s2);
        align-items: baseline;
        align-content: center;
        min-block-size: var(--target);
        padding-inline: var(--s1);
        outline-offset: -3px;
        overflow-wrap: anywhere;
      }
      button.place:hover:not(:disabled) {
        background: var(--paper-low);
      }
      time {
        color: var(--ink-soft);
      }
      button[aria-current] {
        font-weight: 700;
        background: color-mix(in srgb, var(--lamp) 38%, transparent);
      }
      .undone .what {
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) trail: Trail | null = null;
  @query('details') private details!: HTMLDetailsElement;

  /** Opens the list and puts the keyboard at the present step. */
  override focus(options?: FocusOptions): void {
    this.details.open = true;
    this.#here?.focus(options);
  }

  protected override updated(): void {
    // Who walks by keys stays on the present step.
    if (this.renderRoot.querySelector('.line button:focus') !== null) this.#here?.focus();
    this.#here?.scrollIntoView({ block: 'nearest' });
  }

  get #here(): HTMLElement | null {
    return this.renderRoot.querySelector('button[aria-current]');
  }

  protected override render() {
    const { trail } = this;
    const { steps: words } = HISTORY_WORDS;
    if (trail === null) return nothing;
    return html`<details>
      <summary>${words.summary}</summary>
      <div class="stack">
        <p class="soft">${words.why}</p>
        ${trail.isCutShort ? html`<p class="soft">${words.cutShort}</p>` : nothing}
        <ol class="steps line" aria-label=${words.label} @keydown=${this.#onKey}>
          ${trail.steps.map((step, i) => this.#step(step, i, trail.at))}
        </ol>
        ${trail.left.length === 0 ? nothing : html`<p class="soft">${words.leftWhy}</p>`}
        ${trail.left.map((left) => this.#left(left))}
      </div>
    </details>`;
  }

  /** One stop of the Tab key in all: the arrow keys walk from there. */
  #step(step: HistoryStep, i: number, at: number) {
    const { here, undone } = HISTORY_WORDS.steps;
    const mark = i === at ? here : i > at ? undone : '';
    return html`<li class=${i > at ? 'undone' : ''}>${this.#button(step, mark, i === at, i === at ? 0 : -1)}</li>`;
  }

  #left({ after, steps }: LeftBehind) {
    const { left, leftLater } = HISTORY_WORDS.steps;
    return html`<section>
      <h3>${after === null ? leftLater : left(stepSaid(after.label))}</h3>
      <ol class="steps">
        ${steps.map((step) => html`<li>${this.#button(step, '', false, 0)}</li>`)}
      </ol>
    </section>`;
  }

  #button({ id, label, atMs }: HistoryStep, mark: string, isHere: boolean, tab: number) {
    return html`<button
      class="place"
      tabindex=${tab}
      aria-current=${isHere ? 'step' : nothing}
      @click=${() => this.dispatchEvent(new WalkEvent(id))}
    >
      <span aria-hidden="true">${isHere ? '›' : ''}</span><time>${whenSaid(atMs)}</time
      ><span class="what">${stepSaid(label)}</span><span>${mark}</span>
    </button>`;
  }

  #onKey(event: KeyboardEvent): void {
    const way = WAYS[event.key];
    const { trail } = this;
    if (way === undefined || trail === null) return;
    event.preventDefault();
    const to = Math.min(trail.steps.length - 1, Math.max(0, trail.at + way));
    if (to !== trail.at) this.dispatchEvent(new WalkEvent(trail.steps[to].id));
  }
}
