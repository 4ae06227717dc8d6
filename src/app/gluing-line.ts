import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ShopView } from '../worker/shop-api.ts';
import { allCut, chainIndex } from './bench-state.ts';
import { toldText } from './finding-text.ts';
import { isUnfinished, NO_GLUING, type GluingLook } from './gluing-look.ts';
import './gluing-steps.ts';
import { GLUING_WORDS } from './gluing-words.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './part-steps.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** In which order the pieces are glued, and what no hand reaches. */
@customElement('fl-gluing-line')
export class GluingLine extends JobSection {
  @property({ attribute: false }) gluing: GluingLook = NO_GLUING;
  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override render() {
    const { shop } = this.gluing;
    const hasPieces = allCut(this.bench).length > 0;
    const isOpen = isUnfinished(this.bench);
    const waiting = !hasPieces ? GLUING_WORDS.waiting : isOpen ? GLUING_WORDS.unfinished : GLUING_WORDS.making;
    const mark =
      shop === null ? (hasPieces && !isOpen ? 'wait' : 'missing') : shop.findings.length > 0 ? 'wrong' : 'so';
    return html`<fl-job-line heading=${WORDS.lines.gluing} mark=${mark}>
      ${shop === null ? html`<p slot="answer" class="soft">${waiting}</p>` : this.#plan(shop)}
    </fl-job-line>`;
  }

  #plan(shop: ShopView) {
    const { steps, batches, glue, outside } = shop.gluing;
    const ofParts = shop.parts.reduce((sum, part) => sum + part.steps.length, 0);
    if (steps.length === 0)
      return ofParts === 0
        ? html`<p slot="answer" class="soft">${GLUING_WORDS.none}</p>`
        : html`<p slot="answer">${GLUING_WORDS.ofParts(ofParts, shop.parts.length)}</p>
            <p class="small soft">${GLUING_WORDS.glue(glue)}</p>
            ${this.#parts(shop)}`;
    const letters = outside.map((seam) => this.#letter(shop, seam));
    const isTheirs = this.sculptPart?.gluing !== undefined;
    return html`<p slot="answer">${GLUING_WORDS.answer(steps.length, batches.length)}</p>
      <div class="stack small">
        <p class="soft">${GLUING_WORDS.glue(glue)} ${GLUING_WORDS.how}</p>
        <p>${letters.length === 0 ? GLUING_WORDS.reached : GLUING_WORDS.outside(letters)}</p>
        ${shop.findings.map(({ text, where }) => {
          const light = (): void => this.point({ seams: [chainIndex(this.bench, where.seam ?? '')] });
          return html`<p @pointerenter=${light} @pointerleave=${() => this.point(null)}>
            <b class="wrong">${WORDS.findings.severity.warning}:</b> ${toldText(text, this.unit)}
          </p>`;
        })}
        ${
          isTheirs
            ? html`<div class="row">
                <span>${GLUING_WORDS.yours}</span>
                <button title=${GLUING_WORDS.anewWhy} @click=${() => this.ask('glue-anew')}>
                  ${GLUING_WORDS.anew}
                </button>
              </div>`
            : nothing
        }
      </div>
      <fl-gluing-steps .project=${this.project} .bench=${this.bench} .gluing=${this.gluing} .choice=${this.choice}>
      </fl-gluing-steps>
      ${this.#parts(shop)}`;
  }

  #parts({ parts }: ShopView) {
    return html`<fl-part-steps .project=${this.project} .bench=${this.bench} .works=${parts} .choice=${this.choice}>
    </fl-part-steps>`;
  }

  #letter({ gluing }: ShopView, seam: string): string {
    const run = gluing.steps.flatMap(({ runs }) => runs).find((one) => one.seam === seam);
    return run?.letter ?? '';
  }
}
