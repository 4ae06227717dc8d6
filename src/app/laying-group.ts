import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatFine, formatNumber, formatPercent } from '../base/format-length.ts';
import type { FlattenWishes } from '../model/flatten-settings.ts';
import { setFlattenWishes } from '../project/commands.ts';
import type { SculptPart } from '../project/project.ts';
import { WISH_LIMITS } from '../project/wish-limits.ts';
import { fitFigures, type FitFigures } from './fit-figures.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Dearest squash on the slider; a job that came with dearer squash has it longer. */
const DEAREST_SQUASH = 10;

/** What is dear and what is cheap when pieces are laid flat, and what the last change of it did to the figures. */
@customElement('fl-laying-group')
export class LayingGroup extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      .slider {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--s3);
        align-items: center;
      }
      .slider > label {
        font-size: var(--t-body);
      }
      output {
        font-size: var(--t-small);
        font-weight: 600;
      }
      input[type='range'] {
        grid-column: 1 / -1;
        accent-color: var(--ink);
        inline-size: 100%;
        min-block-size: 28px;
        margin: 0;
      }
      .slider p {
        grid-column: 1 / -1;
      }
      .switch label {
        display: flex;
        align-items: center;
        gap: var(--s2);
        min-block-size: var(--target);
        cursor: pointer;
        font-size: var(--t-body);
      }
      .stack {
        padding-block-end: var(--s2);
      }
    `,
  ];

  /** True while the pieces are worked out anew: the figures are then from before the change. */
  @property({ type: Boolean }) isStale = false;
  /** Figures before the last change of these wishes, or null before any. */
  @state() private earlier: FitFigures | null = null;
  /** Step and price as the sliders show them while they are moved. */
  @state() private moved: Partial<Pick<FlattenWishes, 'seamPrice' | 'squashPrice'>> = {};
  #part: SculptPart | null = null;
  /** The update that was on show when the wishes changed: its figures are not yet theirs. */
  #updateThen = -1;

  protected override willUpdate(changed: PropertyValues<this>): void {
    const part = this.sculptPart;
    const last = this.#part;
    if (part === last) return;
    this.#part = part;
    const bench = changed.get('bench') ?? this.bench;
    // Anything else that changes makes figures of before worthless.
    const isWish = part !== null && last !== null && differsInWishesAlone(part, last);
    // While pieces still settle, the figures of before the change under way stay.
    if (!isWish) this.earlier = null;
    else if (bench.pieces?.isFinal !== false) this.earlier = fitFigures(bench);
    this.#updateThen = isWish ? bench.update : -1;
    this.moved = {};
  }

  protected override render() {
    const wishes = this.sculptPart?.flatten;
    if (wishes === undefined) return nothing;
    return html`<details>
      <summary>${WORDS.forming.laying.summary}</summary>
      <div class="stack">
        ${this.#seams({ ...wishes, ...this.moved })} ${this.#squash({ ...wishes, ...this.moved })}
        ${this.#switch('evenOut', wishes)} ${this.#switch('keepApart', wishes)} ${this.#price()}
      </div>
    </details>`;
  }

  #seams({ seamPrice }: FlattenWishes) {
    const { seams, steps, step, seamsWhy } = WORDS.forming.laying;
    const at = nearestStep(seamPrice);
    const text = step(steps[at].name, seamPrice);
    return html`<div class="slider">
      <label for="seams">${seams}</label>
      <output for="seams">${text}</output>
      <input
        data-means="hold-seams"
        id="seams"
        type="range"
        min="0"
        max=${steps.length - 1}
        step="1"
        .value=${String(at)}
        aria-valuetext=${text}
        aria-describedby="seams-why"
        @input=${(event: Event) => (this.moved = { ...this.moved, seamPrice: steps[valueOf(event)].price })}
        @change=${(event: Event) => this.send(setFlattenWishes({ seamPrice: steps[valueOf(event)].price }))}
      />
      <p id="seams-why" class="small soft">${seamsWhy}</p>
    </div>`;
  }

  #squash({ squashPrice }: FlattenWishes) {
    const { squash, times, squashWhy } = WORDS.forming.laying;
    const text = times(formatNumber(squashPrice, Number.isInteger(squashPrice) ? 0 : 1));
    return html`<div class="slider">
      <label for="squash">${squash}</label>
      <output for="squash">${text}</output>
      <input
        data-means="squash-price"
        id="squash"
        type="range"
        min=${WISH_LIMITS.squashPrice.least}
        max=${Math.max(DEAREST_SQUASH, squashPrice)}
        step="1"
        .value=${String(squashPrice)}
        aria-valuetext=${text}
        aria-describedby="squash-why"
        @input=${(event: Event) => (this.moved = { ...this.moved, squashPrice: valueOf(event) })}
        @change=${(event: Event) => this.send(setFlattenWishes({ squashPrice: valueOf(event) }))}
      />
      <p id="squash-why" class="small soft">${squashWhy}</p>
    </div>`;
  }

  #switch(name: 'evenOut' | 'keepApart', wishes: FlattenWishes) {
    const { laying } = WORDS.forming;
    const take = (event: Event): void =>
      this.send(setFlattenWishes({ [name]: (event.target as HTMLInputElement).checked }));
    return html`<div class="switch">
      <label>
        <input
          data-means=${`laying-${name}`}
          type="checkbox"
          .checked=${wishes[name]}
          aria-describedby="${name}-why"
          @change=${take}
        />
        ${laying[name]}
      </label>
      <p id="${name}-why" class="small soft">${laying[`${name}Why`]}</p>
    </div>`;
  }

  /** The figures before the last change beside those now; only those now while nothing was changed. */
  #price() {
    const { laying } = WORDS.forming;
    const now = fitFigures(this.bench);
    if (now === null) return nothing;
    const before = this.earlier;
    const isPending =
      before !== null &&
      (this.isStale || this.bench.update === this.#updateThen || this.bench.pieces?.isFinal === false);
    const shown = (name: keyof FitFigures, figures: FitFigures): string =>
      name === 'seams' ? formatFine(figures.seams, this.unit) : formatPercent(figures[name]);
    return html`<table>
      <caption class="unseen">
        ${laying.price}
      </caption>
      <thead>
        <tr>
          <td></td>
          ${before === null ? nothing : html`<th scope="col" class="number">${laying.before}</th>`}
          <th scope="col" class="number">${laying.now}</th>
        </tr>
      </thead>
      <tbody>
        ${(['stretch', 'squash', 'seams'] as const).map(
          (name) =>
            html`<tr>
              <th scope="row">${laying.figures[name]}</th>
              ${before === null ? nothing : html`<td class="number">${shown(name, before)}</td>`}
              <td class="number">${isPending ? laying.pending : shown(name, now)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

/** What is wished of laying flat; names and numbers of pieces change no figure. */
const WISHES: readonly string[] = ['flatten', 'regions', 'edgeWishes', 'pieceSettings'];

const differsInWishesAlone = (part: SculptPart, last: SculptPart): boolean =>
  (Object.keys(part) as (keyof SculptPart)[]).every((name) => WISHES.includes(name) || part[name] === last[name]);

const valueOf = (event: Event): number => (event.target as HTMLInputElement).valueAsNumber;

/** The step whose price is nearest, as makers feel it: by how many times it is more or less. */
function nearestStep(price: number): number {
  const feel = (p: number): number => Math.log(1 + p);
  const away = WORDS.forming.laying.steps.map((step) => Math.abs(feel(step.price) - feel(price)));
  return away.indexOf(Math.min(...away));
}
