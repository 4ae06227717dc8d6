import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { partId } from '../base/ids.ts';
import type { PartStep, PartWork } from '../model/part-work.ts';
import './cautions.ts';
import { toldText } from './finding-text.ts';
import { ChooseEvent } from './events.ts';
import { GLUING_WORDS } from './gluing-words.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** What is done with parts that no sculpt was parted for, part by part. A part's name chooses it. */
@customElement('fl-part-steps')
export class PartSteps extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      section {
        padding-block: var(--s3);
      }
      h3 {
        font-size: var(--t-small);
        font-weight: 700;
      }
      h3 button[aria-pressed='true'] {
        padding-inline: var(--s2);
        background: var(--lamp);
        color: var(--on-lamp);
      }
      ol li {
        display: grid;
        grid-template-columns: 2.2em minmax(0, 1fr);
        padding-block: var(--s2);
        border-block-start: var(--narrow) solid var(--rule-soft);
        font-size: var(--t-small);
      }
      .number {
        text-align: center;
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) works: readonly PartWork[] = [];
  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override render() {
    if (this.works.length === 0) return nothing;
    return html`<div role="group" aria-label=${GLUING_WORDS.partSteps}>
      ${this.works.map((work) => this.#part(work))}
    </div>`;
  }

  #part({ part, name, copies, steps }: PartWork) {
    const isChosen = this.choice.kind === 'part' && this.choice.part === part;
    const choice: Choice = isChosen ? NOTHING : { kind: 'part', part: partId(part) };
    const light = (): void => this.point({ parts: [part] });
    const cautions = [...new Set(steps.flatMap((step) => step.cautions))];
    return html`<section aria-label=${name} @pointerenter=${light} @pointerleave=${() => this.point(null)}>
      <h3>
        <button class="place" aria-pressed=${isChosen} @click=${() => this.dispatchEvent(new ChooseEvent(choice))}>
          <b>${name}</b>${copies === 1 ? nothing : html`, ${GLUING_WORDS.copies(copies)}`}
        </button>
      </h3>
      <ol>
        ${steps.map((step, i) => this.#step(step, i))}
      </ol>
      <fl-cautions .ids=${cautions} label=${WORDS.cautions.step}></fl-cautions>
    </section>`;
  }

  #step({ text, numbers }: PartStep, i: number) {
    return html`<li>
      <span class="number">${i + 1}</span>
      <span>
        ${toldText(text, this.unit)}
        ${numbers.length === 0 ? nothing : html`<span class="soft">(${GLUING_WORDS.pieces(numbers)})</span>`}
      </span>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-part-steps': PartSteps;
  }
}
