import { html } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { Trail } from '../../project/history.ts';
import { versionsOf } from '../../project/kept-version.ts';
import type { Comparing } from '../../worker/compare-api.ts';
import '../job-line.ts';
import { JobSection } from '../job-section.ts';
import './compare-two.ts';
import type { CompareTwo } from './compare-two.ts';
import type { CompareAskEvent } from './history-events.ts';
import { HISTORY_WORDS } from './history-words.ts';
import './step-list.ts';
import './version-list.ts';

/** What was done, step by step, what was kept of it, and two states of it side by side. */
@customElement('fl-history-line')
export class HistoryLine extends JobSection {
  @property({ attribute: false }) trail: Trail | null = null;
  /** Who works both out. */
  @property({ attribute: false }) asking: Comparing | null = null;
  @query('fl-compare-two') private two!: CompareTwo;

  protected override render() {
    const { project, trail } = this;
    const words = HISTORY_WORDS;
    if (project === null || trail === null)
      return html`<fl-job-line heading=${words.heading} mark="wait"
        ><p slot="answer" class="soft">${words.waiting}</p></fl-job-line
      >`;
    return html`<fl-job-line heading=${words.heading} mark="so">
      <p slot="answer">${words.answer(trail.at, versionsOf(project).length)}</p>
      <fl-step-list .trail=${trail}></fl-step-list>
      <fl-version-list
        .project=${project}
        .bench=${this.bench}
        @fl-compare-ask=${({ version }: CompareAskEvent) => void this.two.compareVersion(version)}
      ></fl-version-list>
      <fl-compare-two .project=${project} .bench=${this.bench} .trail=${trail} .asking=${this.asking}></fl-compare-two>
    </fl-job-line>`;
  }
}
