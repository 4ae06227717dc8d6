import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatPlain } from '../base/format-length.ts';
import { readFigure } from '../base/read-figure.ts';
import type { HeatShrinkage } from '../model/flatten-settings.ts';
import { setAllowForShrinkage, setShrinkage } from '../project/commands.ts';
import type { LayerChoice } from '../project/project.ts';
import { WISH_LIMITS } from '../project/wish-limits.ts';
import './cautions.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** What the foam loses when it is warmed, as the maker measured it, and whether pieces are cut larger by it. */
@customElement('fl-shrink-fields')
export class ShrinkFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .fields input {
        inline-size: 6em;
        font-size: var(--t-body);
      }
      label.switch {
        display: flex;
        align-items: center;
        gap: var(--s2);
        min-block-size: var(--target);
        font-size: var(--t-body);
      }
    `,
  ];

  /** The sheet of the wall whose foam it is about. */
  @property({ attribute: false }) layer: LayerChoice | null = null;
  @state() private fault = '';

  protected override render() {
    const { layer } = this;
    const foam = this.project?.foams.find((sheet) => sheet.id === layer?.foam);
    if (layer === null || foam === undefined) return nothing;
    const words = WORDS.forming.shrink;
    const { shrinkage } = foam;
    return html`<fieldset class="stack">
      <legend>${words.heading}</legend>
      <p id="how" class="small soft">${words.how}</p>
      <div class="fields">${this.#field('alongPct', shrinkage)} ${this.#field('acrossPct', shrinkage)}</div>
      <p id="fault" class="small wrong" role="status">${this.fault}</p>
      <label class="switch">
        <input
          data-means="allow-shrinkage"
          type="checkbox"
          .checked=${layer.allowForShrinkage && shrinkage !== undefined}
          ?disabled=${shrinkage === undefined}
          aria-describedby="allow-why"
          @change=${(event: Event) => this.send(setAllowForShrinkage((event.target as HTMLInputElement).checked))}
        />
        ${words.allow}
      </label>
      <p id="allow-why" class="small soft">${shrinkage === undefined ? words.first : words.done}</p>
      <fl-cautions .work=${['heat']} label=${words.caution}></fl-cautions>
    </fieldset>`;
  }

  #field(name: keyof HeatShrinkage, shrinkage: HeatShrinkage | undefined) {
    const words = WORDS.forming.shrink;
    return html`<label>
      ${name === 'alongPct' ? words.along : words.across}
      <input
        data-means=${`shrink-${name}`}
        type="text"
        inputmode="decimal"
        autocomplete="off"
        .value=${shrinkage === undefined ? '' : formatPlain(shrinkage[name])}
        aria-invalid=${this.fault === '' ? 'false' : 'true'}
        aria-describedby="how fault"
        @change=${(event: Event) => this.#take(name, event.target as HTMLInputElement, shrinkage)}
      />
    </label>`;
  }

  /** The first figure stands for both ways until the other is given; a field that is emptied forgets the measure. */
  #take(name: keyof HeatShrinkage, { value }: HTMLInputElement, shrinkage: HeatShrinkage | undefined): void {
    const foam = this.layer?.foam;
    if (foam === undefined) return;
    this.fault = '';
    if (value.trim() === '') return this.send(setShrinkage(foam, null));
    const pct = readFigure(value);
    if (!(Math.abs(pct) < WISH_LIMITS.shrinkagePct)) {
      this.fault = WORDS.forming.shrink.wrong(WISH_LIMITS.shrinkagePct);
      return;
    }
    this.send(setShrinkage(foam, { ...(shrinkage ?? { alongPct: pct, acrossPct: pct }), [name]: pct }));
  }
}
