import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LengthUnit } from '../base/format-length.ts';
import { spokenName } from '../base/spoken-name.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { PartsAsking, ShapeOffer, ToldOfSize, TriedShape } from '../worker/parts-api.ts';
import { shapeText } from './data-words.ts';
import { findingText } from './finding-text.ts';
import { PART_WORDS } from './part-words.ts';
import './shape-figures.ts';
import './shape-picker.ts';
import type { ShapeNameEvent } from './shape-picker.ts';
import './shape-picture.ts';
import { fieldKeeps, isFiner, sizeAsTyped, usualText } from './shape-sizes.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** A shape and its sizes as typed, each of which can be read. */
export class ShapeEvent extends Event {
  constructor(
    readonly shape: string,
    readonly sizes: Readonly<Record<string, string>>,
    /** What it comes to; without pieces where the sizes do not go together. */
    readonly tried: TriedShape,
  ) {
    super('fl-shape', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-shape': ShapeEvent;
  }
}

type Sizes = Readonly<Record<string, string>>;

/** A shape by its name and sizes. What it comes to is drawn while one types; what was typed is told when a field is left, or by Enter. */
@customElement('fl-shape-form')
export class ShapeForm extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--s3);
      }
      .size {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 9.5em;
        gap: 0 var(--s3);
        align-items: center;
        padding-block: var(--s1);
        border-block-start: var(--narrow) solid var(--rule-soft);
      }
      .size label {
        font-size: var(--t-body);
      }
      .size input,
      .size select {
        inline-size: 100%;
        font-size: var(--t-body);
        border-block-end-width: var(--narrow);
      }
      .size .means,
      .size .told {
        grid-column: 1 / -1;
        line-height: 1.3;
      }
      [aria-invalid='true'] {
        border-block-end-color: var(--wrong);
      }
      .told b,
      .wrong {
        color: var(--wrong);
      }
      .picked {
        justify-content: space-between;
      }
      .picked b {
        font-size: var(--t-large);
      }
    `,
  ];

  /** Who knows the shapes; null before the window is ready. */
  @property({ attribute: false }) asking: PartsAsking | null = null;
  @property() shape = '';
  /** Sizes in force as they were typed; those that are left out are as usual. */
  @property({ attribute: false }) sizes: Sizes = {};
  @property({ attribute: false }) foam: FoamSheet | null = null;
  @property() unit: LengthUnit = 'mm';
  /** True where sizes that do not go together leave the project as it is. */
  @property({ type: Boolean }) isKept = false;
  @state() private offers: readonly ShapeOffer[] = [];
  @state() private typed: Sizes = {};
  @state() private tried: TriedShape | null = null;
  @state() private isTrying = false;
  /** What went together last: it stays in sight, pale, while what is typed does not. */
  #drawn: TriedShape['pieces'] = [];
  @state() private isPicking = false;
  #turn = 0;
  #isAsked = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('sizes') || changed.has('shape')) this.typed = this.sizes;
    if (changed.has('shape')) this.#drawn = [];
    if (this.tried !== null && this.tried.pieces.length > 0) this.#drawn = this.tried.pieces;
    if (this.asking !== null && !this.#isAsked) {
      this.#isAsked = true;
      void this.asking.shapes().then((offers) => (this.offers = offers));
    }
    if (['sizes', 'shape', 'foam', 'asking'].some((name) => changed.has(name as keyof ShapeForm))) void this.#try();
  }

  protected override render() {
    const words = PART_WORDS.shapes;
    const offer = this.offers.find(({ name }) => name === this.shape);
    if (offer === undefined) return html`<p class="small soft" role="status">${words.trying}</p>`;
    const finer = offer.sizes.filter(isFiner);
    return html`<div class="row picked">
        <b>${shapeText(offer.name)}</b>
        <button class="plain" aria-expanded=${this.isPicking} @click=${this.#turnPicking}>
          ${this.isPicking ? words.close : words.other}
        </button>
      </div>
      ${
        this.isPicking
          ? html`<fl-shape-picker
              .offers=${this.offers}
              .shape=${this.shape}
              @fl-shape-name=${this.#pick}
            ></fl-shape-picker>`
          : nothing
      }
      <p class="small soft">${offer.says}</p>
      ${this.#picture()}
      <div role="group" aria-label=${words.sizes}>
        ${offer.sizes.filter((size) => !isFiner(size)).map((size) => this.#size(size))}
      </div>
      ${
        finer.length === 0
          ? nothing
          : html`<details ?open=${finer.some(({ name }) => this.typed[name] !== undefined)}>
              <summary>${words.finer}</summary>
              ${finer.map((size) => this.#size(size))}
            </details>`
      }
      <fl-shape-figures .figures=${this.tried?.figures ?? []} .unit=${this.unit}></fl-shape-figures>`;
  }

  #picture() {
    const words = PART_WORDS.shapes;
    const { tried } = this;
    if (tried === null) return html`<p class="small soft" role="status">${words.trying}</p>`;
    const isWhole = tried.pieces.length > 0;
    return html`${
        this.#drawn.length === 0
          ? nothing
          : html`<fl-shape-picture
              .pieces=${this.#drawn}
              .unit=${this.unit}
              .stale=${this.isTrying || !isWhole}
            ></fl-shape-picture>`
      }
      ${isWhole ? nothing : html`<p class="small soft">${words.cannot}${this.isKept ? html` ${words.kept}` : nothing}</p>`}
      <div role="status">${this.#told(null).map((one) => this.#sentence(one))}</div>`;
  }

  #size(size: ShapeOffer['sizes'][number]) {
    const words = PART_WORDS.shapes;
    const { name, means, kind, choices = [] } = size;
    const told = this.#told(name);
    const text = this.typed[name];
    const usual = usualText(size, this.foam);
    const isWrong = told.some(({ severity }) => severity === 'error');
    const described = `means-${name} told-${name}`;
    const field =
      kind === 'choice'
        ? html`<select
            data-means="shape-choice"
            id=${name}
            aria-describedby=${described}
            @change=${(event: Event) => this.#commit(event, size)}
          >
            ${choices.map(
              (word) =>
                html`<option value=${word} .selected=${word === (text ?? size.default)}>${spokenName(word)}</option>`,
            )}
          </select>`
        : html`<input
            data-means="shape-size"
            id=${name}
            type="text"
            autocomplete="off"
            spellcheck="false"
            .value=${text ?? usual}
            aria-invalid=${isWrong ? 'true' : 'false'}
            aria-describedby=${described}
            @input=${(event: Event) => this.#type(event, size)}
            @change=${(event: Event) => this.#commit(event, size)}
          />`;
    return html`<div class="size">
      <label for=${name}>${words.labels[name] ?? spokenName(name)}</label>
      ${field}
      <span id="means-${name}" class="means small soft">${means}${fieldKeeps(size, text, usual)}</span>
      <span id="told-${name}" class="told small" role="status">${told.map((one) => this.#sentence(one))}</span>
    </div>`;
  }

  #sentence(told: ToldOfSize) {
    return html`<p class="small ${told.severity === 'error' ? 'told' : ''}">
      <b>${WORDS.findings.severity[told.severity]}:</b> ${findingText(told, this.unit)}
    </p>`;
  }

  /** What is said beside a size; null: what is about none of those that are shown. */
  #told(size: string | null): readonly ToldOfSize[] {
    return (this.tried?.told ?? []).filter((one) => one.size === size);
  }

  /** Drawn, and nothing else. */
  #type(event: Event, size: ShapeOffer['sizes'][number]): void {
    this.typed = sizeAsTyped(this.typed, size, (event.target as HTMLInputElement).value, this.unit, this.foam);
    void this.#try();
  }

  async #commit(event: Event, size: ShapeOffer['sizes'][number]): Promise<void> {
    const field = event.target as HTMLInputElement | HTMLSelectElement;
    const typed = sizeAsTyped(this.typed, size, field.value, this.unit, this.foam);
    this.typed = typed;
    const tried = await this.#try();
    if (tried !== null && typed === this.typed) this.dispatchEvent(new ShapeEvent(this.shape, typed, tried));
  }

  /** @returns null where something newer was asked for meanwhile. */
  async #try(): Promise<TriedShape | null> {
    const { asking, foam, shape, typed } = this;
    if (asking === null || foam === null || shape === '') return null;
    const turn = ++this.#turn;
    this.isTrying = true;
    const { thicknessMm, neutralFraction } = foam;
    const tried = await asking.tryShape({ shape, sizes: typed, foam: { thicknessMm, neutralFraction } });
    if (turn !== this.#turn) return null;
    this.isTrying = false;
    this.tried = tried;
    return tried;
  }

  #turnPicking(): void {
    this.isPicking = !this.isPicking;
    if (this.isPicking) void this.updateComplete.then(() => this.renderRoot.querySelector('fl-shape-picker')?.focus());
  }

  /** Another shape begins with its usual sizes. */
  async #pick({ shape }: ShapeNameEvent): Promise<void> {
    [this.shape, this.sizes, this.tried] = [shape, {}, null];
    await this.updateComplete;
    const tried = await this.#try();
    if (tried !== null) this.dispatchEvent(new ShapeEvent(shape, {}, tried));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-shape-form': ShapeForm;
  }
}
