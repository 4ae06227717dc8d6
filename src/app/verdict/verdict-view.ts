import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Severity } from '../../base/finding.ts';
import type { LengthUnit } from '../../base/format-length.ts';
import { verdictSentence, WEIGHTS, type Verdict } from '../../base/verdict.ts';
import { findingText } from '../finding-text.ts';
import '../findings.ts';
import { JobSection } from '../job-section.ts';
import { SHARED } from '../styles.ts';
import { checksOf, type Check } from './checks.ts';
import { NOTHING, type Choice } from '../view-state.ts';
import { VERDICT_WORDS } from './verdict-words.ts';
import { verdictOf } from './verdict.ts';

/** Whether it will work, before anything is printed: every finding with its place and its remedies, and what was found good as well. */
@customElement('fl-verdict')
export class VerdictView extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        gap: var(--s3);
        padding-block: var(--s3);
        border-block: var(--narrow) solid var(--ink);
        scroll-margin-block-start: 80px;
      }
      h3 {
        font-size: var(--t-small);
        font-weight: 500;
        color: var(--ink-soft);
      }
      h3:focus-visible {
        outline: 0;
        text-decoration: underline;
      }
      h4 {
        margin: 0;
        font-size: var(--t-small);
        font-weight: 700;
      }
      .answer {
        font-size: var(--t-large);
        font-weight: 600;
        line-height: 1.25;
      }
      .worksNot {
        color: var(--wrong);
      }
      .checks li {
        display: grid;
        grid-template-columns: 16px minmax(0, 1fr);
        gap: var(--s2);
        padding-block: var(--s1);
        font-size: var(--t-small);
      }
      .checks svg {
        inline-size: 16px;
        block-size: 16px;
        margin-block-start: 3px;
        fill: none;
        stroke: var(--ink);
        stroke-width: 2.4;
      }
      .checks .bad svg {
        stroke: var(--wrong);
      }
    `,
  ];

  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  @property({ type: Number }) sheet = 1;
  @property({ attribute: false }) choice: Choice = NOTHING;

  override focus(options?: FocusOptions): void {
    this.scrollIntoView({ block: 'start' });
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus(options);
  }

  protected override render() {
    const verdict = verdictOf(this.bench);
    return html`<div>
        <h3 tabindex="-1">${VERDICT_WORDS.heading}</h3>
        <p class="answer ${verdict.answer}" role="status">${answerText(verdict, this.unit)}</p>
      </div>
      ${WEIGHTS.map((weight) => this.#group(weight, verdict))} ${verdict.answer === 'waits' ? nothing : this.#checks()}`;
  }

  #group(weight: Severity, { told }: Verdict) {
    const mine = told[weight];
    if (mine.length === 0) return nothing;
    const name = VERDICT_WORDS.group(VERDICT_WORDS.groups[weight], mine.length);
    const list = html`<fl-findings
      .project=${this.project}
      .bench=${this.bench}
      .choice=${this.choice}
      .given=${mine}
    ></fl-findings>`;
    // Notes ask for nothing: they are there for those who look.
    return weight === 'note'
      ? html`<details>
          <summary>${name}</summary>
          ${list}
        </details>`
      : html`<div>
          <h4>${name}</h4>
          ${list}
        </div>`;
  }

  #checks() {
    const { project, bench, sheet, unit } = this;
    const checks = checksOf({ project, bench, sheet, unit });
    if (checks.length === 0) return nothing;
    const good = checks.filter(({ isGood }) => isGood).length;
    return html`<details class="checks">
      <summary>${VERDICT_WORDS.checked(good, checks.length)}</summary>
      <ul>
        ${checks.map((check) => checkLine(check))}
      </ul>
    </details>`;
  }
}

/** The verdict in one line. */
export const answerText = (verdict: Verdict, unit: LengthUnit): string =>
  verdictSentence(verdict, VERDICT_WORDS.answer, (finding) => findingText(finding, unit));

const MARKS = { good: svg`<path d="M2 8.5 6.5 13 14 3" />`, bad: svg`<path d="M3 3l10 10M13 3 3 13" />` };

const checkLine = ({ isGood, text }: Check) =>
  html`<li class=${isGood ? '' : 'bad'}>
    <svg viewBox="0 0 16 16" role="img" aria-label=${isGood ? VERDICT_WORDS.good : VERDICT_WORDS.notGood}>
      ${isGood ? MARKS.good : MARKS.bad}
    </svg>
    <span>${text}</span>
  </li>`;
