import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatArea, formatLength } from '../base/format-length.ts';
import type { Opening, PassChoice } from '../model/girth.ts';
import { setWorn } from '../project/wear-commands.ts';
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
      ${
        openings.length === 0
          ? nothing
          : html`<ul class="small">
              ${openings.slice(0, MOST_OPENINGS).map((opening) => html`<li>${this.#told(opening)}</li>`)}
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

  #told({ girthMm, breadthMm, areaMm2, narrowest, passes }: Opening): string {
    const words = WORDS.wear;
    const length = (mm: number): string => formatLength(mm, this.unit);
    return [
      words.opening(length(girthMm), length(breadthMm), formatArea(areaMm2, this.unit)),
      ...(narrowest === null ? [] : [words.narrows(length(narrowest.girthMm))]),
      ...(passes === null ? [] : [passes ? words.passes : words.passesNot]),
    ].join('; ');
  }

  #field(worn: PassChoice, name: 'girthMm' | 'breadthMm', label: string) {
    return html`<fl-length-field
      label=${label}
      .mm=${worn[name] ?? null}
      .unit=${this.unit}
      .min=${1}
      .max=${10_000}
      @fl-length=${({ mm }: LengthEvent) => this.send(setWorn({ ...worn, [name]: mm }))}
    ></fl-length-field>`;
  }
}
