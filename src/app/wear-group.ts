import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { GirthTape } from '../model/girth.ts';
import type { SculptPart } from '../project/project.ts';
import { freeId, MOST_OFF_MM, setCore, setJoint, setOff, setTape } from '../project/wear-commands.ts';
import { AXES } from './axes.ts';
import './cautions.ts';
import './core-fields.ts';
import { CoreFileEvent } from './events.ts';
import './joint-fields.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import './pass-fields.ts';
import { SHARED } from './styles.ts';
import './tape-fields.ts';
import type { TapeFields } from './tape-fields.ts';
import { holdVerbOf } from './tape-verbs.ts';
import { WORDS } from './words.ts';

/** A rod that most poles are thinner than, mm (common practice). */
const FIRST_DIAMETER_MM = 32;

/** How far a new joint bends, degrees: most elbows and knees bend farther. */
const FIRST_BEND_DEG = 90;

/** How the part fits whoever wears it and what it sits on. */
@customElement('fl-wear-group')
export class WearGroup extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
    `,
  ];

  /** Id of the tape in hand, or empty. */
  @property() inHand = '';
  /** True from the first girth until the tape it laid is measured. */
  #isFirst = false;

  /** Puts the keyboard where the girth of the body is typed. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('fl-length-field, fl-tape-fields')?.focus(options);
  }

  /** The field of the first girth is gone with it: the keyboard goes on at what can be done with it. */
  protected override updated(): void {
    const tape = this.renderRoot.querySelector<TapeFields>('fl-tape-fields');
    if (!this.#isFirst || tape === null || (this.bench.bodyFit?.tapes ?? []).length === 0) return;
    this.#isFirst = false;
    void tape.updateComplete.then(() => tape.focusOn('.row button:nth-of-type(2)'));
  }

  protected override render() {
    const part = this.sculptPart;
    if (part === null || this.bench.sculpt?.sized !== true) return nothing;
    const words = WORDS.wear;
    const { tapes = [], core: cores = [], joints = [] } = part;
    return html`<details ?open=${tapes.length + cores.length + joints.length > 0 || part.worn !== undefined}>
        <summary>${words.summary}</summary>
        <div class="stack">
          <p class="small soft">${words.why}</p>
          ${tapes.map(
            (tape) =>
              html`<fl-tape-fields
                .project=${this.project}
                .bench=${this.bench}
                .tape=${tape}
                .isInHand=${this.inHand === tape.id}
              ></fl-tape-fields>`,
          )}
          ${cores.map(
            (core) =>
              html`<fl-core-fields .project=${this.project} .bench=${this.bench} .core=${core}></fl-core-fields>`,
          )}
          ${joints.map(
            (joint) =>
              html`<fl-joint-fields .project=${this.project} .bench=${this.bench} .joint=${joint}></fl-joint-fields>`,
          )}
          ${this.#off(part)}
          <div class="row">
            <button @click=${() => this.#lay(part)}>${words.addTape}</button>
            <button @click=${() => this.#put(part)}>${words.addCore}</button>
            <button @click=${() => this.renderRoot.querySelector<HTMLInputElement>('#core-file')?.click()}>
              ${words.addCoreModel}
            </button>
            <input id="core-file" type="file" accept=".obj,.stl" hidden @change=${this.#choose} />
            <button @click=${() => this.#bend(part)}>${words.addJoint}</button>
          </div>
          ${
            tapes.length + joints.length === 0 && part.worn === undefined
              ? nothing
              : html`<fl-pass-fields .project=${this.project} .bench=${this.bench}></fl-pass-fields>
                  <fl-cautions .work=${['wear']} label=${words.caution}></fl-cautions>`
          }
        </div>
      </details>
      ${tapes.length === 0 ? this.#firstGirth(part) : nothing}`;
  }

  /** How far the foam stands off the sculpt; shown once there is a body or a core to fit, or it does. */
  #off({ tapes = [], core = [], offMm = 0 }: SculptPart) {
    if (tapes.length + core.length === 0 && offMm === 0) return nothing;
    const words = WORDS.wear;
    return html`<fl-length-field
        data-means="off"
        label=${words.off}
        .mm=${offMm}
        .unit=${this.unit}
        .min=${-MOST_OFF_MM}
        .max=${MOST_OFF_MM}
        @fl-length=${({ mm }: LengthEvent) => this.send(setOff(mm))}
      ></fl-length-field>
      <p class="small soft">${words.offWhy}</p>`;
  }

  /** What a tape is laid for most: typed at once, it is laid level through the middle. */
  #firstGirth(part: SculptPart) {
    return html`<fl-length-field
      data-means="tape-bodyGirthMm"
      label=${WORDS.wear.bodyGirth}
      .unit=${this.unit}
      .min=${1}
      .max=${10_000}
      @fl-length=${({ mm }: LengthEvent) => {
        this.#isFirst = true;
        this.send(setTape({ ...this.#newTape(part), bodyGirthMm: mm }));
      }}
    ></fl-length-field>`;
  }

  #lay(part: SculptPart): void {
    const tape = this.#newTape(part);
    this.send(setTape(tape));
    this.ask(holdVerbOf(tape.id));
  }

  /** A new tape lies level through the middle of the part. */
  #newTape({ tapes = [], upAxis }: SculptPart): GirthTape {
    const name = WORDS.wear.tapeName(tapes.length + 1);
    return { id: freeId('tape', tapes), name, pointInFile: this.#middle(), normal: AXES[upAxis] };
  }

  #put({ core = [], upAxis }: SculptPart): void {
    const id = freeId('core', core);
    const name = WORDS.wear.coreName(core.length + 1);
    const place = { pointInFile: this.#middle(), direction: AXES[upAxis] };
    this.send(setCore({ id, name, ...place, diameterMm: FIRST_DIAMETER_MM }));
  }

  #choose(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file !== undefined) this.dispatchEvent(new CoreFileEvent(file));
    // The same file may be chosen again.
    input.value = '';
  }

  /** A new joint turns what is above its middle, about a level axis. */
  #bend({ joints = [], upAxis }: SculptPart): void {
    const id = freeId('joint', joints);
    const name = WORDS.wear.jointName(joints.length + 1);
    const axis = upAxis === 'x' ? AXES.z : AXES.x;
    const place = { pointInFile: this.#middle(), axis, towards: AXES[upAxis] };
    this.send(setJoint({ id, name, ...place, bendDeg: FIRST_BEND_DEG }));
  }

  #middle(): readonly [number, number, number] {
    const facts = this.bench.sculpt?.facts;
    const at = (axis: number): number => (facts === undefined ? 0 : facts.boxMin[axis] + facts.boxSize[axis] / 2);
    return [at(0), at(1), at(2)];
  }
}
