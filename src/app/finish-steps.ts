import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FinishStepWords, FinishView } from '../worker/finish-api.ts';
import './cautions.ts';
import { JobSection } from './job-section.ts';
import { PAINT_WORDS } from './paint-words.ts';
import { SHARED } from './styles.ts';

/** The steps of finishing in their order, those before gluing under the step they come before. Pointed at, what they are done to is lit. */
@customElement('fl-finish-steps')
export class FinishSteps extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      h3 {
        font-size: var(--t-small);
        font-weight: 700;
        padding-block: var(--s4) var(--s2);
      }
      li {
        display: grid;
        grid-template-columns: 2.2em minmax(0, 1fr);
        padding-block: var(--s2);
        border-block-start: var(--narrow) solid var(--rule-soft);
        font-size: var(--t-small);
      }
      .at {
        font-weight: 700;
      }
      .title {
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) finish: FinishView | null = null;

  protected override render() {
    const { finish } = this;
    if (finish === null || finish.groups.length === 0) return nothing;
    return html`<section aria-label=${PAINT_WORDS.steps}>
      ${finish.groups.map(
        ({ when, why, steps }) =>
          html`<h3>${when}</h3>
            ${why === '' ? nothing : html`<p class="small soft">${why}</p>`}
            <ol>
              ${steps.map((step) => this.#step(step))}
            </ol>`,
      )}
    </section>`;
  }

  #step({ number, title, texts, cautions }: FinishStepWords) {
    const ids = new Set<string>(this.finish?.plan.steps[number - 1].pieces);
    const pieces = this.bench.pieces?.pieces.flatMap(({ id }, i) => (ids.has(id) ? [i] : [])) ?? [];
    const light = (): void => this.point({ pieces });
    const dark = (): void => this.point(null);
    return html`<li @pointerenter=${light} @pointerleave=${dark}>
      <span class="at">${number}</span>
      <div class="stack">
        <p class="title">${title}</p>
        ${texts.map((text) => html`<p>${text}</p>`)}
        ${
          cautions.length === 0 ? nothing : html`<fl-cautions .ids=${cautions} label=${PAINT_WORDS.mind}></fl-cautions>`
        }
      </div>
    </li>`;
  }
}
