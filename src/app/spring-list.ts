import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { formatLength, formatNumber } from '../base/format-length.ts';
import type { SeamPull } from '../model/springing.ts';
import { chainIndex } from './bench-state.ts';
import { ChooseEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import { PLACE_LIST_STYLE } from './list-style.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Joints shown before the rest is asked for. */
const FEW = 3;

/** Joints that pull less than this are not worth a line, N per cm: the weight of a pencil on the width of a hand. */
const LEAST_N_PER_CM = 0.05;

/** Joints that pull most when cold pieces are held together. Pointing at one shows where it is. */
@customElement('fl-spring-list')
export class SpringList extends JobSection {
  static override styles = [SHARED, PLACE_LIST_STYLE];

  @state() private isWhole = false;

  protected override render() {
    const pulls = (this.bench.springing?.seams ?? []).filter((pull) => newtonPerCm(pull) >= LEAST_N_PER_CM);
    if (pulls.length === 0) return nothing;
    const shown = this.isWhole ? pulls : pulls.slice(0, FEW);
    const words = WORDS.springing;
    return html`<h3>${words.heading}</h3>
      <ul>
        ${shown.map((pull) => html`<li>${this.#joint(pull)}</li>`)}
      </ul>
      ${
        pulls.length > shown.length
          ? html`<button class="plain" @click=${() => (this.isWhole = true)}>
              ${words.more(pulls.length - shown.length)}
            </button>`
          : nothing
      }
      <p class="small soft">${words.guide}</p>`;
  }

  #joint(pull: SeamPull) {
    const light = (): void => this.point({ seams: [chainIndex(this.bench, pull.seam)] });
    const dark = (): void => this.point(null);
    const words = WORDS.springing;
    return html`<button
      class="place"
      @pointerenter=${light}
      @pointerleave=${dark}
      @focus=${light}
      @blur=${dark}
      @click=${() => this.dispatchEvent(new ChooseEvent({ kind: 'seam', seam: pull.seam }))}
    >
      <b>${words.seam(pull.letter)}</b> ${words.way(pull.way)}, ${words.pull(formatNumber(newtonPerCm(pull), 1))};
      ${words.letGo(formatLength(pull.opensMm, this.unit))}
    </button>`;
  }
}

/** Pull of a joint, N per cm of it. */
const newtonPerCm = ({ pullNPerMm }: SeamPull): number => 10 * pullNPerMm;
