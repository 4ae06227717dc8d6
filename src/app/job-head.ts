import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { renameProject } from '../project/commands.ts';
import type { Project } from '../project/project.ts';
import { AT_BENCH_WORDS } from './at-bench/at-bench-words.ts';
import { AT_SHOP_WORDS } from './at-shop/at-shop-words.ts';
import type { SaveState } from './autosave.ts';
import { CommandEvent, SampleEvent, VerbEvent } from './events.ts';
import { SAMPLES, type Sample } from './samples.ts';
import { PART_WORDS } from './part-words.ts';
import { labelText } from './label-words.ts';
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
        align-items: center;
        gap: var(--s3);
      }
      h1 {
        font-size: var(--t-small);
        font-weight: 700;
        display: flex;
        align-items: center;
        gap: var(--s2);
      }
      h1 svg {
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
        padding-inline: 0;
      }
      .kit button[aria-current='true'] {
        font-weight: 700;
        text-decoration: none;
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
                ><span>${project.parts[0]?.source.fileName ?? ''}</span><span>${WORDS.head.saved[this.saved]}</span>
              </p>`
      }
      <div class="row">
        <button class=${project === null ? 'next' : ''} @click=${() => this.#ask('open')}>${WORDS.head.open}</button>
        <button class="plain" @click=${() => this.#ask('begin-shape')}>${PART_WORDS.begin}</button>
        ${project === null ? nothing : html`<button @click=${() => this.#ask('save-project')}>${WORDS.head.keep}</button>`}
        ${this.earlier === '' ? nothing : html`<button class="plain" @click=${() => this.#ask('go-back')}>${WORDS.head.back(this.earlier)}</button>`}
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
              title=${sample.sentence}
              @click=${() => this.dispatchEvent(new SampleEvent(sample.id))}
            >
              ${sample.title}
            </button>`,
        )}
      </div>`;
  }

  /** Whole props are known by their name, a sculpt by its file where it is the only one. */
  #isOpen(sample: Sample): boolean {
    if ('projectFile' in sample) return this.project?.name === sample.title;
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
