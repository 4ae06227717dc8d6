import { LitElement, css, html, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { formatArea, formatLength, formatNumber } from '../base/format-length.ts';
import { connectWorkshop } from '../worker/client.ts';
import './cut-list.ts';
import { edgeFacts } from './edge-facts.ts';
import { ARROWS } from './edge-walk.ts';
import type { CommandEvent, ChooseEvent, PointEvent, SampleEvent, SharpEvent, VerbEvent, ViewEvent, WishEvent } from './events.ts';
import './finder.ts';
import './fit-line.ts';
import './foam-line.ts';
import './job-foot.ts';
import './job-head.ts';
import { openFile, openSample, restoreLast } from './opening.ts';
import './page-picture.ts';
import './paper-line.ts';
import './progress-line.ts';
import { SAMPLES } from './samples.ts';
import { downloadFile } from './saving.ts';
import { joinEdges, partEdges, partSharp } from './seam-actions.ts';
import { beginWalk, walk } from './seam-walk.ts';
import './seams-line.ts';
import './sheets-line.ts';
import './size-line.ts';
import { StagePicks } from './stage-picks.ts';
import './stage-rule.ts';
import type { StageGoEvent } from './stage-rule.ts';
import './stage.ts';
import type { Stage, StageHoverEvent, StagePickEvent } from './stage.ts';
import { BrowserStorage } from './storage.ts';
import { SHARED } from './styles.ts';
import './verb-row.ts';
import { verbsFor, type Verb, type WindowActions } from './verbs.ts';
import { NOTHING } from './view-state.ts';
import { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** How long the pieces travel from one stop to the next, ms. */
const TRAVEL_MS = 400;

/** The window: the bench and the job sheet beside it. Gives each element its slice of the workbench and turns events into changes. */
@customElement('fl-app')
export class App extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(24rem, 29rem);
        block-size: 100vh;
        background: var(--paper);
      }
      main {
        display: grid;
        grid-template-rows: minmax(0, 1fr) auto;
        min-block-size: 0;
        position: relative;
      }
      fl-stage {
        min-block-size: 0;
      }
      .rule {
        padding: var(--s3) var(--s4) var(--s3);
        background: var(--paper);
        border-block-start: var(--wide) solid var(--ink);
      }
      .over {
        position: absolute;
        inset-inline: var(--s4);
        inset-block-end: 7.2rem;
        display: grid;
        gap: var(--s2);
        justify-items: start;
        pointer-events: none;
      }
      .over > * {
        pointer-events: auto;
      }
      fl-verb-row {
        max-inline-size: 100%;
      }
      fl-finder {
        position: absolute;
        inset-block-start: var(--s6);
        inset-inline: max(var(--s4), 50% - 18rem);
        z-index: 2;
      }
      .page {
        position: absolute;
        inset: 0 0 6.6rem 0;
        padding: var(--s4) var(--s4) 4.5rem;
        display: grid;
        place-items: center;
        background: var(--bench-ground);
      }
      .page fl-page-picture {
        block-size: 100%;
        max-inline-size: 100%;
        aspect-ratio: var(--shape);
      }
      .drop {
        position: absolute;
        inset: var(--s4);
        display: grid;
        place-content: center;
        border: var(--wide) dashed var(--lamp);
        background: color-mix(in srgb, var(--paper) 82%, transparent);
        font-size: var(--t-head);
        z-index: 3;
      }
      .reading {
        position: absolute;
        inset-block-start: 40%;
        inset-inline: 0;
        text-align: center;
        font-size: var(--t-figure);
        pointer-events: none;
      }
      aside {
        overflow-y: auto;
        border-inline-start: var(--wide) solid var(--ink);
        padding: var(--s6) var(--s6) 0;
        min-block-size: 0;
        scroll-padding-block: var(--s6);
      }
      aside > * + * {
        border-block-start: var(--narrow) solid var(--rule);
      }
      fl-job-head {
        display: block;
        padding-block-end: var(--s4);
      }
      .notice {
        display: flex;
        align-items: baseline;
        justify-content: space-between;
        gap: var(--s3);
        padding-block: var(--s3);
        font-size: var(--t-small);
      }
      .notice.problem {
        font-size: var(--t-body);
        font-weight: 600;
        color: var(--wrong);
      }
      @media (width < 900px) {
        :host {
          display: block;
          block-size: auto;
        }
        main {
          block-size: 62vh;
          min-block-size: 320px;
        }
        aside {
          overflow: visible;
          border-inline-start: 0;
          border-block-start: var(--wide) solid var(--ink);
          padding-inline: var(--s4);
        }
      }
      @media (width < 560px) {
        .over {
          inset-inline: var(--s2);
          inset-block-end: 5.6rem;
        }
      }
    `,
  ];

  @state() private isDropping = false;
  @state() private theme = '';
  @query('fl-stage') private stage!: Stage;
  readonly workbench = new Workbench(connectWorkshop(), new BrowserStorage());
  readonly #picks = new StagePicks(this.workbench);
  readonly #dark = window.matchMedia('(prefers-color-scheme: dark)');
  readonly #still = window.matchMedia('(prefers-reduced-motion: reduce)');
  #travel = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    this.workbench.addEventListener('change', this.#changed);
    this.#dark.addEventListener('change', this.#changed);
    window.addEventListener('keydown', this.#onKey);
    window.addEventListener('dragover', this.#onDragOver);
    window.addEventListener('dragleave', this.#onDragLeave);
    window.addEventListener('drop', this.#onDrop);
    document.addEventListener('visibilitychange', this.#onHide);
    void this.#begin();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.workbench.removeEventListener('change', this.#changed);
    this.#dark.removeEventListener('change', this.#changed);
    window.removeEventListener('keydown', this.#onKey);
    window.removeEventListener('dragover', this.#onDragOver);
    window.removeEventListener('dragleave', this.#onDragLeave);
    window.removeEventListener('drop', this.#onDrop);
    document.removeEventListener('visibilitychange', this.#onHide);
  }

  async #begin(): Promise<void> {
    if (await restoreLast(this.workbench)) return;
    await openSample(this.workbench, SAMPLES[0]);
  }

  protected override render() {
    const { workbench } = this;
    const { project, bench, view, notice } = workbench;
    const history = workbench.history;
    const part = workbench.part;
    const foam = project?.foams.find((sheet) => sheet.id === part?.layers[0].foam);
    const limits = foam?.stretchLimits ?? { noticePct: 3, tooMuchPct: 8 };
    const measured = view.from !== null && view.to !== null ? ([view.from, view.to] as const) : null;
    return html`<main
        @fl-stage-hover=${(event: StageHoverEvent) => this.#picks.hover(event.pick)}
        @fl-stage-pick=${(event: StagePickEvent) => this.#picks.click(event.pick)}
        @fl-stage-go=${(event: StageGoEvent) => this.#rollTo(event.stage)}
        @fl-view=${this.#onView}
        @fl-verb=${this.#onVerb}
        @fl-choose=${this.#onChoose}
        @fl-point=${this.#onPoint}
      >
        <fl-stage
          .bench=${bench}
          .view=${view}
          .up=${part?.upAxis ?? 'y'}
          .theme=${this.theme}
          .limitPct=${limits.tooMuchPct}
          .tool=${view.tool}
          .stale=${workbench.isStale && workbench.progress === null}
        ></fl-stage>
        ${this.#page()}
        ${workbench.reading === null || bench.sculpt !== null
          ? nothing
          : html`<p class="reading">${WORDS.stage.reading(workbench.reading)}</p>`}
        <div class="over">
          <fl-progress-line .progress=${workbench.progress}></fl-progress-line>
          ${this.#chosen()}
        </div>
        <div class="rule"><fl-stage-rule .stage=${view.stage} .last=${this.#lastStage()}></fl-stage-rule></div>
        ${view.finderOpen ? html`<fl-finder .verbs=${this.#verbs()}></fl-finder>` : nothing}
        ${this.isDropping ? html`<div class="drop">${WORDS.stage.drop}</div>` : nothing}
      </main>
      <aside
        aria-label=${project?.name ?? WORDS.name}
        @fl-command=${(event: CommandEvent) => workbench.run(event.command)}
        @fl-choose=${this.#onChoose}
        @fl-point=${this.#onPoint}
        @fl-verb=${this.#onVerb}
        @fl-view=${this.#onView}
        @fl-sample=${this.#onSample}
        @fl-sharp=${(event: SharpEvent) => void partSharp(workbench, event.angleDeg)}
        @fl-wish=${(event: WishEvent) => workbench.setWishes(event.patch)}
      >
        <fl-job-head
          .project=${project}
          .saved=${workbench.autosave.state}
          .canUndo=${history?.canUndo ?? false}
          .canRedo=${history?.canRedo ?? false}
          .undoLabel=${history?.undoLabel ?? ''}
          .redoLabel=${history?.redoLabel ?? ''}
          .earlier=${workbench.before?.name ?? ''}
        ></fl-job-head>
        ${notice === null
          ? nothing
          : html`<div class="notice ${notice.tone}" role=${notice.tone === 'problem' ? 'alert' : 'status'}>
              <span>${notice.text}</span>
              <span class="row">
                ${notice.remedy === undefined
                  ? nothing
                  : html`<button
                      @click=${() => {
                        workbench.setNotice(null);
                        notice.remedy?.run();
                      }}
                    >
                      ${notice.remedy.label}
                    </button>`}
                <button class="plain" @click=${() => workbench.setNotice(null)}>${WORDS.notice.close}</button>
              </span>
            </div>`}
        <fl-size-line id="size" .project=${project} .bench=${bench} .theme=${this.theme} .tool=${view.tool} .measured=${measured}></fl-size-line>
        <fl-seams-line id="seams" .project=${project} .bench=${bench} .tool=${view.tool}></fl-seams-line>
        <fl-foam-line id="foam" .project=${project} .bench=${bench}></fl-foam-line>
        <fl-fit-line
          id="fit"
          .project=${project}
          .bench=${bench}
          .choice=${view.choice}
          .reading=${view.reading}
          .colouring=${view.colouring}
        ></fl-fit-line>
        <fl-sheets-line id="sheets" .project=${project} .bench=${bench} .choice=${view.choice}></fl-sheets-line>
        <fl-paper-line id="paper" .project=${project} .bench=${bench} .choice=${view.choice}></fl-paper-line>
        <fl-cut-list id="cuts" .project=${project} .bench=${bench} .choice=${view.choice}></fl-cut-list>
        <fl-job-foot .wishes=${workbench.wishes} .unit=${project?.lengthUnit ?? 'mm'}></fl-job-foot>
      </aside>
      <p class="unseen" role="status" aria-live="polite">${workbench.spoken}</p>
      <input class="unseen" type="file" accept=".obj,.stl,.json" tabindex="-1" aria-hidden="true" @change=${this.#onFile} />`;
  }

  protected override updated(): void {
    const { theme, contrast } = this.workbench.wishes;
    const root = document.documentElement;
    if (theme === 'auto') root.removeAttribute('data-theme');
    else root.dataset['theme'] = theme;
    if (contrast === 'auto') root.removeAttribute('data-contrast');
    else root.dataset['contrast'] = contrast;
    this.theme = `${theme} ${contrast} ${this.#dark.matches ? 'dark' : 'light'}`;
  }

  /** The farthest stop the pieces can reach yet. */
  #lastStage(): number {
    const { pieces, sheets } = this.workbench.bench;
    if (pieces === null || pieces.pieces.length === 0) return 0;
    return sheets === null || sheets.sheets.length === 0 ? 2 : 3;
  }

  /** The chosen page, large, in place of the bench. */
  #page() {
    const { bench, view } = this.workbench;
    const page = view.choice.kind === 'page' ? bench.paper?.pages[view.choice.page] : undefined;
    if (page === undefined) return nothing;
    return html`<div class="page">
      <fl-page-picture .page=${page} style="--shape: ${page.widthMm} / ${page.heightMm}"></fl-page-picture>
    </div>`;
  }

  /** What is chosen and what can be done with it. */
  #chosen() {
    const { workbench } = this;
    const { bench, view, project } = workbench;
    const unit = project?.lengthUnit ?? 'mm';
    const near = this.#verbs().filter((verb) => verb.isNear === true);
    const row = (name: string, facts: string) =>
      html`<fl-verb-row .name=${name} .facts=${facts} .verbs=${near} .back=${WORDS.verbs.back}></fl-verb-row>`;
    if (view.tool === 'walk') {
      const facts = view.walked === null ? null : edgeFacts(bench, view.walked);
      return row(WORDS.chosen.walk, facts === null ? WORDS.tools.walk : WORDS.chosen.edgeFacts(facts, unit));
    }
    if (view.tool !== 'choose') return row('', WORDS.tools[view.tool]);
    const { choice } = view;
    if (choice.kind === 'edge') {
      const facts = edgeFacts(bench, choice.edge);
      return facts === null ? nothing : row(WORDS.chosen.edge, WORDS.chosen.edgeFacts(facts, unit));
    }
    if (choice.kind === 'seam') {
      const seam = bench.pieces?.seams.find((candidate) => candidate.id === choice.seam);
      if (seam === undefined) return nothing;
      const { min, max } = seam.bevelDeg;
      const bevel = Math.abs(max - min) < 0.5 ? `${formatNumber(max)}°` : `${formatNumber(min)}° to ${formatNumber(max)}°`;
      return row(WORDS.chosen.seam(seam.letter), WORDS.chosen.seamFacts(formatLength(seam.trueLengthMm, unit), bevel, seam.kind));
    }
    if (choice.kind === 'piece') {
      const piece = bench.pieces?.pieces.find((candidate) => candidate.id === choice.piece);
      if (piece === undefined) return nothing;
      const facts = WORDS.chosen.pieceFacts(formatLength(piece.thicknessMm, unit), formatArea(piece.areaMm2, unit), piece.bendReason);
      return row(`${piece.number} ${piece.name}`, facts);
    }
    if (choice.kind === 'page') return row(WORDS.chosen.page(bench.paper?.pages[choice.page]?.name ?? ''), '');
    return nothing;
  }

  #verbs(): Verb[] {
    return verbsFor(this.workbench, this.#actions);
  }

  readonly #actions: WindowActions = {
    look: (side) => this.stage.look(side),
    frame: (what) => this.stage.frame(what),
    rollTo: (stage) => this.#rollTo(stage),
    beginWalk: () => {
      if (this.workbench.view.tool === 'walk') return this.#back();
      this.workbench.setView({ stage: 0, choice: this.workbench.view.choice });
      beginWalk(this.workbench, (corner) => this.stage.screenOf(corner), this.stage.middle);
      this.stage.focusCanvas();
    },
    openFile: () => this.renderRoot.querySelector<HTMLInputElement>('input[type="file"]')?.click(),
    save: (kind) => void this.#save(kind),
    goTo: (line) => {
      const target = this.renderRoot.querySelector<HTMLElement>(`#${line}`);
      target?.scrollIntoView({ block: 'start', behavior: this.#still.matches ? 'auto' : 'smooth' });
    },
  };

  async #save(kind: 'pdf' | 'svg' | 'report' | 'project'): Promise<void> {
    const file = await this.workbench.makeFile(kind, new Date().toISOString().slice(0, 10));
    if (file !== null) downloadFile(file);
  }

  /** Lets the pieces travel to a stop; at once where motion is not wanted. */
  #rollTo(stage: number): void {
    cancelAnimationFrame(this.#travel);
    const from = this.workbench.view.stage;
    if (this.#still.matches) return this.workbench.setView({ stage });
    const began = performance.now();
    const step = (now: number): void => {
      const t = Math.min(1, Math.max(0, (now - began) / TRAVEL_MS));
      const eased = t * t * (3 - 2 * t);
      this.workbench.setView({ stage: from + (stage - from) * eased });
      if (t < 1) this.#travel = requestAnimationFrame(step);
    };
    this.#travel = requestAnimationFrame(step);
  }

  /** Esc steps back: the finder first, then the tool, then the choice. Nothing is lost. */
  #back(): void {
    const { view } = this.workbench;
    if (view.finderOpen) this.workbench.setView({ finderOpen: false });
    else if (view.tool !== 'choose') {
      this.workbench.setView({ tool: 'choose', from: null, to: null, cursor: null, walked: null, preview: null });
    } else this.workbench.setView({ choice: NOTHING, preview: null, pointed: null });
  }

  #doVerb(id: string): void {
    const { workbench } = this;
    if (workbench.view.finderOpen) workbench.setView({ finderOpen: false });
    switch (id) {
      case 'back':
        return this.#back();
      case 'cancel':
        return void workbench.cancel();
      case 'find':
        return workbench.setView({ finderOpen: true });
      case 'go-back':
        return workbench.goBack();
      case 'measure':
        return workbench.setView({ tool: 'measure', from: null, to: null, stage: 0, choice: NOTHING });
      default:
        this.#verbs()
          .find((verb) => verb.id === id)
          ?.run();
    }
  }

  readonly #changed = (): void => this.requestUpdate();
  readonly #onVerb = (event: VerbEvent): void => this.#doVerb(event.verb);
  readonly #onView = (event: ViewEvent): void => {
    cancelAnimationFrame(this.#travel);
    this.workbench.setView(event.patch);
  };
  readonly #onChoose = (event: ChooseEvent): void => this.workbench.setView({ choice: event.choice, tool: 'choose' });
  readonly #onPoint = (event: PointEvent): void => this.workbench.setView({ pointed: event.pointed });
  readonly #onSample = (event: SampleEvent): void => {
    const sample = SAMPLES.find((candidate) => candidate.id === event.sample);
    if (sample !== undefined) void openSample(this.workbench, sample);
  };
  readonly #onFile = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file !== undefined) void openFile(this.workbench, file);
    input.value = '';
  };
  readonly #onHide = (): void => {
    if (document.visibilityState === 'hidden') void this.workbench.autosave.flush();
  };

  readonly #onDragOver = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    this.isDropping = true;
  };
  readonly #onDragLeave = (event: DragEvent): void => {
    if (event.relatedTarget === null) this.isDropping = false;
  };
  readonly #onDrop = (event: DragEvent): void => {
    const [file] = event.dataTransfer?.files ?? [];
    this.isDropping = false;
    if (file === undefined) return;
    event.preventDefault();
    void openFile(this.workbench, file);
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented) return;
    if (event.key === 'Escape') return this.#back();
    if (event.ctrlKey || event.metaKey) return this.#onCommandKey(event);
    if (event.altKey || isTyping(event)) return;
    const { workbench } = this;
    if (workbench.view.tool === 'walk') {
      if (event.key in ARROWS) {
        event.preventDefault();
        walk(workbench, event.key, event.shiftKey, (corner) => this.stage.screenOf(corner));
        return;
      }
      if (event.key === ' ' && workbench.view.walked !== null) {
        event.preventDefault();
        this.#turnWalked(workbench.view.walked);
        return;
      }
    }
    if (!workbench.wishes.letterKeys) return;
    if (event.key === '/') {
      event.preventDefault();
      workbench.setView({ finderOpen: true });
      return;
    }
    const verb = this.#verbs().find((candidate) => candidate.key === event.key.toLowerCase());
    if (verb === undefined || event.shiftKey) return;
    event.preventDefault();
    verb.run();
  };

  #turnWalked(edge: number): void {
    const { seams } = this.workbench.bench;
    if ((seams?.chainOfEdge[edge] ?? -1) >= 0) joinEdges(this.workbench, [edge]);
    else partEdges(this.workbench, [edge]);
  }

  #onCommandKey(event: KeyboardEvent): void {
    if (isTyping(event) && event.key.toLowerCase() === 'z') return;
    const act: Readonly<Record<string, () => void>> = {
      z: () => (event.shiftKey ? this.workbench.redo() : this.workbench.undo()),
      y: () => this.workbench.redo(),
      s: () => void this.#save('project'),
      o: () => this.#actions.openFile(),
    };
    const action = act[event.key.toLowerCase()];
    if (action === undefined) return;
    event.preventDefault();
    action();
  }
}

/** True while keys belong to a field: letters there are text, arrows move in it. */
function isTyping(event: Event): boolean {
  const [target] = event.composedPath();
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && !['radio', 'checkbox', 'button'].includes(target.type);
}
