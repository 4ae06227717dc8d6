import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatLength } from '../base/format-length.ts';
import { ViewEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import { WORDS } from './words.ts';

/** Which sheet of a wall of several lies on the bench; nothing where there is one. */
@customElement('fl-sheet-choice')
export class SheetChoice extends JobSection {
  protected override render() {
    const layers = this.sculptPart?.layers ?? [];
    if (layers.length < 2) return nothing;
    const shown = this.bench.pieces?.sheet ?? 1;
    // The outermost is the first, and the last in the document.
    const sheets = [...layers].reverse();
    return html`<fieldset>
      <legend>${WORDS.foam.onBench}</legend>
      <div class="choices">
        ${sheets.map(
          ({ thicknessMm }, i) =>
            html`<label>
              <input
                type="radio"
                name="sheet"
                .checked=${shown === i + 1}
                @change=${() => this.dispatchEvent(new ViewEvent({ sheet: i + 1 }))}
              />
              ${WORDS.foam.sheetOf(i + 1, sheets.length, formatLength(thicknessMm, this.unit))}
            </label>`,
        )}
      </div>
    </fieldset>`;
  }
}
