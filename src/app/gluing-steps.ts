import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { GluingStep } from '../model/gluing.ts';
import type { ShopView } from '../worker/shop-api.ts';
import { chainIndex } from './bench-state.ts';
import './cautions.ts';
import { ChooseEvent, GluingMoveEvent } from './events.ts';
import { toldText } from './finding-text.ts';
import { isMovable, partsOfStep } from './gluing-actions.ts';
import { NO_GLUING, type GluingLook } from './gluing-look.ts';
import { EdgeScroll } from './edge-scroll.ts';
import './gluing-picture.ts';
import { GLUING_WORDS } from './gluing-words.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** The steps of gluing, batch by batch: each can be chosen, which lights it up on the bench and shows its picture, and moved. */
@customElement('fl-gluing-steps')
export class GluingSteps extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      .batch {
        padding-block: var(--s4) var(--s2);
      }
      .batch h3 {
        font-size: var(--t-small);
        font-weight: 700;
      }
      .step {
        display: grid;
        grid-template-columns: 2.2em minmax(0, 1fr);
        border-block-start: var(--narrow) solid var(--rule-soft);
      }
      .step.is-before {
        box-shadow: 0 -3px 0 var(--lamp-ink);
      }
      .step.is-after {
        box-shadow: 0 3px 0 var(--lamp-ink);
      }
      .step.is-held {
        opacity: 0.55;
      }
      .grip {
        display: grid;
        align-content: start;
        justify-items: center;
        padding-block: var(--s2);
        font-weight: 700;
        user-select: none;
      }
      .grip.is-movable {
        cursor: grab;
        touch-action: none;
      }
      .grip.is-movable::after {
        content: '⠿';
        font-weight: 400;
        line-height: 1;
        color: var(--ink-soft);
      }
      .step > button {
        inline-size: 100%;
        padding: var(--s2) 0;
        border: 0;
        background: none;
        text-align: start;
        font-weight: 500;
        line-height: 1.35;
      }
      .step > button[aria-expanded='true'] {
        background: var(--lamp);
        color: var(--on-lamp);
        padding-inline: var(--s2);
      }
      .body {
        grid-column: 2;
        padding-block: var(--s3);
      }
      .runs li + li,
      .warm li + li {
        margin-block-start: var(--s1);
      }
      .blind {
        font-weight: 700;
      }
      .refused {
        padding: var(--s3);
        border: var(--wide) solid var(--wrong);
      }
      .refused b {
        color: var(--wrong);
      }
    `,
  ];

  @property({ attribute: false }) gluing: GluingLook = NO_GLUING;
  @property({ attribute: false }) choice: Choice = NOTHING;
  /** The step that is dragged, and the one it would come before. */
  @state() private drag: { readonly step: number; readonly before: number } | null = null;

  /** The keyboard goes along with a step that was moved. */
  protected override updated(changed: PropertyValues<this>): void {
    const { choice } = this;
    const before = changed.get('choice');
    const isHere = (this.renderRoot as ShadowRoot).activeElement?.matches('.step > button') === true;
    if (!isHere || choice.kind !== 'step' || before?.kind !== 'step') return;
    this.renderRoot.querySelector<HTMLElement>(`[data-step="${choice.step}"] > button`)?.focus();
  }

  protected override render() {
    const { shop } = this.gluing;
    if (shop === null) return nothing;
    return html`<ol aria-label=${GLUING_WORDS.steps}>
      ${shop.gluing.steps.map((step) => this.#step(shop, step))}
    </ol>`;
  }

  #step(shop: ShopView, step: GluingStep) {
    const { number } = step;
    const isChosen = this.choice.kind === 'step' && this.choice.step === number;
    const light = (): void => this.point(partsOfStep(this.bench, step));
    const dark = (): void => this.point(null);
    const isLast = number === shop.gluing.steps.length;
    const { drag } = this;
    const marks = [
      drag?.step === number ? 'is-held' : '',
      drag?.before === number ? 'is-before' : '',
      isLast && drag?.before === number + 1 ? 'is-after' : '',
    ].join(' ');
    const movable = isMovable(shop, step);
    const isBlind = step.runs.some(({ reach }) => reach === 'outside');
    return html`<li>
      ${this.#batch(shop, step)}
      <div class="step ${marks}" data-step=${number} @pointerenter=${light} @pointerleave=${dark}>
        <span
          class="grip ${movable ? 'is-movable' : ''}"
          title=${movable ? GLUING_WORDS.grip : nothing}
          @pointerdown=${(event: PointerEvent) => this.#grab(event, movable ? number : null)}
          @pointermove=${this.#drag}
          @pointerup=${this.#drop}
          @pointercancel=${this.#cancel}
          >${number}</span
        >
        <button
          aria-expanded=${isChosen}
          aria-keyshortcuts=${movable ? 'Alt+ArrowUp Alt+ArrowDown' : nothing}
          @focus=${light}
          @blur=${dark}
          @keydown=${(event: KeyboardEvent) => this.#key(event, number)}
          @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'step', step: number }))}
        >
          <span class="unseen">${GLUING_WORDS.step(number)}:</span> ${toldText(shop.steps[number - 1].title, this.unit)}
          ${isBlind ? html`<span class="blind">(${GLUING_WORDS.blind})</span>` : nothing}
        </button>
        ${isChosen ? this.#body(shop, step) : nothing}
      </div>
      ${this.#refused(shop, step)}
    </li>`;
  }

  /** Told before the first of its steps. */
  #batch(shop: ShopView, { number, batch }: GluingStep) {
    if (shop.gluing.batches[batch - 1].steps[0] !== number) return nothing;
    const { title, times } = shop.batches[batch - 1];
    return html`<div class="batch">
      <h3>${toldText(title, this.unit)}</h3>
      <p class="small soft">${toldText(times, this.unit)}</p>
    </div>`;
  }

  #body(shop: ShopView, step: GluingStep) {
    const words = shop.steps[step.number - 1];
    const { picture } = this.gluing;
    return html`<div class="body stack small">
      ${
        picture?.step === step.number
          ? html`<fl-gluing-picture
              .drawn=${picture.drawn}
              .label=${GLUING_WORDS.picture(step.number)}
            ></fl-gluing-picture>`
          : html`<p class="soft" role="status">${GLUING_WORDS.drawing}</p>`
      }
      ${
        words.warm.length === 0
          ? nothing
          : html`<div class="warm">
              <b>${GLUING_WORDS.warm}</b>
              <ul>
                ${words.warm.map((text) => html`<li>${toldText(text, this.unit)}</li>`)}
              </ul>
            </div>`
      }
      ${words.painted === '' ? nothing : html`<p><b>${words.painted}</b></p>`}
      <ul class="runs">
        ${step.runs.map((run, i) => {
          const light = (): void => this.point({ seams: [chainIndex(this.bench, run.seam)] });
          const dark = (): void => this.point(partsOfStep(this.bench, step));
          return html`<li @pointerenter=${light} @pointerleave=${dark}>${toldText(words.runs[i], this.unit)}</li>`;
        })}
      </ul>
      <fl-cautions .ids=${step.cautions} label=${WORDS.cautions.step}></fl-cautions>
      ${isMovable(shop, step) ? this.#moves(step.number) : html`<p class="soft">${GLUING_WORDS.fixed}</p>`}
    </div>`;
  }

  #moves(number: number) {
    const { earlier, later, moveLabel } = GLUING_WORDS;
    return html`<div class="row">
      <button aria-label=${moveLabel('earlier', number)} @click=${() => this.#move(number, number - 1)}>
        ${earlier}
      </button>
      <button aria-label=${moveLabel('later', number)} @click=${() => this.#move(number, number + 2)}>${later}</button>
      <span class="soft">${GLUING_WORDS.keys}</span>
    </div>`;
  }

  /** Why it stays where it is, beside it. Pointing at a reason lights its seam up. */
  #refused(shop: ShopView, step: GluingStep) {
    const { refused } = this.gluing;
    if (refused === null || !step.runs.some(({ seam }) => seam === refused.seam)) return nothing;
    const isFirst = shop.gluing.steps.find(({ runs }) => runs.some(({ seam }) => seam === refused.seam)) === step;
    if (!isFirst) return nothing;
    return html`<div class="refused small stack" role="alert">
      <p><b>${GLUING_WORDS.refused(step.number)}</b></p>
      <ul>
        ${refused.why.map(({ text, where }) => {
          const light = (): void => this.point({ seams: [chainIndex(this.bench, where.seam ?? '')] });
          return html`<li @pointerenter=${light} @pointerleave=${() => this.point(null)}>
            ${toldText(GLUING_WORDS.why(text), this.unit)}
          </li>`;
        })}
      </ul>
      <button @click=${() => this.dispatchEvent(new GluingMoveEvent(step.number, null))}>${GLUING_WORDS.close}</button>
    </div>`;
  }

  #move(step: number, before: number): void {
    this.dispatchEvent(new GluingMoveEvent(step, before));
  }

  #key(event: KeyboardEvent, number: number): void {
    const way = { ArrowUp: -1, ArrowDown: 2 }[event.key];
    if (!event.altKey || way === undefined) return;
    event.preventDefault();
    this.#move(number, number + way);
  }

  #grab(event: PointerEvent, number: number | null): void {
    if (number === null || event.button !== 0) return;
    event.preventDefault();
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.drag = { step: number, before: number };
  }

  /** Where the pointer is while a step is dragged, px of the window. */
  #pointerY = 0;
  readonly #scroll = new EdgeScroll(() => this.#look());

  readonly #drag = (event: PointerEvent): void => {
    if (this.drag === null) return;
    this.#pointerY = event.clientY;
    this.#look();
    this.#scroll.follow(this, event.clientY);
  };

  /** Before which step the one in hand would come. */
  #look(): void {
    if (this.drag === null) return;
    const rows = [...this.renderRoot.querySelectorAll<HTMLElement>('.step')];
    const under = rows.findIndex((row) => {
      const { top, height } = row.getBoundingClientRect();
      return this.#pointerY < top + height / 2;
    });
    const before = under < 0 ? rows.length + 1 : under + 1;
    if (before !== this.drag.before) this.drag = { ...this.drag, before };
  }

  readonly #cancel = (): void => {
    this.drag = null;
    this.#scroll.end();
  };

  readonly #drop = (): void => {
    const { drag } = this;
    this.#cancel();
    if (drag !== null && drag.before !== drag.step && drag.before !== drag.step + 1) this.#move(drag.step, drag.before);
  };
}
