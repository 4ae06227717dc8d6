import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatArea } from '../base/format-length.ts';
import type { Give, Region } from '../model/flatten-settings.ts';
import { raiseRegion, removeRegion, renameRegion, setRegionGive, setRegionSeams } from '../project/commands.ts';
import { JobSection } from './job-section.ts';
import { areaOf } from './panels.ts';
import { FIELD_LIST_STYLE } from './list-style.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** The areas the maker named, each with how it gives, what is raised on it and the way to be rid of it; pointing at one lights it up. */
@customElement('fl-area-list')
export class AreaList extends JobSection {
  static override styles = [
    SHARED,
    FIELD_LIST_STYLE,
    css`
      input[type='text'] {
        inline-size: 100%;
        border-block-end-width: var(--narrow);
      }
      .round {
        grid-column: 1 / -1;
        justify-self: start;
      }
      .raised {
        grid-column: 1 / -1;
        inline-size: 100%;
      }
    `,
  ];

  protected override render() {
    const regions = this.sculptPart?.regions ?? [];
    if (regions.length === 0) return nothing;
    return html`<h3>${WORDS.forming.areas.heading}</h3>
      <ul>
        ${regions.map((region) => this.#area(region))}
      </ul>`;
  }

  #area(region: Region) {
    const words = WORDS.forming.areas;
    const { sculpt } = this.bench;
    const triangles = this.#trianglesOf(region);
    const light = (): void => this.point({ triangles });
    const dark = (): void => this.point(null);
    return html`<li @pointerenter=${light} @pointerleave=${dark} @focusin=${light} @focusout=${dark}>
      <input
        data-means="area-name"
        type="text"
        autocomplete="off"
        aria-label=${words.name}
        .value=${region.name}
        @change=${(event: Event) => this.send(renameRegion(region.id, (event.target as HTMLInputElement).value))}
      />
      <button class="plain" aria-label=${words.remove(region.name)} @click=${() => this.send(removeRegion(region.id))}>
        ${words.takeAway}
      </button>
      <span class="soft">${sculpt === null ? '' : formatArea(areaOf(sculpt, triangles), this.unit)}</span>
      <select
        data-means="area-give"
        aria-label="${words.give}: ${region.name}"
        @change=${(event: Event) => this.send(setRegionGive(region.id, (event.target as HTMLSelectElement).value as Give))}
      >
        ${(['normal', 'stiff', 'soft'] as const).map(
          (give) => html`<option value=${give} .selected=${give === region.give}>${words.gives[give]}</option>`,
        )}
      </select>
      ${this.#raising(region)} ${this.#painting(region)}
      <button class="plain round" @click=${() => this.ask(`round-${region.id}`)}>
        ${WORDS.marking.verbs.round(region.name)}
      </button>
    </li>`;
  }

  /** What is said of seams there. */
  #painting({ id, name, seams }: Region) {
    const { paint, paints } = WORDS.marking;
    const choose = (event: Event): void => {
      const { value } = event.target as HTMLSelectElement;
      this.send(setRegionSeams(id, value === 'clear' || value === 'prefer' ? value : null));
    };
    return html`<select data-means="area-seams" class="raised" aria-label="${paint}: ${name}" @change=${choose}>
      ${(['free', 'clear', 'prefer'] as const).map(
        (word) => html`<option value=${word} .selected=${word === (seams ?? 'free')}>${paints[word]}</option>`,
      )}
    </select>`;
  }

  /** Which foam is laid on the face there. */
  #raising({ id, name, raised }: Region) {
    const words = WORDS.forming.areas;
    const foams = this.project?.foams ?? [];
    const raise = (event: Event): void => {
      const { value } = event.target as HTMLSelectElement;
      this.send(raiseRegion(id, foams.find((foam) => foam.id === value) ?? null));
    };
    return html`<select data-means="area-raised" class="raised" aria-label="${words.raise}: ${name}" @change=${raise}>
      <option value="" .selected=${raised === undefined}>${words.notRaised}</option>
      ${foams.map(
        (foam) =>
          html`<option value=${foam.id} .selected=${foam.id === raised?.foam}>${words.raised(foam.name)}</option>`,
      )}
    </select>`;
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
