import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, formatPercent } from '../base/format-length.ts';
import './findings.ts';
import { hasWrong } from './findings.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './sheet-picture.ts';
import './stock-list.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** How many sheets of foam the job takes, and what lies on each. */
@customElement('fl-sheets-line')
export class SheetsLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      figure + figure {
        margin-block-start: var(--s4);
      }
      figcaption {
        display: flex;
        justify-content: space-between;
        gap: var(--s3);
        font-size: var(--t-small);
        margin-block-end: var(--s1);
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override render() {
    const sheets = this.bench.sheets?.sheets ?? [];
    const mark =
      hasWrong(this.bench, ['nest']) || (this.bench.sheets?.tooLarge.length ?? 0) > 0
        ? 'wrong'
        : sheets.length > 0
          ? 'so'
          : 'missing';
    return html`<fl-job-line heading=${WORDS.lines.sheets} mark=${mark}>
      ${
        sheets.length === 0
          ? html`<p slot="answer" class="soft">${WORDS.sheets.waiting}</p>`
          : html`<p slot="answer">
                ${WORDS.sheets.answer(sheets.length, formatLength(sheets[0].widthMm, this.unit), formatLength(sheets[0].heightMm, this.unit))}
              </p>
              <div>
                ${sheets.map(
                  (sheet, i) =>
                    html`<figure>
                      <figcaption>
                        <span>${WORDS.sheets.sheet(i + 1)}</span
                        ><span>${WORDS.sheets.used(formatPercent(100 * sheet.usedShare, 0))}</span>
                      </figcaption>
                      <fl-sheet-picture
                        .sheet=${sheet}
                        .pieces=${this.bench.pieces?.pieces ?? []}
                        .strips=${this.bench.pieces?.strips ?? []}
                        .templates=${this.bench.pieces?.templates ?? []}
                        .choice=${this.choice}
                      ></fl-sheet-picture>
                    </figure>`,
                )}
              </div>`
      }
      <fl-stock-list .project=${this.project} .bench=${this.bench}></fl-stock-list>
      ${this.bench.sheets === null ? nothing : html`<fl-findings .bench=${this.bench} .project=${this.project} .steps=${['nest']}></fl-findings>`}
    </fl-job-line>`;
  }
}
