import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Hatching } from '../model/hatching.ts';
import { KNOWN_COLOUR_KINDS, type KnownColour } from '../project/colour-kinds.ts';
import {
  addColour,
  canAddColour,
  newColour,
  removeColour,
  setBaseColour,
  setColour,
} from '../project/finish-commands.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import { PAINT_WORDS, SHADES } from './paint-words.ts';
import { swatch } from './paint-swatch.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { SHARED } from './styles.ts';
import { means } from './help/means.ts';

const MIN_PER_H = 60;

/** The maker's own paints with the figures of their labels, and which of them all else is painted in. */
@customElement('fl-paint-list')
export class PaintList extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      fieldset > legend {
        display: flex;
        color: var(--ink);
        font-weight: 600;
        align-items: center;
        gap: var(--s2);
      }
      fieldset + fieldset {
        margin-block-start: var(--s3);
      }
      input[type='color'] {
        inline-size: 5.5em;
        block-size: var(--target);
        padding: 2px;
        border: var(--narrow) solid var(--ink);
        background: none;
      }
      input[type='text'] {
        inline-size: 9em;
      }
    `,
  ];

  /** How each colour is told from others on paper, by its id. */
  @property({ attribute: false }) hatchings: Readonly<Record<string, Hatching | null>> = {};

  protected override render() {
    if (this.project === null) return nothing;
    const { colours = [], baseColour = '' } = this.project.shop ?? {};
    const words = PAINT_WORDS.colours;
    const name = this.#freshName(colours);
    return html`<details ?open=${colours.length > 0}>
      <summary>${words.heading(colours.map((colour) => colour.name))}</summary>
      <div class="stack">
        ${colours.length === 0 ? nothing : html`<p class="small soft">${words.why}</p>`}
        ${colours.map((colour) => this.#colour(colour))}
        <div class="row">
          <button
            ?disabled=${!canAddColour(colours, name)}
            @click=${() => this.send(addColour(newColour(name, SHADES[colours.length % SHADES.length])))}
          >
            ${words.add}
          </button>
        </div>
        ${
          colours.length === 0
            ? nothing
            : html`<label class="small"
                >${words.base}<br />
                <select
                  data-means="base-colour"
                  @change=${(event: Event) => this.send(setBaseColour((event.target as HTMLSelectElement).value || null))}
                >
                  <option value="" .selected=${baseColour === ''}>${words.noBase}</option>
                  ${colours.map(
                    ({ id, name: own }) => html`<option value=${id} .selected=${id === baseColour}>${own}</option>`,
                  )}
                </select>
              </label>`
        }
      </div>
    </details>`;
  }

  #freshName(colours: readonly KnownColour[]): string {
    for (let n = colours.length + 1; ; n += 1) {
      const name = PAINT_WORDS.colours.fresh(n);
      if (!colours.some((own) => own.name === name)) return name;
    }
  }

  #colour(colour: KnownColour) {
    const words = PAINT_WORDS.colours;
    const { units } = PAINT_WORDS;
    const { id, name, rgb, coats, coverageM2PerL, recoatMin, handleMin, figures, cautions } = colour;
    const kind = KNOWN_COLOUR_KINDS.find((own) => own.cautions.join() === cautions.join())?.id ?? '';
    const field = (
      label: string,
      unit: string,
      value: number,
      limits: { readonly least: number; readonly most: number; readonly isOver?: boolean; readonly isWhole?: boolean },
      put: (value: number) => Parameters<typeof setColour>[1],
    ) =>
      html`<fl-number-field
        label=${label}
        unit=${unit}
        .value=${value}
        .least=${limits.least}
        .most=${limits.most}
        ?isOver=${limits.isOver === true}
        ?isWhole=${limits.isWhole === true}
        @fl-number=${(event: NumberEvent) => event.value !== null && this.send(setColour(id, put(event.value)))}
      ></fl-number-field>`;
    return html`<fieldset>
      <legend>${swatch(rgb, this.hatchings[id] ?? null)} ${name}</legend>
      <div class="fields">
        <label
          >${words.name}
          <input
            data-means="colour-name"
            type="text"
            autocomplete="off"
            maxlength="40"
            .value=${name}
            @change=${(event: Event) => this.#rename(id, event.target as HTMLInputElement, name)}
        /></label>
        <label
          >${words.shade}
          <input
            data-means="colour-shade"
            type="color"
            .value=${rgb}
            @change=${(event: Event) => this.send(setColour(id, { rgb: (event.target as HTMLInputElement).value }))}
        /></label>
        <label
          >${words.kind}
          <select
            data-means="colour-kind"
            @change=${(event: Event) => this.#kind(id, (event.target as HTMLSelectElement).value)}
          >
            ${KNOWN_COLOUR_KINDS.map(
              (own) =>
                html`<option value=${own.id} .selected=${own.id === kind}>${words.kinds[own.id] ?? own.id}</option>`,
            )}
          </select>
        </label>
      </div>
      <details class="small">
        <summary>${words.label(coats, coverageM2PerL, figures)}</summary>
        <div class="fields">
          ${means(
            'coats',
            field(words.coats, '', coats, { least: 1, most: 50, isWhole: true }, (value) => ({ coats: value })),
          )}
          ${means(
            'coverage',
            field(words.coverage, units.m2, coverageM2PerL, { least: 0, most: 100, isOver: true }, (value) => ({
              coverageM2PerL: value,
            })),
          )}
          ${means(
            'recoat',
            field(words.recoat, units.min, recoatMin, { least: 0, most: 100_000 }, (value) => ({ recoatMin: value })),
          )}
          ${means(
            'handle',
            field(words.handle, units.h, handleMin / MIN_PER_H, { least: 0, most: 10_000 }, (value) => ({
              handleMin: value * MIN_PER_H,
            })),
          )}
        </div>
        <p class="soft">${words.figures[figures]}</p>
      </details>
      <div class="row">
        <button class="plain" aria-label=${words.removeOf(name)} @click=${() => this.send(removeColour(id))}>
          ${words.remove}
        </button>
      </div>
    </fieldset>`;
  }

  /** A name that another colour has, or none, is not taken: the field shows the one in force again. */
  #rename(id: string, input: HTMLInputElement, before: string): void {
    this.send(setColour(id, { name: input.value }));
    const after = this.project?.shop?.colours?.find((colour) => colour.id === id)?.name ?? before;
    if (input.value.trim() !== after) input.value = after;
  }

  /** The usual figures of a kind, and what can hurt with it. */
  #kind(id: string, kind: string): void {
    const found = KNOWN_COLOUR_KINDS.find((own) => own.id === kind);
    if (found === undefined) return;
    const { id: _, ...usual } = found;
    this.send(setColour(id, { ...usual, figures: 'usual' }));
  }
}
