import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Region } from '../model/flatten-settings.ts';
import { clayRegion, colourRegion } from '../project/finish-commands.ts';
import { CLAY_MOST_MM } from '../project/clay-limits.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { FIELD_LIST_STYLE } from './list-style.ts';
import { PAINT_WORDS } from './paint-words.ts';
import { SHARED } from './styles.ts';

/** The named areas, each with its colour and how high it is built up in clay. Pointed at, an area is lit on the sculpt. */
@customElement('fl-paint-areas')
export class PaintAreas extends JobSection {
  static override styles = [
    SHARED,
    FIELD_LIST_STYLE,
    css`
      li {
        grid-template-columns: minmax(0, 1fr) 11em;
      }
      .name {
        font-weight: 600;
        overflow-wrap: anywhere;
      }
      fl-length-field {
        grid-column: 1 / -1;
      }
    `,
  ];

  protected override render() {
    const regions = this.sculptPart?.regions ?? [];
    const words = PAINT_WORDS.areas;
    if (regions.length === 0) return html`<p class="small soft">${words.none}</p>`;
    return html`<h3>${words.heading}</h3>
      <ul>
        ${regions.map((region) => this.#area(region))}
      </ul>`;
  }

  #area(region: Region) {
    const words = PAINT_WORDS.areas;
    const { id, name, colour = '', clay } = region;
    const colours = this.project?.shop?.colours ?? [];
    const light = (): void => this.point({ triangles: this.#trianglesOf(region) });
    const dark = (): void => this.point(null);
    return html`<li @pointerenter=${light} @pointerleave=${dark} @focusin=${light} @focusout=${dark}>
      <span class="name">${name}</span>
      <select
        data-means="area-colour"
        aria-label=${words.colourOf(name)}
        @change=${(event: Event) => this.send(colourRegion(id, (event.target as HTMLSelectElement).value || null))}
      >
        <option value="" .selected=${colour === ''}>${words.asRest}</option>
        ${colours.map((own) => html`<option value=${own.id} .selected=${own.id === colour}>${own.name}</option>`)}
      </select>
      <fl-length-field
        data-means="area-clay"
        class="inline"
        label=${words.clay}
        .mm=${clay?.heightMm ?? 0}
        .unit=${this.unit}
        .min=${0}
        .max=${CLAY_MOST_MM}
        @fl-length=${({ mm }: LengthEvent) => this.send(clayRegion(id, mm === 0 ? null : mm))}
      ></fl-length-field>
    </li>`;
  }

  #trianglesOf({ faces }: Region): number[] {
    const wanted = new Set(faces);
    const found: number[] = [];
    this.bench.sculpt?.faceOfTriangle.forEach((face, t) => {
      if (wanted.has(face)) found.push(t);
    });
    return found;
  }
}
