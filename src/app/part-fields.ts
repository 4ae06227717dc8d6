import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatThickness } from '../base/format-length.ts';
import { foamId, type FoamId } from '../base/ids.ts';
import type { Command } from '../project/commands.ts';
import { atPlace, placeOf, turnedBy, type PartPlace } from '../project/part-place.ts';
import { changePlain, removePlain } from '../project/plain-commands.ts';
import type { PlainPart } from '../project/plain-part.ts';
import type { SculptPart } from '../project/project.ts';
import { changeSculpt, removeSculpt } from '../project/sculpt-commands.ts';
import { FIELDS_BELOW, FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { PART_WORDS } from './part-words.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { SHARED } from './styles.ts';

/** Farthest that a part may stand from the nought of the prop, mm. */
const FARTHEST_MM = 1e6;
const MOST_COPIES = 1000;

/** What every part has, whatever it is: its name, how many, its foam, where it stands. */
@customElement('fl-part-fields')
export class PartFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    FIELDS_BELOW,
    css`
      .name input {
        inline-size: 14em;
        font-size: var(--t-body);
      }
      .place {
        --field: 6em;
      }
      .also {
        font-size: var(--t-small);
      }
    `,
  ];

  @property({ attribute: false }) item: PlainPart | SculptPart | null = null;
  /** True where it is the only part of the project. */
  @property({ type: Boolean }) isLast = false;
  @state() private fault = '';

  protected override render() {
    const { item: part } = this;
    if (part === null) return nothing;
    const words = PART_WORDS.fields;
    return html`<div class="fields">
        <label class="name">
          ${words.name}
          <input
            data-means="part-name"
            type="text"
            autocomplete="off"
            .value=${part.name}
            aria-invalid=${this.fault === '' ? 'false' : 'true'}
            aria-describedby="name-fault"
            @change=${this.#rename}
          />
        </label>
        <fl-number-field
          data-means="part-quantity"
          label=${words.copies}
          .value=${part.copies}
          .least=${part.kind === 'sculpt' ? 1 : (part.mirrored?.count ?? 1)}
          .most=${MOST_COPIES}
          ?isWhole=${true}
          @fl-number=${({ value }: NumberEvent) => value !== null && this.#change({ copies: value })}
        ></fl-number-field>
        ${part.kind === 'sculpt' ? nothing : this.#foam(part)}
      </div>
      <span id="name-fault" class="small wrong" role="status">${this.fault}</span>
      ${isOfSheets(part) ? this.#foams(part) : nothing} ${isOnSculpt(part) ? nothing : this.#place(part)}
      <div class="row">
        <button ?disabled=${this.isLast} title=${this.isLast ? words.last : nothing} @click=${() => this.#remove(part)}>
          ${words.remove}
        </button>
        ${this.isLast ? html`<span class="small soft">${words.last}</span>` : nothing}
      </div>`;
  }

  #place({ transform }: Pick<PlainPart, 'transform'>) {
    const words = PART_WORDS.fields;
    const place = placeOf(transform);
    const move = (to: Partial<PartPlace>): void => this.#change({ transform: atPlace(transform, to) });
    return html`<fieldset class="place">
      <legend>${words.place}</legend>
      <div class="fields">
        ${(['x', 'y', 'z'] as const).map(
          (axis) =>
            html`<fl-length-field
              data-means="part-place"
              label=${words[axis]}
              .mm=${round(place[axis])}
              .unit=${this.unit}
              .min=${-FARTHEST_MM}
              .max=${FARTHEST_MM}
              @fl-length=${({ mm }: LengthEvent) => move({ [axis]: mm })}
            ></fl-length-field>`,
        )}
        <fl-number-field
          data-means="part-turn"
          label=${words.turn}
          unit="°"
          .value=${round(place.turnDeg)}
          .least=${-360}
          .most=${360}
          @fl-number=${({ value }: NumberEvent) => value !== null && move({ turnDeg: value })}
        ></fl-number-field>
      </div>
      <div class="row" title=${words.tipWhy}>
        ${(['x', 'y'] as const).map(
          (axis) =>
            html`<button class="plain" @click=${() => this.#change({ transform: turnedBy(transform, axis, 90) })}>
              ${words.tip[axis]}
            </button>`,
        )}
      </div>
    </fieldset>`;
  }

  /** What it is made of; where it takes several foams, the usual one. */
  #foam(part: PlainPart) {
    const [first] = part.foams;
    return html`<label>
      ${PART_WORDS.fields.foam}
      <select
        data-means="part-foam"
        @change=${(event: Event) => this.#takeFoam(part, (event.target as HTMLSelectElement).value)}
      >
        ${(this.project?.foams ?? []).map(
          ({ id, name }) => html`<option value=${id} .selected=${id === first}>${name}</option>`,
        )}
      </select>
    </label>`;
  }

  /** Parts that are made of sheets of several thicknesses. */
  #foams(part: PlainPart) {
    return html`<fieldset class="also">
      <legend>${PART_WORDS.fields.foams}</legend>
      <div class="choices">
        ${(this.project?.foams ?? []).map(
          ({ id, thicknessMm }) =>
            html`<label>
              <input
                data-means="part-foams"
                type="checkbox"
                .checked=${part.foams.includes(id)}
                ?disabled=${id === part.foams[0]}
                @change=${() => this.#turnFoam(part, id)}
              />${formatThickness(thicknessMm, this.unit)}
            </label>`,
        )}
      </div>
    </fieldset>`;
  }

  #takeFoam({ foams, kind }: PlainPart, value: string): void {
    const first = foamId(value);
    this.#change({
      foams: ['shape', 'covers', 'trim', 'strap'].includes(kind)
        ? [first]
        : [first, ...foams.filter((id) => id !== first)],
    });
  }

  #turnFoam({ foams }: PlainPart, id: FoamId): void {
    this.#change({ foams: foams.includes(id) ? foams.filter((one) => one !== id) : [...foams, id] });
  }

  #rename(event: Event): void {
    const name = (event.target as HTMLInputElement).value.trim();
    this.fault = name === '' ? PART_WORDS.fields.noName : '';
    if (name !== '') this.#change({ name }, 'rename a part');
  }

  #change(change: Partial<Pick<PlainPart, 'name' | 'copies' | 'transform' | 'foams'>>, label?: string): void {
    const { item: part } = this;
    if (part !== null)
      this.send(part.kind === 'sculpt' ? changeSculpt(part.id, change, label) : changePlain(part.id, change, label));
  }

  #remove({ kind, id }: PlainPart | SculptPart): void {
    const command: Command = kind === 'sculpt' ? removeSculpt(id) : removePlain(id);
    this.send(command);
  }
}

/** Made of sheets of several thicknesses. */
const isOfSheets = (part: PlainPart | SculptPart): part is PlainPart =>
  part.kind === 'stack' || part.kind === 'artwork' || part.kind === 'build-up' || part.kind === 'insert';

/** Lies on a sculpt, and has no place of its own. */
const isOnSculpt = ({ kind }: PlainPart | SculptPart): boolean => kind === 'covers' || kind === 'trim';

/** To a thousandth: what is left of turning is no figure. */
const round = (value: number): number => Math.round(1000 * value) / 1000;

declare global {
  interface HTMLElementTagNameMap {
    'fl-part-fields': PartFields;
  }
}
