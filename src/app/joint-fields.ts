import { html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatMm } from '../base/format-length.ts';
import { readFigure } from '../base/read-figure.ts';
import type { Triple } from '../model/girth.ts';
import type { BodyJoint, JointFit } from '../model/joint.ts';
import { MOST_BEND_DEG, removeJoint, setJoint } from '../project/wear-commands.ts';
import { AXES, AXIS_NUMBER, axisOf } from './axes.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import { placeSlider } from './place-slider.ts';
import { SHARED } from './styles.ts';
import { WEAR_STYLE } from './wear-style.ts';
import { WORDS } from './words.ts';

type Axis = keyof typeof AXES;
const NAMES = Object.keys(AXES) as readonly Axis[];

/** A joint of the body: what turns about which axis and how far, and the room it has. Pointed at, the tightest place is lit on the bench. */
@customElement('fl-joint-fields')
export class JointFields extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE, WEAR_STYLE];

  @property({ attribute: false }) joint: BodyJoint | null = null;
  @state() private fault = '';

  protected override render() {
    const { joint } = this;
    const { sculpt } = this.bench;
    if (joint === null || sculpt === null) return nothing;
    const words = WORDS.wear;
    const fit = this.bench.bodyFit?.joints.find((one) => one.joint.id === joint.id);
    const light = (): void => this.#light(fit);
    const dim = (): void => this.point(null);
    return html`<fieldset class="stack" @pointerenter=${light} @pointerleave=${dim} @focusin=${light} @focusout=${dim}>
      <legend>${joint.name}</legend>
      <div class="fields">
        <label
          >${words.turnsAbout}
          <select
            data-means="joint-axis"
            @change=${(event: Event) => this.#turnAbout(joint, (event.target as HTMLSelectElement).value)}
          >
            ${NAMES.map((name) => html`<option value=${name} .selected=${name === axisOf(joint.axis)}>${name}</option>`)}
          </select>
        </label>
        <label
          >${words.turned}
          <select
            data-means="joint-side"
            @change=${(event: Event) => this.#turnSide(joint, (event.target as HTMLSelectElement).value)}
          >
            ${NAMES.flatMap((name) => [this.#side(joint, name, true), this.#side(joint, name, false)])}
          </select>
        </label>
        <label
          >${words.bend}
          <input
            data-means="joint-bend"
            type="text"
            inputmode="decimal"
            autocomplete="off"
            .value=${String(joint.bendDeg).replace('-', '−')}
            aria-invalid=${this.fault === '' ? 'false' : 'true'}
            aria-describedby="bend-fault"
            @change=${(event: Event) => this.#bend(joint, (event.target as HTMLInputElement).value)}
          />
        </label>
      </div>
      <span id="bend-fault" class="small wrong" role="status">${this.fault}</span>
      ${NAMES.map((axis) =>
        placeSlider(
          sculpt,
          joint.pointInFile,
          AXIS_NUMBER[axis],
          (mm) => words.axisAt(axis, mm),
          (pointInFile) => this.send(setJoint({ ...joint, pointInFile }, `move ${joint.id} along ${axis}`)),
        ),
      )}
      ${this.#result(fit)}
      <div class="row">
        <button class="plain" @click=${() => this.send(removeJoint(joint.id))}>${words.remove(joint.name)}</button>
      </div>
    </fieldset>`;
  }

  #side(joint: BodyJoint, name: Axis, isUp: boolean) {
    const own = axisOf(joint.towards);
    const isChosen = own === name && joint.towards[AXIS_NUMBER[own]] > 0 === isUp;
    return html`<option value=${`${name} ${isUp ? 1 : -1}`} .selected=${isChosen}>
      ${WORDS.wear.sides(name, isUp)}
    </option>`;
  }

  #turnAbout(joint: BodyJoint, word: string): void {
    const axis = NAMES.find((name) => name === word);
    if (axis !== undefined) this.send(setJoint({ ...joint, axis: AXES[axis] }));
  }

  #turnSide(joint: BodyJoint, word: string): void {
    const [name, sign] = word.split(' ');
    const axis = NAMES.find((one) => one === name);
    if (axis === undefined) return;
    const [x, y, z] = AXES[axis].map((at) => (at === 0 ? 0 : Number(sign)));
    const towards: Triple = [x, y, z];
    this.send(setJoint({ ...joint, towards }));
  }

  #bend(joint: BodyJoint, text: string): void {
    const bendDeg = readFigure(text);
    const isRight = Number.isFinite(bendDeg) && bendDeg !== 0 && Math.abs(bendDeg) <= MOST_BEND_DEG;
    this.fault = isRight ? '' : WORDS.wear.bendWrong(MOST_BEND_DEG);
    if (isRight) this.send(setJoint({ ...joint, bendDeg }));
  }

  #result(fit: JointFit | undefined) {
    const words = WORDS.wear;
    if (fit === undefined) return nothing;
    const full = Math.round(Math.abs(fit.joint.bendDeg));
    if (fit.bent === null) return html`<p class="wrong">${words.noBend}</p>`;
    const { freeDeg, roomMm } = fit.bent;
    return roomMm > 0
      ? html`<p class="figure">${words.bendsFree(full, formatMm(roomMm))}</p>`
      : html`<p class="wrong">${words.bendMeets(Math.floor(freeDeg), full)}</p>`;
  }

  #light(fit: JointFit | undefined): void {
    if (fit?.bent == null) return;
    const { x, y, z } = fit.bent.point;
    this.point({ point: [x, y, z] });
  }
}
