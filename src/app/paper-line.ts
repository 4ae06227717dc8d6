import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import data from '../../shared/papers.json';
import { PAPER_LANGUAGES, type PaperLanguage } from '../base/paper-language.ts';
import type { PrinterProfile } from '../model/printer.ts';
import type { Page } from '../model/page.ts';
import { setPaper } from '../project/commands.ts';
import { forgetGone, tickPrinted } from '../project/done-commands.ts';
import { goneOf, piecesToPrint, standingOf, type PieceStanding } from '../project/piece-standing.ts';
import { setMirrored } from '../project/mirrored-commands.ts';
import { paperLanguageOf, setPaperLanguage } from '../project/paper-language-commands.ts';
import { setRuled } from '../project/ruled-commands.ts';
import type { PaperChoice } from '../project/project.ts';
import { allCut } from './bench-state.ts';
import { ChooseEvent } from './events.ts';
import { KEEP_WORDS } from './files/keep-words.ts';
import './findings.ts';
import { hasWrong } from './findings.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import './mock-up-fields.ts';
import type { LengthEvent } from './length-field.ts';
import './page-picture.ts';
import './printer-fields.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { PAPER_LANGUAGE_WORDS } from './paper-language-words.ts';
import { RULED_WORDS } from './ruled-words.ts';
import { TWIN_WORDS } from './twin-words.ts';
import { VERDICT_WORDS } from './verdict/verdict-words.ts';
import './verdict/verdict-view.ts';
import { verdictOf } from './verdict/verdict.ts';
import { WORDS } from './words.ts';

/** A sheet of one's own to begin with, mm. */
const FIRST_CUSTOM = { widthMm: 300, heightMm: 450 };

/** Which paper the templates are printed on, how they part into pages, and what goes to the printer. */
@customElement('fl-paper-line')
export class PaperLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      .fields {
        align-items: end;
      }
      .pages {
        display: flex;
        gap: var(--s3);
        overflow-x: auto;
        padding: var(--s1) var(--s1) var(--s3);
        scroll-snap-type: x proximity;
      }
      .pages button {
        flex: none;
        display: grid;
        gap: var(--s1);
        padding: var(--s2);
        border-color: transparent;
        background: none;
        justify-items: center;
        scroll-snap-align: start;
      }
      .pages button[aria-pressed='true'] {
        background: var(--lamp);
      }
      fl-page-picture {
        block-size: 132px;
      }
      .files {
        display: grid;
        gap: var(--s3);
      }
      .ask {
        display: grid;
        gap: var(--s2);
        padding: var(--s3);
        border: var(--wide) solid var(--wrong);
      }
      .files button.first {
        text-align: start;
        padding-block: var(--s2);
        font-size: var(--t-large);
        min-block-size: 52px;
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;
  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  @property({ type: Number }) sheet = 1;
  /** True while it is asked whether to save although something stops it. */
  @property({ type: Boolean }) isAsked = false;
  /** True where saving the templates is the next step. */
  @property({ type: Boolean }) isNext = false;
  /** Printers measured before, whatever the job. */
  @property({ attribute: false }) printers: readonly PrinterProfile[] = [];

  protected override render() {
    const paper = this.project?.paper;
    const pages = this.bench.paper?.pages ?? [];
    const mark = hasWrong(this.bench, ['tile']) ? 'wrong' : pages.length > 0 ? 'so' : 'missing';
    return html`<fl-job-line heading=${WORDS.lines.paper} mark=${mark}>
      ${
        pages.length === 0 || paper === undefined
          ? html`<p slot="answer" class="soft">${WORDS.paper.waiting}</p>`
          : html`<p slot="answer">${WORDS.paper.answer(pages.length, WORDS.paper.name(paper.name))}</p>
              <p class="small soft">${WORDS.paper.trueScale}</p>`
      }
      ${paper === undefined ? nothing : this.#fields(paper)} ${pages.length === 0 ? nothing : this.#pages(pages)}
      ${this.project === null ? nothing : this.#files(pages.length > 0)} ${pages.length === 0 ? nothing : this.#done()}
      ${pages.length === 0 ? nothing : html`<fl-mock-up-fields .project=${this.project}></fl-mock-up-fields>`}
      <fl-findings
        .bench=${this.bench}
        .project=${this.project}
        .steps=${['tile', 'paper', 'printer', 'done']}
      ></fl-findings>
    </fl-job-line>`;
  }

  #fields(paper: PaperChoice) {
    const names = [...data.papers.map(({ name }) => name), 'roll', 'custom'];
    const hasWidth = paper.name === 'roll' || paper.name === 'custom';
    return html`<div class="row fields">
        <label>
          <span class="soft">${WORDS.paper.paper}</span><br />
          <select data-means="paper" @change=${this.#takeName}>
            ${names.map((name) => html`<option value=${name} ?selected=${name === paper.name}>${WORDS.paper.name(name)}</option>`)}
          </select>
        </label>
        <label>
          <span class="soft">${WORDS.paper.stands}</span><br />
          <select data-means="paper-stands" @change=${this.#takeOrientation}>
            ${(['portrait', 'landscape'] as const).map(
              (way) =>
                html`<option value=${way} ?selected=${way === paper.orientation}>
                  ${WORDS.paper.orientation[way]}
                </option>`,
            )}
          </select>
        </label>
      </div>
      <div class="row fields">
        ${hasWidth ? this.#length('widthMm', WORDS.paper.width, paper.widthMm ?? data.roll.widthMm, 100, 5080) : nothing}
        ${paper.name === 'custom' ? this.#length('heightMm', WORDS.paper.height, paper.heightMm ?? FIRST_CUSTOM.heightMm, 100, 5080) : nothing}
        ${this.#length('marginMm', WORDS.paper.margin, paper.marginMm, 0, 60)}
        ${this.#length('overlapMm', WORDS.paper.overlap, paper.overlapMm, 0, 60)}
      </div>
      ${this.#language(paper)} ${this.#mirrored(paper)} ${this.#ruled(paper)}
      <fl-printer-fields .project=${this.project} .known=${this.printers}></fl-printer-fields>`;
  }

  #language(paper: PaperChoice) {
    const language = paperLanguageOf({ paper });
    return html`<div class="row fields">
      <label>
        <span class="soft">${PAPER_LANGUAGE_WORDS.paper}</span><br />
        <select data-means="paper-language" @change=${this.#takeLanguage}>
          ${PAPER_LANGUAGES.map(
            (one) => html`<option value=${one} ?selected=${one === language}>${WORDS.foot.languages[one]}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  /** Asked only where pieces mirror each other. */
  #mirrored({ mirrored = 'once' }: PaperChoice) {
    if (this.bench.pieces?.pieces.every(({ twinOf }) => twinOf === undefined) ?? true) return nothing;
    return html`<div class="row fields">
      <label>
        <span class="soft">${TWIN_WORDS.paper}</span><br />
        <select data-means="twins-paper" @change=${this.#takeMirrored}>
          ${(['once', 'each'] as const).map(
            (way) => html`<option value=${way} ?selected=${way === mirrored}>${TWIN_WORDS.ways[way]}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  /** Asked only where there are such strips. */
  #ruled({ ruled = 'tell' }: PaperChoice) {
    if (ruled === 'tell' && this.bench.paper?.ruled === undefined) return nothing;
    return html`<div class="row fields">
      <label>
        <span class="soft">${RULED_WORDS.paper}</span><br />
        <select data-means="ruled-paper" @change=${this.#takeRuled}>
          ${(['tell', 'print'] as const).map(
            (way) => html`<option value=${way} ?selected=${way === ruled}>${RULED_WORDS.ways[way]}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  #length(key: 'widthMm' | 'heightMm' | 'marginMm' | 'overlapMm', label: string, mm: number, min: number, max: number) {
    return html`<fl-length-field
      data-means=${`page-${key}`}
      .label=${label}
      .mm=${mm}
      .unit=${this.unit}
      .min=${min}
      .max=${max}
      @fl-length=${(event: LengthEvent) => this.#change({ [key]: event.mm })}
    ></fl-length-field>`;
  }

  #pages(pages: readonly Page[]) {
    const chosen = this.choice.kind === 'page' ? this.choice.page : -1;
    return html`<div class="pages" role="group" aria-label=${WORDS.paper.pages} tabindex="0">
      ${pages.map(
        (page, i) =>
          html`<button
            aria-pressed=${i === chosen}
            @click=${() => this.dispatchEvent(new ChooseEvent(i === chosen ? NOTHING : { kind: 'page', page: i }))}
          >
            <fl-page-picture .page=${page} boldness="3"></fl-page-picture>
            ${WORDS.paper.pageName(page)}
          </button>`,
      )}
    </div>`;
  }

  /** What goes to the printer; all else is picked under the files. */
  #files(hasPages: boolean) {
    return html`<div class="files">
      <fl-verdict
        .project=${this.project}
        .bench=${this.bench}
        .sheet=${this.sheet}
        .choice=${this.choice}
      ></fl-verdict>
      <button
        class="first ${hasPages && this.isNext ? 'next' : ''}"
        ?disabled=${!hasPages}
        @click=${() => this.ask('save-pdf')}
      >
        ${WORDS.paper.save}
      </button>
      <div class="row">
        <button ?disabled=${!hasPages} aria-describedby="print-why" @click=${() => this.ask('print')}>
          ${KEEP_WORDS.print.button}
        </button>
        <p id="print-why" class="small soft">${KEEP_WORDS.print.why}</p>
      </div>
      ${this.isAsked && hasPages ? this.#question() : nothing}
    </div>`;
  }

  /** Asked once more, in place, where something stops it. */
  #question() {
    const { question, yes, no } = VERDICT_WORDS.ask;
    const stops = verdictOf(this.bench).told.error.length;
    if (stops === 0) return nothing;
    return html`<div class="ask" role="group" tabindex="-1" aria-label=${VERDICT_WORDS.heading}>
      <p>${question(stops)}</p>
      <div class="row">
        <button @click=${() => this.ask('see-findings')}>${no}</button>
        <button @click=${() => this.ask('save-anyway')}>${yes}</button>
      </div>
    </div>`;
  }

  /** How much is printed and cut, and what of it needs paper anew. */
  #done() {
    const pieces = allCut(this.bench);
    const done = this.project?.done;
    const standings = standingOf(done, pieces);
    const count = (is: (standing: PieceStanding) => boolean): number => standings.filter(is).length;
    const gone = goneOf(done, pieces).length;
    const wanted = piecesToPrint(done, pieces);
    const printed = count(({ paper }) => paper === 'printed');
    const stale = count(({ paper, foam }) => paper === 'stale' && foam === 'none');
    const cut = count(({ foam }) => foam === 'cut');
    const changed = count(({ foam }) => foam === 'changed');
    return html`<p class="small soft" role="status">${WORDS.done.state(printed, stale, cut, changed, pieces.length)}</p>
      <div class="row">
        ${
          wanted.length === 0
            ? nothing
            : html`<button @click=${() => this.send(tickPrinted(wanted))}>${WORDS.done.tickAll(wanted.length)}</button>`
        }
        ${
          wanted.length === 0 || wanted.length === pieces.length
            ? nothing
            : html`<button @click=${() => this.ask('save-changed')}>${WORDS.done.saveChanged(wanted.length)}</button>`
        }
        ${gone === 0 ? nothing : html`<button @click=${() => this.send(forgetGone(pieces))}>${WORDS.done.forgetGone(gone)}</button>`}
      </div>`;
  }

  #change(patch: Partial<PaperChoice>): void {
    if (this.project !== null) this.send(setPaper({ ...this.project.paper, ...patch }));
  }

  #takeName(event: Event): void {
    const name = (event.target as HTMLSelectElement).value;
    const paper = this.project?.paper;
    if (paper === undefined) return;
    const { widthMm: _, heightMm: __, ...kept } = paper;
    const size = name === 'custom' ? FIRST_CUSTOM : name === 'roll' ? { widthMm: data.roll.widthMm } : {};
    this.send(setPaper({ ...kept, name, ...size }));
  }

  #takeMirrored(event: Event): void {
    this.send(setMirrored((event.target as HTMLSelectElement).value as NonNullable<PaperChoice['mirrored']>));
  }

  #takeLanguage(event: Event): void {
    this.send(setPaperLanguage((event.target as HTMLSelectElement).value as PaperLanguage));
  }

  #takeRuled(event: Event): void {
    this.send(setRuled((event.target as HTMLSelectElement).value as NonNullable<PaperChoice['ruled']>));
  }

  #takeOrientation(event: Event): void {
    this.#change({ orientation: (event.target as HTMLSelectElement).value as PaperChoice['orientation'] });
  }
}
