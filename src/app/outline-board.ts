import { LitElement, css, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatLength, type LengthUnit } from '../base/format-length.ts';
import {
  faultOfOutline,
  gridStepMm,
  withCornerAfter,
  withCornerAt,
  withoutCorner,
  type OutlinePoints,
} from '../viewport/outline-edit.ts';
import { ARROWS, handSteps } from './hand-steps.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { STOCK_WORDS } from './stock-words.ts';
import { SHARED } from './styles.ts';

/** An outline was changed and can be kept: packed x, y, mm. */
export class OutlineEvent extends Event {
  constructor(readonly points: readonly number[]) {
    super('fl-outline', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-outline': OutlineEvent;
  }
}

/** One outline on a picture with a grid: its corners are dragged, moved by keys or typed. What is no outline is said and not sent. */
@customElement('fl-outline-board')
export class OutlineBoard extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        max-block-size: 20rem;
        background: var(--paper-high);
        border: var(--narrow) solid var(--rule);
        touch-action: none;
      }
      .sheet {
        fill: var(--foam);
      }
      .grid {
        stroke: var(--rule-soft);
        stroke-width: 1px;
        vector-effect: non-scaling-stroke;
        fill: none;
      }
      .grid.on-foam {
        stroke: color-mix(in srgb, var(--on-foam) 22%, transparent);
      }
      .ring {
        fill: color-mix(in srgb, var(--foam-cut) 60%, transparent);
        stroke: var(--ink);
        stroke-width: 2px;
        vector-effect: non-scaling-stroke;
      }
      .is-zone .ring {
        fill: url(#hatch);
        stroke: var(--on-foam);
      }
      .other {
        fill: url(#hatch);
        stroke: var(--on-foam);
        stroke-width: 1px;
        vector-effect: non-scaling-stroke;
      }
      .is-wrong .ring {
        stroke: var(--wrong);
        stroke-dasharray: 6 4;
      }
      path.dot,
      path.half,
      path.reach {
        stroke-linecap: round;
        vector-effect: non-scaling-stroke;
        fill: none;
      }
      path.reach {
        stroke: transparent;
        stroke-width: 26px;
      }
      path.rim {
        stroke: var(--ink);
        stroke-width: 15px;
        stroke-linecap: round;
        vector-effect: non-scaling-stroke;
      }
      path.dot {
        stroke: var(--paper-high);
        stroke-width: 11px;
      }
      path.half {
        stroke: var(--ink-soft);
        stroke-width: 7px;
      }
      .is-zone path.half {
        stroke: var(--on-foam);
      }
      g.corner,
      g.between {
        cursor: grab;
      }
      g.corner.in-hand path.dot {
        stroke: var(--lamp);
      }
      g.corner:focus,
      g.corner:focus-visible {
        outline: 0;
      }
      g.corner:focus-visible path.rim {
        stroke-width: 21px;
        stroke: var(--lamp-ink);
      }
      .hatch-line {
        stroke: var(--on-foam);
      }
      .fields {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s4);
        align-items: end;
        margin-block-start: var(--s2);
      }
      .fields label {
        display: flex;
        flex-direction: column;
        color: var(--ink-soft);
      }
      .wrong {
        color: var(--wrong);
        font-weight: 600;
      }
    `,
  ];

  /** The outline as it is kept: packed x, y, mm, y up. */
  @property({ attribute: false }) points: OutlinePoints = [];
  /** The sheet it lies on, as an outline; none where it is the sheet itself. */
  @property({ attribute: false }) sheet: OutlinePoints | null = null;
  /** Other outlines on that sheet, not to be moved here. */
  @property({ attribute: false }) others: readonly OutlinePoints[] = [];
  @property() unit: LengthUnit = 'mm';
  /** What it is the outline of. */
  @property() name = '';
  @state() private inHand = 0;
  /** As it is drawn while it is dragged, or while it is no outline. */
  @state() private draft: OutlinePoints | null = null;
  /** What the picture shows: it stays while a corner is dragged. */
  #frame = { minX: 0, minY: 0, width: 1, height: 1 };
  #grab: { readonly corner: number; readonly pointer: number } | null = null;

  private get shown(): OutlinePoints {
    return this.draft ?? this.points;
  }

  private get within(): { widthMm: number; heightMm: number } | null {
    return this.sheet === null ? null : sizeOf(this.sheet);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('points')) this.draft = null;
    if (this.#grab === null) this.#frame = frameRound(this.sheet ?? this.shown);
    this.inHand = Math.max(0, Math.min(this.inHand, this.shown.length / 2 - 1));
  }

  protected override render() {
    const { shown } = this;
    const { minX, minY, width, height } = this.#frame;
    const fault = faultOfOutline(shown, this.within);
    const corners = Array.from({ length: shown.length / 2 }, (_, i) => i);
    const step = gridStepMm(Math.max(width, height), this.unit);
    const words = STOCK_WORDS.outline;
    return html`<svg
        class="${this.sheet === null ? '' : 'is-zone'} ${fault === null ? '' : 'is-wrong'}"
        viewBox="${minX} ${-minY - height} ${width} ${height}"
        role="group"
        aria-label=${words.label(this.name)}
        @pointermove=${this.#drag}
        @pointerup=${this.#drop}
        @pointercancel=${this.#drop}
      >
        <defs>
          <pattern
            id="hatch"
            width=${step / 5}
            height=${step / 5}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line class="hatch-line" x1="0" y1="0" x2="0" y2=${step / 5} stroke-width=${step / 10} />
          </pattern>
        </defs>
        <g transform="scale(1 -1)">
          ${this.sheet === null ? nothing : svg`<path class="sheet" d=${pathOf(this.sheet)} />`}
          <path class="grid ${this.sheet === null ? '' : 'on-foam'}" d=${gridPath(this.#frame, step)} />
          ${this.others.map((other) => svg`<path class="other" d=${pathOf(other)} />`)}
          <path class="ring" d=${pathOf(shown)} />
          ${corners.map((i) => this.#between(i))} ${corners.map((i) => this.#corner(i, corners.length))}
        </g>
      </svg>
      <p class="small soft">${words.grid(formatLength(step, this.unit))} ${words.how}</p>
      <p class="small wrong" role="status">${fault === null ? '' : words.faults[fault]}</p>
      ${this.#fields(corners.length)}`;
  }

  #corner(i: number, of: number) {
    const [x, y] = this.#at(i);
    const d = `M${x} ${y}h0`;
    const label = STOCK_WORDS.outline.corner(i + 1, of, formatLength(x, this.unit), formatLength(y, this.unit));
    return svg`<g
      class="corner ${i === this.inHand ? 'in-hand' : ''}"
      data-corner=${i}
      tabindex="0"
      role="button"
      aria-label=${label}
      @focus=${() => (this.inHand = i)}
      @keydown=${(event: KeyboardEvent) => this.#key(event, i)}
      @pointerdown=${(event: PointerEvent) => this.#take(event, i)}
    ><path class="rim" d=${d} /><path class="dot" d=${d} /><path class="reach" d=${d} /></g>`;
  }

  #between(i: number) {
    const [x, y] = this.#at(i);
    const [nextX, nextY] = this.#at((i + 1) % (this.shown.length / 2));
    const d = `M${(x + nextX) / 2} ${(y + nextY) / 2}h0`;
    return svg`<g class="between" @pointerdown=${(event: PointerEvent) => {
      this.draft = withCornerAfter(this.shown, i);
      this.#take(event, i + 1);
    }}><path class="half" d=${d} /><path class="reach" d=${d} /></g>`;
  }

  #fields(of: number) {
    const words = STOCK_WORDS.outline;
    const [x, y] = this.#at(this.inHand);
    const field = (label: string, mm: number, take: (mm: number) => void) =>
      html`<fl-length-field
        data-means="outline-place"
        .label=${label}
        .mm=${mm}
        .unit=${this.unit}
        .min=${-MOST_MM}
        .max=${MOST_MM}
        @fl-length=${(event: LengthEvent) => {
          event.stopPropagation();
          take(event.mm);
        }}
      ></fl-length-field>`;
    return html`<div class="fields">
      <label>
        ${words.corners}
        <select
          data-means="outline-corner"
          @change=${(event: Event) => (this.inHand = Number((event.target as HTMLSelectElement).value))}
        >
          ${Array.from({ length: of }, (_, i) => html`<option value=${i} .selected=${i === this.inHand}>${i + 1}</option>`)}
        </select>
      </label>
      ${field(words.across, x, (mm) => this.#put(withCornerAt(this.shown, this.inHand, mm, y)))}
      ${field(words.up, y, (mm) => this.#put(withCornerAt(this.shown, this.inHand, x, mm)))}
      <button class="small" @click=${() => this.#addAfter(this.inHand)}>${words.add}</button>
      <button class="small" ?disabled=${of <= 3} @click=${() => this.#takeOut(this.inHand)}>${words.remove}</button>
    </div>`;
  }

  #at(corner: number): readonly [number, number] {
    return [this.shown[2 * corner] ?? 0, this.shown[2 * corner + 1] ?? 0];
  }

  #key(event: KeyboardEvent, corner: number): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = ARROWS[event.key];
    const [x, y] = this.#at(corner);
    const { coarseMm, fineMm } = handSteps(this.unit);
    const step = event.shiftKey ? fineMm : coarseMm;
    if (way !== undefined) this.#put(withCornerAt(this.shown, corner, x + step * way[0], y + step * way[1]));
    else if (event.key === '+' || event.key === 'Insert') this.#addAfter(corner);
    else if (event.key === 'Delete' || event.key === 'Backspace') this.#takeOut(corner);
    else return;
    event.preventDefault();
  }

  #addAfter(corner: number): void {
    this.inHand = corner + 1;
    this.#put(withCornerAfter(this.shown, corner));
    void this.#focusCorner();
  }

  #takeOut(corner: number): void {
    if (this.shown.length <= 6) return;
    this.#put(withoutCorner(this.shown, corner));
    void this.#focusCorner();
  }

  async #focusCorner(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<SVGGElement>(`[data-corner="${this.inHand}"]`)?.focus();
  }

  #take(event: PointerEvent, corner: number): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.inHand = corner;
    this.#grab = { corner, pointer: event.pointerId };
    this.renderRoot.querySelector('svg')?.setPointerCapture(event.pointerId);
    void this.#focusCorner();
  }

  #drag(event: PointerEvent): void {
    const grab = this.#grab;
    if (grab?.pointer !== event.pointerId) return;
    const place = this.#placeOf(event);
    if (place === null) return;
    const { dragMm } = handSteps(this.unit);
    const [x, y] = [place.x, -place.y].map((mm) => Math.round(mm / dragMm) * dragMm);
    this.draft = withCornerAt(this.shown, grab.corner, x, y);
  }

  #drop(event: PointerEvent): void {
    if (this.#grab?.pointer !== event.pointerId) return;
    this.#grab = null;
    if (this.draft !== null) this.#put(this.draft);
    this.requestUpdate();
  }

  /** Where the pointer is in the numbers of the picture, y down. */
  #placeOf({ clientX, clientY }: PointerEvent): DOMPoint | null {
    const toScreen = this.renderRoot.querySelector('svg')?.getScreenCTM();
    return toScreen == null ? null : new DOMPoint(clientX, clientY).matrixTransform(toScreen.inverse());
  }

  /** Sends what is an outline; keeps the rest on show with what is wrong said. */
  #put(points: OutlinePoints): void {
    this.draft = points;
    if (faultOfOutline(points, this.within) === null) this.dispatchEvent(new OutlineEvent(points));
  }
}

/** Longest length typed, mm. */
const MOST_MM = 10_000;

const pathOf = (points: OutlinePoints): string => {
  let d = '';
  for (let i = 0; i + 1 < points.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${points[i]} ${points[i + 1]}`;
  return `${d}Z`;
};

interface Frame {
  readonly minX: number;
  readonly minY: number;
  readonly width: number;
  readonly height: number;
}

/** Room round an outline, so that its corners can be pulled out. */
function frameRound(points: OutlinePoints): Frame {
  const { widthMm, heightMm, minX, minY } = sizeOf(points);
  const room = 0.12 * Math.max(widthMm, heightMm, 10);
  return { minX: minX - room, minY: minY - room, width: widthMm + 2 * room, height: heightMm + 2 * room };
}

function sizeOf(points: OutlinePoints): { minX: number; minY: number; widthMm: number; heightMm: number } {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < points.length; i += 2) {
    [minX, maxX] = [Math.min(minX, points[i]), Math.max(maxX, points[i])];
    [minY, maxY] = [Math.min(minY, points[i + 1]), Math.max(maxY, points[i + 1])];
  }
  return points.length === 0
    ? { minX: 0, minY: 0, widthMm: 100, heightMm: 100 }
    : { minX, minY, widthMm: maxX - minX, heightMm: maxY - minY };
}

function gridPath({ minX, minY, width, height }: Frame, step: number): string {
  const lines: string[] = [];
  for (let x = Math.ceil(minX / step) * step; x <= minX + width; x += step) lines.push(`M${x} ${minY}v${height}`);
  for (let y = Math.ceil(minY / step) * step; y <= minY + height; y += step) lines.push(`M${minX} ${y}h${width}`);
  return lines.join('');
}
