import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatMm, formatPercent } from '../base/format-length.ts';
import type { Core, CoreFit, CoreModel, CoreRod } from '../model/clearance.ts';
import { isCoreModel, removeCore, setCore, sizeBy } from '../project/wear-commands.ts';
import { AXES, AXIS_NUMBER, axisOf } from './axes.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { moveButton } from './move-button.ts';
import { placeSlider } from './place-slider.ts';
import { SHARED } from './styles.ts';
import { WEAR_STYLE } from './wear-style.ts';
import { WORDS } from './words.ts';

type RodField = 'diameterMm' | 'lengthMm';
const UNITS: readonly CoreModel['unit'][] = ['sculpt', 'mm', 'cm', 'm', 'in'];

/** A rod, pipe or model that the part sits on, and the room it has. Pointed at, the tightest place is lit on the bench. */
@customElement('fl-core-fields')
export class CoreFields extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE, WEAR_STYLE];

  @property({ attribute: false }) core: Core | null = null;

  protected override render() {
    const { core } = this;
    if (core === null) return nothing;
    const fit = this.bench.bodyFit?.cores.find((one) => one.core.id === core.id);
    const light = (): void => this.#light(fit);
    const dim = (): void => this.point(null);
    return html`<fieldset class="stack" @pointerenter=${light} @pointerleave=${dim} @focusin=${light} @focusout=${dim}>
      <legend>${core.name}</legend>
      ${isCoreModel(core) ? this.#model(core) : this.#rod(core)} ${this.#result(fit)}
      <div class="row">
        ${this.#sizeButton(fit)} ${moveButton(fit?.moveMm, this.sculptPart, (command) => this.send(command))}
        <button class="plain" @click=${() => this.send(removeCore(core.id))}>${WORDS.wear.remove(core.name)}</button>
      </div>
    </fieldset>`;
  }

  #rod(core: CoreRod) {
    const words = WORDS.wear;
    const axis = axisOf(core.direction);
    return html`<div class="fields">
        <label
          >${words.along}
          <select
            data-means="core-axis"
            @change=${(event: Event) => this.#turn(core, (event.target as HTMLSelectElement).value)}
          >
            ${Object.keys(AXES).map((name) => html`<option value=${name} .selected=${name === axis}>${name}</option>`)}
          </select>
        </label>
        ${this.#field(core, 'diameterMm', words.diameter)} ${this.#field(core, 'lengthMm', words.length)}
        ${this.#wanted(core)}
      </div>
      ${this.#place(core, axis)}`;
  }

  #model(core: CoreModel) {
    const words = WORDS.wear;
    const { sculpt } = this.bench;
    const take = (event: Event): void => {
      const unit = UNITS.find((one) => one === (event.target as HTMLSelectElement).value);
      if (unit !== undefined) this.send(setCore({ ...core, unit }));
    };
    return html`<p class="small soft">${words.coreFile(core.source.fileName)}</p>
      <div class="fields">
        <label
          >${words.coreUnit}
          <select data-means="core-unit" @change=${take}>
            ${UNITS.map((unit) => html`<option value=${unit} .selected=${unit === core.unit}>${words.coreUnits[unit]}</option>`)}
          </select>
        </label>
        ${this.#wanted(core)}
      </div>
      ${
        sculpt === null
          ? nothing
          : (['x', 'y', 'z'] as const).map((axis) =>
              placeSlider(
                sculpt,
                core.pointInFile,
                AXIS_NUMBER[axis],
                (mm) => words.zeroAt(axis, mm),
                (pointInFile) => this.send(setCore({ ...core, pointInFile }, `move ${core.id} along ${axis}`)),
              ),
            )
      }`;
  }

  #wanted(core: Core) {
    return html`<fl-length-field
      data-means="room"
      label=${WORDS.wear.wanted}
      .mm=${core.roomMm ?? null}
      .unit=${this.unit}
      .min=${0}
      .max=${10_000}
      @fl-length=${({ mm }: LengthEvent) => this.send(setCore({ ...core, roomMm: mm }))}
    ></fl-length-field>`;
  }

  /** Across its axis anywhere; along it only where it ends. */
  #place(core: CoreRod, along: 'x' | 'y' | 'z') {
    const { sculpt } = this.bench;
    if (sculpt === null) return nothing;
    return (['x', 'y', 'z'] as const)
      .filter((axis) => axis !== along || core.lengthMm !== undefined)
      .map((axis) =>
        placeSlider(
          sculpt,
          core.pointInFile,
          AXIS_NUMBER[axis],
          (mm) => WORDS.wear.axisAt(axis, mm),
          (pointInFile) => this.send(setCore({ ...core, pointInFile }, `move ${core.id} along ${axis}`)),
        ),
      );
  }

  #field(core: CoreRod, name: RodField, label: string) {
    return html`<fl-length-field
      data-means=${`core-${name}`}
      label=${label}
      .mm=${core[name] ?? null}
      .unit=${this.unit}
      .min=${1}
      .max=${10_000}
      @fl-length=${({ mm }: LengthEvent) => this.send(setCore({ ...core, [name]: mm }))}
    ></fl-length-field>`;
  }

  #turn(core: CoreRod, word: string): void {
    const [axis] = (Object.keys(AXES) as (keyof typeof AXES)[]).filter((name) => name === word);
    if (axis !== undefined) this.send(setCore({ ...core, direction: AXES[axis] }));
  }

  #result(fit: CoreFit | undefined) {
    const words = WORDS.wear;
    if (fit === undefined) return nothing;
    if (fit.problem !== undefined) return html`<p class="wrong">${words.coreUnread}</p>`;
    if (fit.stand === 'outside') return html`<p class="wrong">${words.coreOutside}</p>`;
    if (fit.stand === 'swallows') return html`<p class="wrong">${words.coreSwallows}</p>`;
    if (fit.tightest === null) return html`<p class="wrong">${words.noFoam}</p>`;
    const { clearanceMm } = fit.tightest;
    return clearanceMm < 0
      ? html`<p class="wrong">${words.inFoam(formatMm(-clearanceMm))}</p>`
      : html`<p class="figure">${words.clearance(formatMm(clearanceMm))}</p>`;
  }

  #sizeButton(fit: CoreFit | undefined) {
    const factor = fit?.sizeFactor ?? null;
    const { sculpt } = this.bench;
    if (factor === null || sculpt?.mmPerUnit == null) return nothing;
    const longestMm = Math.max(...sculpt.facts.boxSize) * sculpt.mmPerUnit;
    return html`<button @click=${() => this.send(sizeBy(factor, longestMm))}>
      ${WORDS.wear.size(formatPercent(100 * factor))}
    </button>`;
  }

  #light(fit: CoreFit | undefined): void {
    if (fit?.tightest == null) return;
    const { point, triangle } = fit.tightest;
    this.point({ point: [point.x, point.y, point.z], triangles: [triangle] });
  }
}
