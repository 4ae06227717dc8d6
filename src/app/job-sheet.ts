import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Trail } from '../project/history.ts';
import type { Project } from '../project/project.ts';
import type { Comparing } from '../worker/compare-api.ts';
import type { PartsAsking } from '../worker/parts-api.ts';
import type { SaveState } from './autosave.ts';
import { EMPTY_BENCH, type Bench } from './bench-state.ts';
import './cut-list.ts';
import './files-line.ts';
import './finish-line.ts';
import './fit-line.ts';
import { NOT_KEPT, type KeptLook } from './files/kept-look.ts';
import './files/window-line.ts';
import './foam-line.ts';
import './gluing-line.ts';
import './help/field-help.ts';
import './help/guide-line.ts';
import './help/help-sheet.ts';
import './history/history-line.ts';
import './job-foot.ts';
import './job-head.ts';
import type { JobSection } from './job-section.ts';
import './notice-line.ts';
import './paper-line.ts';
import './parts-line.ts';
import './quantity-line.ts';
import './seams-line.ts';
import type { Shelf } from './shelf.ts';
import './sheets-line.ts';
import './size-line.ts';
import type { Storage } from './storage.ts';
import { SHARED } from './styles.ts';
import { FIRST_VIEW, FIRST_WISHES, type ViewState, type Wishes } from './view-state.ts';
import './verdict/next-button.ts';
import type { NextStep } from './verdict/next-step.ts';
import type { Notice } from './workbench.ts';
import { WORDS } from './words.ts';

const NO_SHELF: Shelf = [];

/** The job sheet: the printed build sheet, live, in the order of the work. */
@customElement('fl-job-sheet')
export class JobSheet extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        background: var(--paper);
        border-inline-start: var(--wide) solid var(--ink);
      }
      article {
        --edge: var(--s6);
        max-inline-size: 36rem;
        margin-inline: auto;
        padding-inline: var(--edge);
      }
      /* Lines of the sheet part at fold lines: the long dash and dot of a fold on paper. */
      article > *:not(fl-job-head, fl-next-button, fl-guide-line, fl-notice-line, fl-window-line)::before {
        content: '';
        display: block;
        block-size: 1px;
        margin-inline: calc(-1 * var(--edge));
        background: repeating-linear-gradient(
          to right,
          var(--ink) 0 18px,
          transparent 18px 23px,
          var(--ink) 23px 25px,
          transparent 25px 30px
        );
      }
      /* The button at the head lies over none of what is gone to. */
      article > * {
        scroll-margin-block-start: 72px;
      }
      /* Where the next step of the guided job is done; what stands at the head of the sheet then lies over none of it. */
      article.guided > * {
        scroll-margin-block-start: 16rem;
      }
      article > [data-next] {
        display: block;
        margin-inline-start: calc(-1 * var(--edge));
        padding-inline-start: calc(var(--edge) - var(--s2));
        border-inline-start: var(--s2) solid var(--lamp);
      }
      @media (width < 56.25em) {
        :host {
          border-inline-start: 0;
        }
        article {
          --edge: var(--s4);
        }
      }
    `,
  ];

  @property({ attribute: false }) project: Project | null = null;
  @property({ attribute: false }) bench: Bench = EMPTY_BENCH;
  @property({ attribute: false }) view: ViewState = FIRST_VIEW;
  @property({ attribute: false }) wishes: Wishes = FIRST_WISHES;
  @property({ attribute: false }) notice: Notice | null = null;
  /** Who knows the shapes. */
  @property({ attribute: false }) asking: (PartsAsking & Comparing) | null = null;
  /** The steps that were done. */
  @property({ attribute: false }) trail: Trail | null = null;
  @property() saved: SaveState = 'saved';
  @property({ type: Boolean }) canUndo = false;
  @property({ type: Boolean }) canRedo = false;
  @property() undoLabel = '';
  @property() redoLabel = '';
  /** Name of the job to go back to, or empty. */
  @property() earlier = '';
  /** Where the job in hand is kept, and where all jobs are. */
  @property({ attribute: false }) kept: KeptLook = NOT_KEPT;
  @property({ attribute: false }) storage: Storage | null = null;
  @property() theme = '';
  /** What is best done next. */
  @property({ attribute: false }) next: NextStep | null = null;
  /** True while what is shown is from before the last change. */
  @property({ type: Boolean }) isStale = false;
  /** True while the work at the bench lies over it: nobody sees it, and each tick there would draw all of it anew. */
  @property({ type: Boolean, attribute: 'inert' }) isBehind = false;

  protected override shouldUpdate(): boolean {
    return !this.isBehind;
  }

  /** Brings a line into view, once it is drawn as it stands, and puts the keyboard there, or at a part of it. @param part  tag of that part */
  async goTo(line: string, part?: string): Promise<void> {
    await this.updateComplete;
    const target = this.renderRoot.querySelector<JobSection>(`#${line}`);
    await target?.updateComplete;
    target?.scrollIntoView({ block: 'start' });
    target?.focus({ preventScroll: true });
    if (part !== undefined) target?.focusOn(part);
  }

  /** Presses a button of a line. */
  press(line: string, part: string): void {
    this.renderRoot.querySelector<JobSection>(`#${line}`)?.pressOn(part);
  }

  /** Marks where the next step of the guided job is done. */
  protected override updated(): void {
    const { next } = this.view.help;
    for (const line of this.renderRoot.querySelectorAll('article > *'))
      line.toggleAttribute('data-next', next !== '' && line.id === next);
  }

  protected override render() {
    const { project, bench, view } = this;
    return html`<article aria-label=${WORDS.sheetLabel} class=${this.wishes.guide?.isOpen === true ? 'guided' : ''}>
      <fl-job-head
        id="head"
        .project=${project}
        .saved=${this.saved}
        .canUndo=${this.canUndo}
        .canRedo=${this.canRedo}
        .undoLabel=${this.undoLabel}
        .redoLabel=${this.redoLabel}
        .earlier=${this.earlier}
        .kept=${this.kept}
        .storage=${this.storage}
      ></fl-job-head>
      <fl-next-button .step=${this.next} ?hidden=${this.wishes.guide?.isOpen === true}></fl-next-button>
      <fl-window-line .hold=${this.kept.hold} .refusals=${this.kept.refusals}></fl-window-line>
      ${this.notice === null ? nothing : html`<fl-notice-line .notice=${this.notice}></fl-notice-line>`}
      ${this.#guide()}
      <fl-parts-line
        id="parts"
        .project=${project}
        .bench=${bench}
        .choice=${view.choice}
        .asking=${this.asking}
      ></fl-parts-line>
      ${project !== null && project.parts.length === 0 ? nothing : this.#ofSculpt()}
      <fl-sheets-line
        id="sheets"
        .project=${project}
        .bench=${bench}
        .choice=${view.choice}
        .search=${view.layoutSearch}
        .shelf=${this.wishes.shelf ?? NO_SHELF}
      ></fl-sheets-line>
      <fl-paper-line
        id="paper"
        .project=${project}
        .bench=${bench}
        .choice=${view.choice}
        .sheet=${view.sheet}
        .isAsked=${view.printAsked !== null}
        .isNext=${this.next?.verb === 'save-pdf'}
        .printers=${this.wishes.printers ?? []}
      ></fl-paper-line>
      <fl-cut-list id="cuts" .project=${project} .bench=${bench} .choice=${view.choice}></fl-cut-list>
      <fl-gluing-line
        id="gluing"
        .project=${project}
        .bench=${bench}
        .gluing=${view.gluing}
        .choice=${view.choice}
      ></fl-gluing-line>
      <fl-finish-line
        id="finish"
        .project=${project}
        .bench=${bench}
        .shop=${view.gluing.shop}
        .isShown=${view.colouring === 'paint'}
      ></fl-finish-line>
      <fl-quantity-line id="takes" .project=${project} .bench=${bench} .shop=${view.gluing.shop}></fl-quantity-line>
      <fl-files-line
        id="files"
        .project=${project}
        .bench=${bench}
        .shop=${view.gluing.shop}
        .making=${view.making}
        .wishes=${this.wishes}
      ></fl-files-line>
      <fl-history-line
        id="history"
        .project=${project}
        .bench=${bench}
        .trail=${this.trail}
        .asking=${this.asking}
      ></fl-history-line>
      <fl-job-foot .wishes=${this.wishes} .unit=${project?.lengthUnit ?? 'mm'}></fl-job-foot>
    </article>`;
  }

  /** The guided job: offered until it is begun or put away. */
  #guide() {
    const { project, view, wishes } = this;
    if (project === null || wishes.guide?.isOpen === false) return nothing;
    return html`<fl-guide-line
      .project=${project}
      .view=${view}
      .wishes=${wishes}
      .unit=${project.lengthUnit}
    ></fl-guide-line>`;
  }

  /** What is asked of a sculpt: a prop of other parts alone has no such lines. */
  #ofSculpt() {
    const { project, bench, view } = this;
    const measured = view.from !== null && view.to !== null ? ([view.from, view.to] as const) : null;
    return html`<fl-size-line
        id="size"
        .project=${project}
        .bench=${bench}
        .theme=${this.theme}
        .tool=${view.tool}
        .measured=${measured}
      ></fl-size-line>
      <fl-seams-line
        id="seams"
        .project=${project}
        .bench=${bench}
        .tool=${view.tool}
        .reach=${view.reach}
        .isMirrored=${view.isMirrored}
        .proposals=${view.proposals}
        .costs=${view.costs}
        .proposalPct=${view.proposalPct}
      ></fl-seams-line>
      <fl-foam-line id="foam" .project=${project} .bench=${bench} .sheet=${view.sheet}></fl-foam-line>
      <fl-fit-line
        id="fit"
        .project=${project}
        .bench=${bench}
        .choice=${view.choice}
        .colouring=${view.colouring}
        .sheet=${view.sheet}
        .inHand=${view.plane?.id ?? ''}
        .isStale=${this.isStale}
      ></fl-fit-line>`;
  }
}
