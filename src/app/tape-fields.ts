import { html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatInches, formatMm, formatPercent } from '../base/format-length.ts';
import type { GirthTape, TapeFit } from '../model/girth.ts';
import { removeTape, setTape, sizeBy } from '../project/wear-commands.ts';
import { AXES, AXIS_NUMBER, axisOf } from './axes.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { moveButton } from './move-button.ts';
import { placeSlider } from './place-slider.ts';
import { SHARED } from './styles.ts';
import { holdVerbOf } from './tape-verbs.ts';
import { WEAR_STYLE } from './wear-style.ts';
import { WORDS } from './words.ts';

type BodyField = 'bodyGirthMm' | 'easeMm' | 'bodyBreadthMm' | 'bodyLengthMm';

/** A size nearer to the present one than this share is the present one: a knife does not cut finer. */
const SAME_SIZE = 1e-5;

/** One girth tape: where it lies, what the body measures, and what the foam leaves it. Pointed at, it is drawn on the bench. */
@customElement('fl-tape-fields')
export class TapeFields extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE, WEAR_STYLE];

  @property({ attribute: false }) tape: GirthTape | null = null;
  /** True while its plane stands on the bench. */
  @property({ type: Boolean }) isInHand = false;
  #isPointedAt = false;

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('fl-length-field')?.focus(options);
  }

  protected override updated(changed: PropertyValues<this>): void {
    // The line on the bench follows while the plane is moved.
    if (this.#isPointedAt && changed.has('bench')) this.#light();
  }

  protected override render() {
    const { tape } = this;
    if (tape === null) return nothing;
    const words = WORDS.wear;
    return html`<fieldset
      class="stack"
      @pointerenter=${this.#light}
      @pointerleave=${this.#left}
      @focusin=${this.#light}
      @focusout=${this.#dim}
    >
      <legend>${tape.name}</legend>
      ${this.#place(tape)}
      <div class="fields">
        ${this.#field(tape, 'bodyGirthMm', words.bodyGirth)} ${this.#field(tape, 'easeMm', words.ease)}
        ${this.#field(tape, 'bodyBreadthMm', words.bodyBreadth)} ${this.#field(tape, 'bodyLengthMm', words.bodyLength)}
      </div>
      ${this.#result(this.#fit)}
      <div class="row">
        <button aria-pressed=${this.isInHand} @click=${() => this.ask(holdVerbOf(tape.id))}>${words.hold}</button>
        ${this.#sizeButton(this.#fit)}
        ${moveButton(this.#fit?.moveMm, this.sculptPart, (command) => this.send(command))}
        <button class="plain" @click=${() => this.send(removeTape(tape.id))}>${words.remove(tape.name)}</button>
      </div>
    </fieldset>`;
  }

  get #fit(): TapeFit | undefined {
    return this.bench.bodyFit?.tapes.find(({ tape }) => tape.id === this.tape?.id);
  }

  #place(tape: GirthTape) {
    const words = WORDS.wear;
    const sculpt = this.bench.sculpt;
    if (sculpt === null) return nothing;
    const axis = axisOf(tape.normal);
    return html`<div class="fields">
        <label
          >${words.across}
          <select
            data-means="tape-axis"
            @change=${(event: Event) => this.#turn(tape, (event.target as HTMLSelectElement).value)}
          >
            ${Object.keys(AXES).map((name) => html`<option value=${name} .selected=${name === axis}>${name}</option>`)}
          </select>
        </label>
      </div>
      ${placeSlider(sculpt, tape.pointInFile, AXIS_NUMBER[axis], words.height, (pointInFile) =>
        this.send(setTape({ ...tape, pointInFile }, `move ${tape.id}`)),
      )}`;
  }

  #turn(tape: GirthTape, word: string): void {
    const [axis] = (Object.keys(AXES) as (keyof typeof AXES)[]).filter((name) => name === word);
    if (axis !== undefined) this.send(setTape({ ...tape, normal: AXES[axis] }));
  }

  #field(tape: GirthTape, name: BodyField, label: string) {
    return html`<fl-length-field
      data-means=${`tape-${name}`}
      label=${label}
      .mm=${tape[name] ?? null}
      .unit=${this.unit}
      .min=${name === 'easeMm' ? 0 : 1}
      .max=${10_000}
      @fl-length=${({ mm }: LengthEvent) => this.send(setTape({ ...tape, [name]: mm }))}
    ></fl-length-field>`;
  }

  #result(fit: TapeFit | undefined) {
    const words = WORDS.wear;
    if (fit === undefined) return nothing;
    const { back, face, missingMm, clearanceMm, paddingMm } = fit;
    if (back === null) return html`<p class="wrong">${words.beside}</p>`;
    const said = [words.box(formatMm(back.breadthMm), formatMm(back.lengthMm))];
    if (face !== null) said.push(words.outside(formatMm(face.girthMm)));
    const room: string[] = [];
    if (missingMm > 0) room.push(words.tight(formatMm(missingMm)));
    else if (clearanceMm !== null) room.push(words.room(formatMm(clearanceMm)));
    if (paddingMm !== null) room.push(words.padding(formatMm(paddingMm)));
    return html`<p class="figure">${words.inside(formatMm(back.girthMm), formatInches(back.girthMm))}</p>
      <p class="small">${said.join('; ')}.</p>
      ${room.length === 0 ? nothing : html`<p class=${missingMm > 0 ? 'wrong' : ''}>${room.join('; ')}.</p>`}`;
  }

  #sizeButton(fit: TapeFit | undefined) {
    if (fit?.tape.bodyGirthMm === undefined || fit.back === null) return nothing;
    const words = WORDS.wear;
    const { sizeFactor } = fit;
    if (sizeFactor === null) return html`<span class="small soft">${words.noSize}</span>`;
    if (Math.abs(sizeFactor - 1) < SAME_SIZE) return html`<span class="small soft">${words.sized}</span>`;
    return html`<button @click=${() => this.#size(sizeFactor)}>${words.size(formatPercent(100 * sizeFactor))}</button>`;
  }

  #size(factor: number): void {
    const { sculpt } = this.bench;
    if (sculpt?.mmPerUnit == null) return;
    this.send(sizeBy(factor, Math.max(...sculpt.facts.boxSize) * sculpt.mmPerUnit));
  }

  readonly #light = (): void => {
    this.#isPointedAt = true;
    const fit = this.#fit;
    const rings = [fit?.face, fit?.back].flatMap((measure) => (measure == null ? [] : [measure.hull]));
    this.point({ rings });
  };

  /** The pointer may wander off while the keyboard stays. */
  readonly #left = (): void => {
    if (!this.matches(':focus-within')) this.#dim();
  };

  readonly #dim = (): void => {
    this.#isPointedAt = false;
    this.point(null);
  };
}
