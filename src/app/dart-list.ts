import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatLength } from '../base/format-length.ts';
import { FIRST_TIP_HOLE_MM, setTipHole, TIP_HOLE_MM } from '../project/tip-commands.ts';
import { dartsOf, type Dart } from './darts.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { MARK_WORDS } from './mark-words.ts';
import { FIELD_LIST_STYLE } from './list-style.ts';
import { SHARED } from './styles.ts';

/** The darts of the part, each with how it ends: in a point, or in a round hole. */
@customElement('fl-dart-list')
export class DartList extends JobSection {
  static override styles = [
    SHARED,
    FIELD_LIST_STYLE,
    css`
      li {
        grid-template-columns: minmax(0, 1fr) auto auto;
        gap: var(--s2) var(--s3);
      }
    `,
  ];

  protected override render() {
    const darts = dartsOf(this.bench);
    if (darts.length === 0) return nothing;
    return html`<h3>${MARK_WORDS.darts.heading}</h3>
      <ul>
        ${darts.map((dart) => this.#dart(dart))}
      </ul>`;
  }

  #dart({ letter, chain, tip, fileCorner, lengthMm }: Dart) {
    const words = MARK_WORDS.darts;
    const hole = this.sculptPart?.tipHoles?.find(({ corner }) => corner === fileCorner);
    const light = (): void => this.point({ seams: [chain], vertices: [tip] });
    const dark = (): void => this.point(null);
    const choose = (event: Event): void => {
      const isHole = (event.target as HTMLSelectElement).value === 'hole';
      this.send(setTipHole(fileCorner, isHole ? FIRST_TIP_HOLE_MM : null));
    };
    return html`<li @pointerenter=${light} @pointerleave=${dark} @focusin=${light} @focusout=${dark}>
      <span>${words.name(letter, formatLength(lengthMm, this.unit))}</span>
      <select data-means="dart-end" aria-label=${words.ends(letter)} @change=${choose}>
        <option value="point" .selected=${hole === undefined}>${words.point}</option>
        <option value="hole" .selected=${hole !== undefined}>${words.hole}</option>
      </select>
      ${
        hole === undefined
          ? html`<span></span>`
          : html`<fl-length-field
              data-means="tip-hole"
              class="inline"
              label=${words.diameter}
              .mm=${hole.diameterMm}
              .unit=${this.unit}
              .min=${TIP_HOLE_MM.least}
              .max=${TIP_HOLE_MM.most}
              @fl-length=${({ mm }: LengthEvent) => this.send(setTipHole(fileCorner, mm))}
            ></fl-length-field>`
      }
    </li>`;
  }
}
