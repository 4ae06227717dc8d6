import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { ScoredLine } from '../model/score.ts';
import { partScore, removeScore, setScore } from '../project/score-commands.ts';
import type { Command } from '../project/commands.ts';
import { edgeIndexOf } from './edge-index.ts';
import { ViewEvent } from './events.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { SCORE_WORDS } from './score-words.ts';
import { SHARED } from './styles.ts';

/** Least depth, mm: less does not open. */
const LEAST_DEPTH_MM = 0.1;
/** No sheet is thicker, mm. */
const MOST_MM = 60;

/** The scored lines of the part, with how deep and how wide. Pointed at, a line is lit on the sculpt. */
@customElement('fl-score-list')
export class ScoreList extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE];

  protected override render() {
    const scores = this.sculptPart?.scores ?? [];
    if (scores.length === 0) return nothing;
    return html`<p class="small">${SCORE_WORDS.heading}</p>
      ${scores.map((line, i) => this.#line(line, SCORE_WORDS.name(i + 1, line.edges.length)))}`;
  }

  #line(line: ScoredLine, name: string) {
    const light = (): void => this.#light(line);
    const dim = (): boolean => this.dispatchEvent(new ViewEvent({ preview: null }));
    return html`<fieldset @pointerenter=${light} @pointerleave=${dim} @focusin=${light} @focusout=${dim}>
      <legend>${name}</legend>
      <div class="fields">
        ${this.#field(line, 'depthMm', SCORE_WORDS.depth, LEAST_DEPTH_MM)}
        ${this.#field(line, 'openMm', SCORE_WORDS.open, 0)}
      </div>
      <div class="row">
        ${this.#button(SCORE_WORDS.part, name, partScore(line.id))}
        ${this.#button(SCORE_WORDS.remove, name, removeScore(line.id))}
      </div>
    </fieldset>`;
  }

  #field(line: ScoredLine, key: 'depthMm' | 'openMm', label: string, min: number) {
    return html`<fl-length-field
      data-means=${`score-${key}`}
      label=${label}
      .mm=${line[key]}
      .unit=${this.unit}
      .min=${min}
      .max=${MOST_MM}
      @fl-length=${({ mm }: LengthEvent) => this.send(setScore(line.id, { [key]: mm }))}
    ></fl-length-field>`;
  }

  /** What was lit goes dark with the line. */
  #button(label: string, name: string, command: Command) {
    const run = (): void => {
      this.dispatchEvent(new ViewEvent({ preview: null }));
      this.send(command);
    };
    return html`<button class="plain" aria-label=${SCORE_WORDS.of(label, name)} @click=${run}>${label}</button>`;
  }

  #light({ edges }: ScoredLine): void {
    const { sculpt } = this.bench;
    if (sculpt === null) return;
    const cornerOf = new Map(Array.from(sculpt.fileVertex, (file, corner) => [file, corner]));
    const index = edgeIndexOf(sculpt);
    const lit = edges.map(([a, b]) => index.between(cornerOf.get(a) ?? -1, cornerOf.get(b) ?? -1));
    this.dispatchEvent(new ViewEvent({ preview: lit.filter((edge) => edge >= 0) }));
  }
}
