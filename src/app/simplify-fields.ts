import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import type { SimplifyChoice } from '../project/project.ts';
import { LEAST_TRIANGLES } from '../project/simplify-commands.ts';
import { SimplifyEvent } from './events.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { figureTyped } from './figure-input.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { SIMPLIFY_WORDS } from './simplify-words.ts';
import { SHARED } from './styles.ts';

/** How far the surface may be let move, mm: finer than paper shows, and coarser than any prop stands. */
const MOVE_MM = { least: 0.01, most: 100 };

/** A dense sculpt made simpler for paper: to so many triangles, or as long as its surface moves no farther than so much. */
@customElement('fl-simplify-fields')
export class SimplifyFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .now {
        margin-inline-start: auto;
        font-weight: 400;
      }
      .fields {
        align-items: start;
      }
      input {
        inline-size: 7.5em;
      }
    `,
  ];

  @query('details') private details!: HTMLDetailsElement;
  @state() private isWrong = false;

  /** The first field takes the focus, unfolded. */
  override focus(options?: FocusOptions): void {
    this.details.open = true;
    this.renderRoot.querySelector('input')?.focus(options);
  }

  protected override render() {
    const { sculpt } = this.bench;
    if (sculpt === null) return nothing;
    const choice = this.sculptPart?.simplify;
    const words = SIMPLIFY_WORDS;
    return html`<details ?open=${choice !== undefined}>
      <summary>${words.heading}<span class="soft now">${words.now(sculpt.facts.triangles)}</span></summary>
      <div class="stack">
        <p class="small soft">${words.why}</p>
        ${this.#fields(choice)}
        ${
          choice === undefined
            ? nothing
            : html`<button class="plain" @click=${() => this.dispatchEvent(new SimplifyEvent(null))}>
                ${words.off}
              </button>`
        }
      </div>
    </details>`;
  }

  /** What was typed gives way to what is in force, not to every new result. */
  protected override updated(changed: PropertyValues): void {
    const input = this.renderRoot.querySelector('input');
    if (!changed.has('project') || input === null) return;
    input.value = String(this.sculptPart?.simplify?.triangles ?? '');
    this.isWrong = false;
  }

  /** Fine lengths: in inches they would read as nothing. */
  #fields(choice: SimplifyChoice | undefined) {
    const words = SIMPLIFY_WORDS;
    return html`<div class="fields">
      <div>
        <label
          >${words.triangles}
          <input
            data-means="triangles"
            type="text"
            inputmode="numeric"
            autocomplete="off"
            aria-invalid=${this.isWrong}
            aria-describedby="fault"
            @change=${this.#takeTriangles}
          />
        </label>
        <span id="fault" class="small wrong" role="status">${this.isWrong ? words.wrong(LEAST_TRIANGLES) : ''}</span>
      </div>
      <fl-length-field
        data-means="deviation"
        label=${words.deviation}
        .mm=${choice?.deviationMm ?? null}
        unit="mm"
        .min=${MOVE_MM.least}
        .max=${MOVE_MM.most}
        @fl-length=${({ mm }: LengthEvent) => this.dispatchEvent(new SimplifyEvent({ deviationMm: mm }))}
      ></fl-length-field>
    </div>`;
  }

  #takeTriangles(event: Event): void {
    const triangles = figureTyped(event);
    this.isWrong = !Number.isInteger(triangles) || triangles < LEAST_TRIANGLES;
    if (!this.isWrong) this.dispatchEvent(new SimplifyEvent({ triangles }));
  }
}
