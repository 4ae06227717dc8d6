import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Colouring } from '../../viewport/bench-contract.ts';
import { JobSection } from '../job-section.ts';
import { keyCap } from '../key-cap.ts';
import { SHARED } from '../styles.ts';
import { COLOURINGS, colourVerbOf, isColourable } from './colour-verbs.ts';
import './figure-table.ts';
import { figureOf } from './figures.ts';
import { LEGEND_WORDS } from './legend-words.ts';

/** The one choice of what colours show on the bench, what that tells, and the same figures as a table. */
@customElement('fl-colour-choice')
export class ColourChoice extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        gap: var(--s2);
      }
      legend {
        font-size: var(--t-small);
        font-weight: 600;
        padding: 0;
      }
      .choices label {
        font-size: var(--t-small);
      }
    `,
  ];

  @property() colouring: Colouring = 'plain';
  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  @property({ type: Number }) sheet = 1;

  protected override render() {
    const offered = COLOURINGS.filter((one) => one === this.colouring || isColourable(one, this.bench, this.project));
    const kind = figureOf(this.colouring);
    return html`<fieldset>
        <legend>${LEGEND_WORDS.choice} <kbd>,</kbd></legend>
        <div class="choices">${offered.map((one) => this.#choice(one))}</div>
      </fieldset>
      ${
        kind === null
          ? nothing
          : html`<p class="small soft">${LEGEND_WORDS.how[kind]}</p>
              <fl-figure-table
                .project=${this.project}
                .bench=${this.bench}
                .kind=${kind}
                .sheet=${this.sheet}
              ></fl-figure-table>`
      }`;
  }

  #choice(colouring: Colouring) {
    const { id, key } = colourVerbOf(colouring);
    const isChosen = colouring === this.colouring;
    return html`<label>
      <input
        data-means="colours"
        type="radio"
        name="colours"
        .checked=${isChosen}
        aria-keyshortcuts=${key?.toUpperCase() ?? nothing}
        @change=${() => (isChosen ? undefined : this.ask(id))}
      />
      ${LEGEND_WORDS.kinds[colouring]}${key === undefined ? nothing : keyCap(key.toUpperCase())}
    </label>`;
  }
}
