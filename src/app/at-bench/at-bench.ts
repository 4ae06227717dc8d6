import { html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShopView, StepPicture } from '../../worker/shop-api.ts';
import { releaseSteps } from '../../project/done-commands.ts';
import '../cautions.ts';
import { WishEvent } from '../events.ts';
import '../files/window-line.ts';
import type { Hold } from '../files/job-lock.ts';
import { JobSection } from '../job-section.ts';
import { SHARED } from '../styles.ts';
import { AT_BENCH_STYLE } from './at-bench-style.ts';
import { AT_BENCH_WORDS } from './at-bench-words.ts';
import { titleOf } from './line-title.ts';
import { Swipe } from './swipe.ts';
import { WakeLock } from './wake-lock.ts';
import { cautionsAt } from './work-cautions.ts';
import './work-line.ts';
import { PHASES, workOrder, type Phase, type WorkLine } from './work-order.ts';
import { goneSteps, lineState, nextOpen, releaseLine, tickLine } from './work-ticks.ts';

/** Stands for the place past the last line. */
const END = 'end';
const WEAR = ['wear'];

/**
 * The work order one line at a time, as large as the screen, to be read from two metres and worked with gloves. Lines are ticked off and stay so in
 * the job; the place is kept between visits.
 */
@customElement('fl-at-bench')
export class AtBench extends JobSection {
  static override styles = [SHARED, AT_BENCH_STYLE];

  @property({ attribute: false }) shop: ShopView | null = null;
  /** Key of the line that was looked at last, or null. */
  @property() line: string | null = null;
  /** Draws the prop as it is when a step of gluing is done. */
  @property({ attribute: false }) pictureOf: (step: number) => Promise<StepPicture | null> = () =>
    Promise.resolve(null);
  /** Which window works on the job, and how often something was to be changed although it is another. */
  @property() hold: Hold = 'mine';
  @property({ type: Number }) refusals = 0;
  @state() private lines: readonly WorkLine[] = [];
  @state() private drawn: { readonly of: string; readonly picture: StepPicture } | null = null;
  /** Null until it is known. */
  @state() private isAwake: boolean | null = null;
  /** Key of the line at which somebody came in. */
  #cameIn: string | null = null;
  #asked = '';
  readonly #swipe = new Swipe();
  readonly #wake = new WakeLock((isAwake) => (this.isAwake = isAwake));

  override connectedCallback(): void {
    super.connectedCallback();
    this.#wake.hold();
    this.#cameIn = null;
    window.addEventListener('keydown', this.#onKey, { capture: true });
    void this.updateComplete.then(() => this.focus());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#wake.release();
    window.removeEventListener('keydown', this.#onKey, { capture: true });
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('.work')?.focus(options);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const isOther = changed.has('project') || changed.has('bench') || changed.has('shop');
    if (this.project === null || !isOther) return;
    this.lines = workOrder(this.project, this.bench, this.shop);
  }

  protected override updated(changed: PropertyValues<this>): void {
    this.#draw();
    if (changed.has('line')) this.renderRoot.querySelector('.work')?.scrollTo(0, 0);
  }

  /** Place of the line in force; past the last one at the end. */
  get #at(): number {
    const { project, lines, line } = this;
    if (project === null || line === END) return lines.length;
    const known = lines.findIndex(({ key }) => key === line);
    return known >= 0 ? known : nextOpen(project, lines);
  }

  protected override render() {
    const { project, lines } = this;
    const words = AT_BENCH_WORDS;
    if (project === null) return nothing;
    const at = this.#at;
    const line = lines.at(at);
    if (lines.length > 0) this.#cameIn ??= line?.key ?? END;
    return html`<header>
        <button class="leave" aria-label=${words.leaveLabel} @click=${this.#leave}>${words.leave}</button>
        ${this.#phases(line)}
      </header>
      <div class="bar">
        ${lines.length === 0 ? nothing : this.#bar()}
        ${this.hold === 'mine' ? nothing : html`<fl-window-line .hold=${this.hold} .refusals=${this.refusals}></fl-window-line>`}
        ${this.#changed()} ${this.#gone()}
      </div>
      <section
        class="work"
        tabindex="0"
        aria-label=${words.label}
        @pointerdown=${(event: PointerEvent) => this.#swipe.begin(event)}
        @pointerup=${(event: PointerEvent) => this.#swiped(this.#swipe.end(event))}
        @pointercancel=${() => this.#swipe.cancel()}
      >
        ${lines.length === 0 ? this.#empty() : line === undefined ? this.#end() : this.#line(line, at)}
      </section>
      <div class="side">
        ${lines.length === 0 ? nothing : this.#foot(line, at)}
        <div class="hint">
          <span class="keys">${words.keys}</span>
          ${this.isAwake === null ? nothing : html`<span>${words.awake[this.isAwake ? 'on' : 'off']}</span>`}
        </div>
        <p class="unseen" aria-live="polite">${line === undefined ? nothing : this.#told(line)}</p>
      </div>`;
  }

  #phases(here: WorkLine | undefined) {
    const words = AT_BENCH_WORDS;
    const phases = PHASES.filter((phase) => this.#of(phase).length > 0);
    return html`<nav aria-label=${words.kinds}>
        ${phases.map((phase) => {
          const all = this.#of(phase);
          const done = all.filter((line) => this.#isDone(line)).length;
          return html`<button
            aria-current=${here?.phase === phase ? 'step' : nothing}
            @click=${() => this.#goToPhase(phase)}
          >
            <span>${words.phases[phase]}</span
            ><span class="share" aria-hidden="true">${words.share(done, all.length)}</span
            ><span class="unseen">: ${words.far(done, all.length)}</span>
          </button>`;
        })}
      </nav>
      <p class="here">${here === undefined ? nothing : this.#place(here)}</p>`;
  }

  #bar() {
    const done = this.lines.filter((line) => this.#isDone(line)).length;
    const label = AT_BENCH_WORDS.far(done, this.lines.length);
    return html`<progress max=${this.lines.length} .value=${done} aria-label=${label}></progress>`;
  }

  #changed() {
    const at = this.lines.flatMap((line, i) => (this.#stateOf(line) === 'changed' ? [i] : []));
    if (at.length === 0) return nothing;
    const words = AT_BENCH_WORDS;
    return html`<div class="told">
      <p role="status">${words.changedLines(at.length, this.#called(this.lines[at[0]]))}</p>
      ${at[0] === this.#at ? nothing : html`<button @click=${() => this.#goTo(at[0])}>${words.see}</button>`}
    </div>`;
  }

  /** Steps are only known to be gone once all of them are known. */
  #gone() {
    const { project, shop } = this;
    const ids = project === null || shop === null ? [] : goneSteps(project, this.lines);
    if (ids.length === 0) return nothing;
    const words = AT_BENCH_WORDS;
    return html`<div class="told">
      <p role="status">${words.goneLines(ids.length)}</p>
      <button @click=${() => this.send(releaseSteps(ids))}>${words.forget}</button>
    </div>`;
  }

  #line(line: WorkLine, at: number) {
    const cameIn = this.lines.findIndex(({ key }) => key === this.#cameIn);
    return html`<fl-work-line
      .project=${this.project}
      .bench=${this.bench}
      .shop=${this.shop}
      .line=${line}
      .lines=${this.lines}
      .cautions=${cautionsAt(this.lines, at, cameIn)}
      .drawn=${this.drawn?.of === this.#pictureName(line) ? this.drawn.picture : null}
    ></fl-work-line>`;
  }

  #empty() {
    const words = AT_BENCH_WORDS;
    const isMaking = this.bench.pieces === null && this.bench.stopped === null;
    return html`<div class="end"><p role="status">${isMaking ? words.making : words.empty}</p></div>`;
  }

  #end() {
    const words = AT_BENCH_WORDS.end;
    const open = this.lines.filter((line) => !this.#isDone(line)).length;
    return html`<div class="end">
      <h1>${open === 0 ? words.title : words.open(open)}</h1>
      ${open === 0 ? html`<fl-cautions manner="told" .work=${WEAR}></fl-cautions>` : nothing}
    </div>`;
  }

  #foot(line: WorkLine | undefined, at: number) {
    const words = AT_BENCH_WORDS;
    const isDone = line !== undefined && this.#isDone(line);
    const isAllDone = this.lines.every((one) => this.#isDone(one));
    return html`<div class="foot" role="group" aria-label=${words.actions}>
      <button ?disabled=${at === 0} @click=${() => this.#step(-1)}>${words.back}</button>
      ${
        line === undefined
          ? html`<button class="tick next" @click=${isAllDone ? this.#leave : this.#goOn}>
              ${isAllDone ? words.leaveLabel : words.end.go}
            </button>`
          : isDone
            ? html`<button class="tick" aria-label=${words.isDoneLabel} @click=${this.#tick}>
                <span aria-hidden="true">✓ </span>${words.isDone}
              </button>`
            : html`<button class="tick next" @click=${this.#tick}>${words.done}</button>`
      }
      <button class=${isDone ? 'next' : ''} ?disabled=${line === undefined} @click=${() => this.#step(1)}>
        ${words.next}
      </button>
    </div>`;
  }

  #called(line: WorkLine): string {
    const { far, near } = titleOf(line, this.bench);
    return [far, near].join(' ').trim();
  }

  #told(line: WorkLine): string {
    const words = AT_BENCH_WORDS;
    const all = this.#of(line.phase);
    return words.spoken(this.#called(line), words.phases[line.phase], all.indexOf(line) + 1, all.length);
  }

  #place(line: WorkLine): string {
    const all = this.#of(line.phase);
    return AT_BENCH_WORDS.place(AT_BENCH_WORDS.phases[line.phase], all.indexOf(line) + 1, all.length);
  }

  #of(phase: Phase): readonly WorkLine[] {
    return this.lines.filter((line) => line.phase === phase);
  }

  #stateOf(line: WorkLine) {
    return this.project === null ? 'open' : lineState(this.project, line);
  }

  #isDone(line: WorkLine): boolean {
    return this.#stateOf(line) === 'done';
  }

  #goTo(at: number): void {
    this.dispatchEvent(new WishEvent({ atBench: { isOpen: true, line: this.lines.at(at)?.key ?? END } }));
  }

  #step(way: -1 | 1): void {
    const to = this.#at + way;
    if (to >= 0 && to <= this.lines.length) this.#goTo(to);
  }

  /** To its first line that is not done; to its first where all are. */
  #goToPhase(phase: Phase): void {
    const all = this.#of(phase);
    this.#goTo(this.lines.indexOf(all.find((line) => !this.#isDone(line)) ?? all[0]));
  }

  readonly #goOn = (): void => {
    if (this.project !== null) this.#goTo(nextOpen(this.project, this.lines));
  };

  /** Ticks the line off and goes on with the next that is open; takes the tick back where it was done. */
  readonly #tick = (): void => {
    const { project, lines } = this;
    const at = this.#at;
    const line = lines.at(at);
    if (project === null || line === undefined) return;
    if (this.#isDone(line)) return this.send(releaseLine(line));
    const command = tickLine(line);
    this.send(command);
    this.#goTo(nextOpen(command.apply(project), lines, at + 1));
  };

  readonly #leave = (): void => {
    const at = this.lines.at(this.#at);
    this.dispatchEvent(new WishEvent({ atBench: { isOpen: false, line: at?.key ?? END } }));
  };

  /** On the screen the next line lies where one reads on. */
  #swiped(way: -1 | 0 | 1): void {
    if (way !== 0) this.#step(this.#isRightToLeft ? (-way as -1 | 1) : way);
  }

  get #isRightToLeft(): boolean {
    return getComputedStyle(this).direction === 'rtl';
  }

  /** Letters are no verbs here: what they would change lies behind. Undo, redo and saving go on to the window. */
  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    event.stopPropagation();
    const ahead = this.#isRightToLeft ? 'ArrowLeft' : 'ArrowRight';
    const isOnButton = event.composedPath()[0] instanceof HTMLButtonElement;
    if (event.key === 'Escape') this.#leave();
    else if (event.key === 'ArrowLeft' || event.key === 'ArrowRight') this.#step(event.key === ahead ? 1 : -1);
    else if (event.key === ' ' && !isOnButton) this.#tick();
    else return;
    event.preventDefault();
  };

  #pictureName(line: WorkLine): string {
    return line.what === 'glue' && line.tick.of === 'step'
      ? [line.step.number, line.key, line.tick.step.as, line.step.makes.pieces.join()].join(' ')
      : '';
  }

  /** Fetches the picture of a step of gluing. One that was called off is asked for again with the next result. */
  #draw(): void {
    const line = this.lines.at(this.#at);
    if (line?.what !== 'glue') return;
    const of = this.#pictureName(line);
    if (this.drawn?.of === of || this.#asked === of) return;
    this.#asked = of;
    void this.pictureOf(line.step.number).then((picture) => {
      if (this.#asked === of) this.#asked = '';
      if (picture !== null) this.drawn = { of, picture };
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-at-bench': AtBench;
  }
}
