import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { paintFaces } from '../project/finish-commands.ts';
import { JobSection } from './job-section.ts';
import { colourOfFaces } from './paint-look.ts';
import { PAINT_WORDS } from './paint-words.ts';
import { SHARED } from './styles.ts';

/** Which colour the chosen area or piece is painted in. */
@customElement('fl-paint-field')
export class PaintField extends JobSection {
  static override styles = [SHARED];

  /** Polygons of the file it is made of, ascending. */
  @property({ attribute: false }) faces: readonly number[] = [];
  /** What it is called where it is no area yet. */
  @property() name = '';

  protected override render() {
    const { faces } = this;
    if (faces.length === 0) return nothing;
    const words = PAINT_WORDS.areas;
    const colours = this.project?.shop?.colours ?? [];
    const now = colourOfFaces(this.sculptPart?.regions ?? [], faces);
    const paint = (event: Event): void =>
      this.send(paintFaces(this.name, faces, (event.target as HTMLSelectElement).value || null));
    return html`<label class="small soft"
      >${words.colour}
      <select
        data-means="piece-colour"
        ?disabled=${colours.length === 0}
        title=${colours.length === 0 ? words.first : ''}
        @change=${paint}
      >
        ${now === undefined ? html`<option value="?" disabled selected>…</option>` : nothing}
        <option value="" .selected=${now === null}>${words.asRest}</option>
        ${colours.map(({ id, name: own }) => html`<option value=${id} .selected=${id === now}>${own}</option>`)}
      </select>
    </label>`;
  }
}
