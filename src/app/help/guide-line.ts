import { LitElement, css, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LengthUnit } from '../../base/format-length.ts';
import type { Project } from '../../project/project.ts';
import { VerbEvent, ViewEvent, WishEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import { FIRST_VIEW, FIRST_WISHES, type ViewState, type Wishes } from '../view-state.ts';
import { GUIDE_STEPS, doneSteps, nextStep, type GuideFacts, type GuideStep } from './guide-steps.ts';
import { GUIDE_WORDS } from './guide-words.ts';
import { lengthsIn } from './linked-text.ts';
import { SMALL_MARK } from './small-mark-style.ts';

/** The model a job is made of: another one is another job. */
const jobOf = (project: Project | null): string => project?.parts.at(0)?.source.hash ?? project?.name ?? '';

/**
 * The guided job: ten steps that the maker really does, each ticked by itself when it is done. It stands at the head of the job sheet and
 * blocks nothing; it can be left, and taken up at any step.
 */
@customElement('fl-guide-line')
export class GuideLine extends LitElement {
  static override styles = [
    SHARED,
    css`
      /* As wide as the sheet: what is scrolled under it is not seen beside it. */
      :host {
        display: block;
        margin-inline: calc(-1 * var(--edge, 0px));
        padding: var(--s3) var(--edge, 0px);
        background: var(--paper);
      }
      :host([data-open]) {
        position: sticky;
        z-index: 2;
        inset-block-start: 0;
        border-block-end: var(--wide) solid var(--ink);
        /* Over the fold line of what follows. */
        margin-block-end: calc(-1 * var(--narrow));
      }
      .offer {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s2) var(--s3);
      }
      .offer p {
        flex: 1 1 16em;
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 0 var(--s3);
        font-size: var(--t-small);
      }
      ol {
        display: flex;
        flex-wrap: wrap;
        margin-inline-start: calc(-1 * var(--s2));
      }
      ol button {
        ${SMALL_MARK}
      }
      ol svg {
        inline-size: 20px;
        block-size: 20px;
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      ol svg path {
        stroke-width: 2;
      }
      ol [aria-current] svg {
        fill: var(--lamp);
      }
      ol [aria-current] svg path {
        stroke: var(--on-lamp);
      }
      h2 {
        font-size: var(--t-large);
        font-weight: 640;
        line-height: 1.25;
      }
      dl {
        display: grid;
        gap: var(--s1);
        margin-block: var(--s1) var(--s2);
        font-size: var(--t-small);
      }
      dt,
      dd {
        display: inline;
      }
      dt {
        font-weight: 640;
      }
      @media (hover: none) {
        .by-key {
          display: none;
        }
      }
      @media (width < 56.25em) {
        .why {
          display: none;
        }
        :host([data-open]) {
          max-block-size: 45vh;
          overflow-y: auto;
        }
      }
    `,
  ];

  @property({ attribute: false }) project: Project | null = null;
  @property({ attribute: false }) view: ViewState = FIRST_VIEW;
  @property({ attribute: false }) wishes: Wishes = FIRST_WISHES;
  @property() unit: LengthUnit = 'mm';
  /** Number of the step in hand; null before it is known, and when all are done. */
  @state() private at: number | null = null;
  /** What is told to those who hear the window. */
  @state() private told = '';
  /** How all was when the job was begun, or taken up again. */
  #then: GuideFacts | null = null;
  /** What is done now, where that is more than is kept. */
  #ticked: readonly string[] | null = null;

  get #facts(): GuideFacts {
    return { project: this.project, view: this.view, wishes: this.wishes };
  }
  get #done(): readonly string[] {
    return this.wishes.guide?.done ?? [];
  }
  get #isOpen(): boolean {
    return this.wishes.guide?.isOpen === true;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.toggleAttribute('data-open', this.#isOpen);
    if (!this.#isOpen) {
      this.#then = null;
      return;
    }
    if (this.project !== null && (this.#then === null || jobOf(this.#then.project) !== jobOf(this.project)))
      this.#then = this.#facts;
    const before = changed.get('wishes')?.guide;
    if (this.at === null || before?.isOpen === false) this.at = nextStep(this.#done, -1);
    if (this.#then !== null) this.#tick(this.#then);
  }

  protected override updated(): void {
    const next = this.#isOpen && this.at !== null ? GUIDE_STEPS[this.at].at : '';
    if (this.view.help.next !== next) this.dispatchEvent(new ViewEvent({ help: { ...this.view.help, next } }));
    else if (this.#ticked !== null) this.#wish(true, this.#ticked);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#then = null;
  }

  /** Ticks what the maker has done since, and goes on where it was the step in hand. */
  #tick(then: GuideFacts): void {
    const done = doneSteps(this.#done, this.#facts, then);
    this.#ticked = done.length === this.#done.length ? null : done;
    const { at } = this;
    if (this.#ticked === null || at === null || !done.includes(GUIDE_STEPS[at].name)) return;
    const next = nextStep(done, at);
    const title = (i: number): string => GUIDE_WORDS.steps[GUIDE_STEPS[i].name].title;
    this.told = next === null ? GUIDE_WORDS.finished : GUIDE_WORDS.spoken(title(at), title(next));
    this.at = next;
  }

  protected override render() {
    const words = GUIDE_WORDS;
    if (!this.#isOpen)
      return html`<div class="offer">
        <p>${words.offer}</p>
        <div class="row">
          <button @click=${() => this.#wish(true)}>${this.#done.length === 0 ? words.begin : words.takeUp}</button>
          <button class="plain" @click=${() => this.#wish(false)}>${words.notNow}</button>
        </div>
      </div>`;
    const { at } = this;
    return html`<div class="head">
        <span>${words.heading}</span><span class="soft">${words.progress(this.#done.length, GUIDE_STEPS.length)}</span>
      </div>
      <ol>
        ${GUIDE_STEPS.map((step, i) => this.#box(step, i))}
      </ol>
      ${at === null ? this.#finished() : this.#step(GUIDE_STEPS[at], at)}
      <p class="unseen" aria-live="polite">${this.told}</p>`;
  }

  #box({ name }: GuideStep, i: number) {
    const isDone = this.#done.includes(name);
    const { title } = GUIDE_WORDS.steps[name];
    const label = isDone ? GUIDE_WORDS.tickedStep(i + 1, title) : GUIDE_WORDS.step(i + 1, GUIDE_STEPS.length, title);
    return html`<li>
      <button
        aria-label=${label}
        title=${title}
        aria-current=${i === this.at ? 'step' : nothing}
        @click=${() => (this.at = i)}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          ${svg`<rect x="2.5" y="2.5" width="15" height="15"/>`}${isDone ? svg`<path d="M5.5 10.5 9 14l6.5-8.5"/>` : nothing}
        </svg>
      </button>
    </li>`;
  }

  #step({ name, at }: GuideStep, i: number) {
    const words = GUIDE_WORDS;
    const { title, why, mouse, keys } = words.steps[name];
    const following = nextStep([...this.#done, name], i);
    return html`<h2>${i + 1}. ${title}</h2>
      <p class="small why">${lengthsIn(why, this.unit)}</p>
      <dl>
        <div>
          <dt>${words.mouse}</dt>
          <dd>${mouse}</dd>
        </div>
        <div class="by-key">
          <dt>${words.keys}</dt>
          <dd>${keys}</dd>
        </div>
      </dl>
      <div class="row">
        <button class="next" @click=${() => this.#show(at)}>${words.show}</button>
        ${
          following === null || this.#done.includes(name)
            ? nothing
            : html`<button class="plain" @click=${() => (this.at = following)}>${words.on}</button>`
        }
        <button class="plain" @click=${() => this.#wish(false)}>${words.leave}</button>
      </div>`;
  }

  #finished() {
    const words = GUIDE_WORDS;
    const again = (): void => {
      this.#then = null;
      this.#wish(true, []);
    };
    return html`<p>${words.finished}</p>
      <div class="row">
        <button class="next" @click=${() => this.#wish(false)}>${words.close}</button>
        <button class="plain" @click=${again}>${words.again}</button>
      </div>`;
  }

  #show(at: string): void {
    this.dispatchEvent(new VerbEvent(at === 'stage' ? 'show-stage' : `go-${at}`));
  }

  #wish(isOpen: boolean, done = this.#done): void {
    this.dispatchEvent(new WishEvent({ guide: { isOpen, done } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-guide-line': GuideLine;
  }
}
