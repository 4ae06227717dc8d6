import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { renameProject } from '../project/commands.ts';
import type { Project } from '../project/project.ts';
import { AT_BENCH_WORDS } from './at-bench/at-bench-words.ts';
import { AT_SHOP_WORDS } from './at-shop/at-shop-words.ts';
import type { SaveState } from './autosave.ts';
import { dataText } from './data-words.ts';
import { CommandEvent, SampleEvent, VerbEvent } from './events.ts';
import './files/earlier-states.ts';
import { KEEP_WORDS } from './files/keep-words.ts';
import { NOT_KEPT, type KeptLook } from './files/kept-look.ts';
import { labelText } from './label-words.ts';
import { SAMPLES, type Sample } from './samples.ts';
import { PART_WORDS } from './part-words.ts';
import type { Storage } from './storage.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Title block of the job sheet: whose job, which revision, where it is kept, and the way to other jobs. */
@customElement('fl-job-head')
export class JobHead extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        padding-block: var(--s4);
      }
      .top {
        display: flex;
        justify-content: space-between;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s1) var(--s3);
      }
      .top + .row {
        margin-block-start: var(--s3);
      }
      h1 {
        font-size: var(--t-small);
        font-weight: 700;
        display: flex;
        align-items: center;
        gap: var(--s2);
      }
      h1 svg {
        flex: none;
        inline-size: 20px;
        block-size: 20px;
      }
      input.name {
        inline-size: 100%;
        font-size: var(--t-title);
        font-weight: 640;
        line-height: 1.15;
        letter-spacing: -0.012em;
        padding: 0;
        margin-block-start: var(--s3);
        background: none;
        border-block-end-color: transparent;
        text-overflow: ellipsis;
      }
      input.name:hover,
      input.name:focus {
        border-block-end-color: var(--ink);
      }
      .facts {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--s4);
        margin-block: var(--s1) var(--s3);
        font-size: var(--t-small);
        color: var(--ink-soft);
      }
      .kit {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 var(--s3);
        font-size: var(--t-small);
        margin-block-start: var(--s2);
      }
      .kit button {
        margin-inline: 0;
        padding-inline: 0;
      }
      .kit button[aria-current='true'] {
        font-weight: 700;
        text-decoration: none;
      }
      .changed {
        color: var(--ink);
        font-weight: 700;
      }
      .changed::before {
        content: '';
        display: inline-block;
        inline-size: 0.6em;
        block-size: 0.6em;
        margin-inline-end: var(--s1);
        border-radius: 50%;
        background: var(--lamp-ink);
      }
      .work {
        margin-block-start: var(--s2);
      }
      .sentence {
        margin-block-start: var(--s2);
      }
    `,
  ];

  @property({ attribute: false }) project: Project | null = null;
  @property() saved: SaveState = 'saved';
  @property({ type: Boolean }) canUndo = false;
  @property({ type: Boolean }) canRedo = false;
  /** Names of what undo and redo would do. */
  @property() undoLabel = '';
  @property() redoLabel = '';
  /** Name of the job to go back to, or empty. */
  @property() earlier = '';
  @property({ attribute: false }) kept: KeptLook = NOT_KEPT;
  /** Where jobs are kept between visits. */
  @property({ attribute: false }) storage: Storage | null = null;

  protected override render() {
    const { project } = this;
    return html`<div class="top">
        <h1>
          <svg
            viewBox="0 0 20 20"
            aria-hidden="true"
            fill="none"
            stroke="currentColor"
            stroke-width="1.6"
            stroke-linejoin="round"
          >
            <path d="M2 13.5 10 17l8-3.500M2 10l8 3.500L18 10M10 2.500 18 6l-8 3.500L2 6z" />
          </svg>
          ${WORDS.name}
        </h1>
        <div class="row">
          ${this.#step('undo', this.canUndo, this.undoLabel)}${this.#step('redo', this.canRedo, this.redoLabel)}
          <button class="plain" @click=${() => this.#ask('find')} aria-keyshortcuts="/">
            ${WORDS.head.find}<kbd>/</kbd>
          </button>
        </div>
      </div>
      ${
        project === null
          ? nothing
          : html`<input
                data-means="job-name"
                class="name"
                type="text"
                aria-label=${WORDS.head.jobName}
                autocomplete="off"
                spellcheck="false"
                .value=${project.name}
                @change=${this.#rename}
                @keydown=${this.#keepOrLeave}
              />
              <p class="facts">
                <span>${WORDS.head.revision(project.revision)}</span
                ><span>${project.parts[0]?.source.fileName ?? ''}</span>${this.#inFile()}<span
                  >${this.saved === 'looking' ? KEEP_WORDS.looking : WORDS.head.saved[this.saved]}</span
                >
              </p>`
      }
      <div class="row">
        <button @click=${() => this.#ask('open')}>${WORDS.head.open}</button>
        ${
          project === null
            ? nothing
            : html`<button aria-keyshortcuts="Control+S" @click=${() => this.#ask('save-project')}>
                  ${WORDS.head.keep}
                </button>
                ${this.kept.fileName === '' ? nothing : html`<button class="plain" @click=${() => this.#ask('save-as')}>${KEEP_WORDS.saveAs}</button>`}`
        }
        <button class="plain" @click=${() => this.#ask('begin-shape')}>${PART_WORDS.begin}</button>
      </div>
      ${
        project === null
          ? nothing
          : html`<div class="row work">
              <button @click=${() => this.#ask('at-bench')}>${AT_BENCH_WORDS.open}</button>
              <button @click=${() => this.#ask('at-shop')}>${AT_SHOP_WORDS.open}</button>
            </div>`
      }
      <div class="kit" role="group" aria-label=${WORDS.head.kitLabel}>
        <span class="soft">${WORDS.head.kit}</span>
        ${SAMPLES.map(
          (sample) =>
            html`<button
              class="plain"
              aria-current=${this.#isOpen(sample) ? 'true' : nothing}
              title=${dataText(sample.sentence)}
              @click=${() => this.dispatchEvent(new SampleEvent(sample.id))}
            >
              ${dataText(sample.title)}
            </button>`,
        )}
      </div>
      <fl-earlier-states
        .storage=${this.storage}
        .job=${this.kept.job}
        .jobBefore=${this.earlier}
      ></fl-earlier-states>`;
  }

  /** Puts the keyboard at a part of it. */
  focusOn(selector: string): void {
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus();
  }

  /** Which file the job is in, and whether it is there as it stands. */
  #inFile() {
    const { fileName, isInFile } = this.kept;
    if (fileName === '') return html`<span>${KEEP_WORDS.noFile}</span>`;
    return isInFile
      ? html`<span>${KEEP_WORDS.file(fileName)}</span>`
      : html`<span class="changed">${KEEP_WORDS.changed(fileName)}</span>`;
  }

  /** Whole props are known by their name, a sculpt by its file where it is the only one. */
  #isOpen(sample: Sample): boolean {
    if ('projectFile' in sample) return [sample.title, dataText(sample.title)].includes(this.project?.name ?? '');
    const { parts = [] } = this.project ?? {};
    return parts.length === 1 && parts[0].source.fileName === sample.objFile;
  }

  #step(which: 'undo' | 'redo', can: boolean, label: string) {
    const name = WORDS.head[which];
    return html`<button
      class="plain"
      ?disabled=${!can}
      title=${can ? `${name}: ${labelText(label)}` : name}
      @click=${() => this.#ask(which)}
    >
      ${name}
    </button>`;
  }

  #ask(verb: string): void {
    this.dispatchEvent(new VerbEvent(verb));
  }

  #rename(event: Event): void {
    this.dispatchEvent(new CommandEvent(renameProject((event.target as HTMLInputElement).value)));
    this.requestUpdate();
  }

  #keepOrLeave(event: KeyboardEvent): void {
    const input = event.target as HTMLInputElement;
    if (event.key === 'Escape') input.value = this.project?.name ?? '';
    if (event.key === 'Enter' || event.key === 'Escape') input.blur();
  }
}
