import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { VerbEvent } from '../events.ts';
import { FOLDED_LIST_STYLE } from '../list-style.ts';
import { SHARED } from '../styles.ts';
import type { Storage } from '../storage.ts';
import { StateEvent, type StateAsk } from './keep-events.ts';
import { KEEP_WORDS } from './keep-words.ts';
import type { KeptStamp } from './kept-job.ts';
import { whenSaid } from './when.ts';

/** States of one job that are shown before all are asked for. */
const FEW = 6;

/** States of this job and of others that are kept in the browser, to be brought back; looked up when it is opened. */
@customElement('fl-earlier-states')
export class EarlierStates extends LitElement {
  static override styles = [
    SHARED,
    FOLDED_LIST_STYLE,
    css`
      summary {
        min-block-size: var(--target);
        align-content: center;
        cursor: pointer;
      }
      .jobs > * + * {
        margin-block-start: var(--s4);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: center;
        column-gap: var(--s3);
        min-block-size: var(--target);
        border-block-end: var(--narrow) solid var(--rule-soft);
      }
      .when {
        font-weight: 600;
      }
      button.plain {
        min-block-size: var(--target);
      }
    `,
  ];

  /** Where they are kept; null before that is known. */
  @property({ attribute: false }) storage: Storage | null = null;
  /** Key of the job in hand. */
  @property() job = '';
  /** Name of the job that was open before, with its steps at hand; empty where there is none. */
  @property() jobBefore = '';
  /** Null before they are looked up; `refused` where the browser keeps nothing. */
  @state() private stamps: readonly KeptStamp[] | 'refused' | null = null;
  /** Job that the maker wants to forget and has not said so twice. */
  @state() private leaving = '';
  /** Jobs of which all states are shown. */
  @state() private whole: readonly string[] = [];
  @query('details') private details!: HTMLDetailsElement;
  @query('summary') private summary!: HTMLElement;

  /** Opens the list and puts the keyboard there. */
  override focus(options?: FocusOptions): void {
    this.details.open = true;
    this.summary.focus(options);
  }

  /** Looks the states up again. */
  async refresh(): Promise<void> {
    this.stamps = (await this.storage?.states().catch(() => 'refused' as const)) ?? 'refused';
  }

  protected override render() {
    return html`<details @toggle=${() => (this.details.open ? void this.refresh() : undefined)}>
      <summary>${KEEP_WORDS.earlier.summary}</summary>
      <div class="jobs">${this.#list()}</div>
    </details>`;
  }

  #list() {
    const { waiting, refused, none, why } = KEEP_WORDS.earlier;
    const { stamps } = this;
    if (stamps === null) return html`<p class="soft">${waiting}</p>`;
    if (stamps === 'refused') return html`<p>${refused}</p>`;
    // Of the job in hand its newest state is what is on the bench.
    const listed = stamps.filter(({ isNow, job }) => !(isNow && job === this.job));
    const jobs = [...new Set(listed.map(({ job }) => job))].sort(
      (a, b) => Number(b === this.job) - Number(a === this.job),
    );
    return html`${this.jobBefore === '' ? nothing : html`<p><button @click=${() => this.dispatchEvent(new VerbEvent('go-back'))}>${KEEP_WORDS.earlier.before(this.jobBefore)}</button></p>`}
      ${listed.length === 0 ? html`<p class="soft">${none}</p>` : jobs.map((job) => this.#job(job, listed))}
      <p class="soft">${why}</p>`;
  }

  #job(job: string, listed: readonly KeptStamp[]) {
    const words = KEEP_WORDS.earlier;
    const stamps = listed
      .filter((stamp) => stamp.job === job)
      .sort((a, b) => Number(b.isNow) - Number(a.isNow) || b.atMs - a.atMs);
    const [{ name, fileName }] = stamps;
    const shown = this.whole.includes(job) ? stamps : stamps.slice(0, FEW);
    return html`<section class="stack">
      <h2>
        ${name}${fileName === '' || fileName === name ? nothing : html` <span class="soft">${fileName}</span>`}${job === this.job ? html` <span class="soft">(${words.inHand})</span>` : nothing}
      </h2>
      <ul>
        ${shown.map((stamp) => this.#state(stamp))}
      </ul>
      ${shown.length === stamps.length ? nothing : html`<button class="plain" @click=${() => (this.whole = [...this.whole, job])}>${words.all(stamps.length)}</button>`}
      ${job === this.job ? nothing : this.#forget(job, name)}
    </section>`;
  }

  #state({ id, atMs, pieces, what, isNow, isInFile, name }: KeptStamp) {
    const words = KEEP_WORDS.earlier;
    const when = whenSaid(atMs);
    const facts = [
      ...(isNow ? [words.last] : []),
      ...(pieces === null ? [] : [words.pieces(pieces)]),
      ...(what === '' ? [] : [words.after(what)]),
      ...(isInFile ? [words.inFile] : []),
    ];
    return html`<li>
      <span><span class="when no-break">${when}</span> <span class="soft">${facts.join(', ')}</span></span>
      <button
        class="plain"
        aria-label=${isNow ? words.openOf(name) : words.bringOf(when)}
        @click=${() => this.#ask({ kind: 'bring', id })}
      >
        ${isNow ? words.open : words.bring}
      </button>
    </li>`;
  }

  /** What cannot be undone is asked twice. */
  #forget(job: string, name: string) {
    const words = KEEP_WORDS.earlier;
    if (this.leaving !== job)
      return html`<button class="plain" @click=${() => (this.leaving = job)}>${words.forget}</button>`;
    return html`<p role="alert">${words.forgetSure(name)}</p>
      <div class="row">
        <button @click=${() => this.#forgetNow(job)}>${words.forgetYes}</button>
        <button @click=${() => (this.leaving = '')}>${words.forgetNo}</button>
      </div>`;
  }

  #forgetNow(job: string): void {
    this.leaving = '';
    this.#ask({ kind: 'forget', job });
    this.summary.focus();
  }

  #ask(ask: StateAsk): void {
    this.dispatchEvent(new StateEvent(ask, () => void this.refresh()));
  }
}
