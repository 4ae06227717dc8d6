import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatArea, formatLength } from '../base/format-length.ts';
import type { Opening, PassChoice } from '../model/girth.ts';
import { OPENING_USES, setWorn } from '../project/wear-commands.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { SHARED } from './styles.ts';
import { WEAR_STYLE } from './wear-style.ts';
import { WORDS } from './words.ts';

/** Openings named before the rest is left out: smaller ones are for sight and air. */
const MOST_OPENINGS = 8;

/** How the part goes on: what must pass, and the openings it has. */
@customElement('fl-pass-fields')
export class PassFields extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE, WEAR_STYLE];

  protected override render() {
    const words = WORDS.wear;
    const worn = this.sculptPart?.worn;
    const openings = this.bench.bodyFit?.puttingOn?.openings ?? [];
    return html`<fieldset class="stack">
      <legend>${words.pass}</legend>
      <p class="small soft">${words.passWhy}</p>
      <div class="fields">
        ${this.#field(worn ?? {}, 'girthMm', words.passGirth)}
        ${this.#field(worn ?? {}, 'breadthMm', words.passBreadth)}
      </div>
      <label class="tick">
        <input
          data-means="covers-face"
          type="checkbox"
          .checked=${worn?.coversFace === true}
          @change=${(event: Event) => this.#cover(worn ?? {}, (event.target as HTMLInputElement).checked)}
        />
        ${words.coversFace}
      </label>
      ${
        openings.length === 0
          ? nothing
          : html`<ul class="small">
              ${openings.slice(0, MOST_OPENINGS).map((opening, i) => html`<li>${this.#told(opening)} ${this.#use(worn ?? {}, opening, i)}</li>`)}
            </ul>`
      }
      ${
        worn === undefined
          ? nothing
          : html`<div class="row">
              <button class="plain" @click=${() => this.send(setWorn(null))}>${words.passNothing}</button>
            </div>`
      }
    </fieldset>`;
  }

  #cover({ coversFace: _, ...rest }: PassChoice, isOver: boolean): void {
    this.send(setWorn(isOver ? { ...rest, coversFace: true } : rest));
  }

  /** What an opening is for. */
  #use(worn: PassChoice, opening: Opening, i: number) {
    const words = WORDS.wear;
    return html`<select
      data-means="opening-use"
      aria-label=${words.useOf(i + 1)}
      @change=${(event: Event) => this.#say(worn, opening, (event.target as HTMLSelectElement).value)}
    >
      <option value="" .selected=${opening.use === null}>${words.uses.none}</option>
      ${OPENING_USES.map((use) => html`<option value=${use} .selected=${opening.use === use}>${words.uses[use]}</option>`)}
    </select>`;
  }

  #say(worn: PassChoice, { vertices }: Opening, word: string): void {
    const { sculpt } = this.bench;
    if (sculpt === null) return;
    const rim = new Set(Array.from(vertices, (v) => sculpt.fileVertex[v]));
    const others = worn.openings?.filter(({ vertex }) => !rim.has(vertex)) ?? [];
    const use = OPENING_USES.find((one) => one === word);
    // Corners that a line across faces has put on the rim have higher numbers than those of the file.
    const named = sculpt.edgeNames === undefined ? sculpt.fileVertex[vertices[0]] : Math.min(...rim);
    const own = use === undefined ? [] : [{ vertex: named, use }];
    this.send(setWorn({ ...worn, openings: [...others, ...own] }));
  }

  #told({ girthMm, breadthMm, areaMm2, acrossMm, uprightMm, narrowest, passes }: Opening): string {
    const words = WORDS.wear;
    const length = (mm: number): string => formatLength(mm, this.unit);
    return [
      words.opening(length(girthMm), length(breadthMm), formatArea(areaMm2, this.unit)),
      words.openingSize(length(acrossMm), length(uprightMm)),
      ...(narrowest === null ? [] : [words.narrows(length(narrowest.girthMm))]),
      ...(passes === null ? [] : [passes ? words.passes : words.passesNot]),
    ].join('; ');
  }

  #field(worn: PassChoice, name: 'girthMm' | 'breadthMm', label: string) {
    return html`<fl-length-field
      data-means=${`pass-${name}`}
      label=${label}
      .mm=${worn[name] ?? null}
      .unit=${this.unit}
      .min=${1}
      .max=${10_000}
      @fl-length=${({ mm }: LengthEvent) => this.send(setWorn({ ...worn, [name]: mm }))}
    ></fl-length-field>`;
  }
}
