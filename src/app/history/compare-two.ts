import { css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Comparison } from '../../model/comparison.ts';
import type { Trail } from '../../project/history.ts';
import { documentOf, versionsOf, type Document } from '../../project/kept-version.ts';
import type { Comparing } from '../../worker/compare-api.ts';
import { findingText, toldText } from '../finding-text.ts';
import { JobSection } from '../job-section.ts';
import { FOLDED_LIST_STYLE } from '../list-style.ts';
import { SHARED } from '../styles.ts';
import { compareRows, pieceSaid } from './compare-rows.ts';
import { HISTORY_WORDS } from './history-words.ts';
import { stepSaid } from './step-said.ts';
import { twoOutlines } from './two-outlines.ts';

/** A state that can be compared: the project as it is, a kept version or a step. */
interface Option {
  readonly key: string;
  readonly name: string;
  readonly document: Document;
}

/** What came of comparing two, and of which two. */
interface Made {
  readonly one: Option;
  readonly other: Option;
  readonly comparison: Comparison;
}

const NOW = 'now';

/** Two states of the job side by side: figures, and the pieces that differ. */
@customElement('fl-compare-two')
export class CompareTwo extends JobSection {
  static override styles = [
    SHARED,
    FOLDED_LIST_STYLE,
    css`
      .picks {
        display: grid;
        gap: var(--s2);
      }
      .picks label {
        display: grid;
        color: var(--ink-soft);
      }
      select {
        inline-size: 100%;
      }
      table {
        table-layout: fixed;
      }
      th[scope='row'] {
        inline-size: 34%;
        vertical-align: top;
        overflow-wrap: anywhere;
      }
      td {
        overflow-wrap: anywhere;
        vertical-align: top;
      }
      thead th {
        overflow-wrap: anywhere;
        font-weight: 600;
      }
      .differs {
        display: block;
        font-weight: 700;
      }
      .pieces li {
        display: grid;
        grid-template-columns: 7rem minmax(0, 1fr);
        gap: var(--s3);
        align-items: center;
        padding-block: var(--s2);
        border-block-start: var(--narrow) solid var(--rule-soft);
      }
      svg {
        inline-size: 7rem;
        block-size: 6rem;
        direction: ltr;
      }
      path {
        vector-effect: non-scaling-stroke;
      }
      .first {
        fill: var(--foam-cut, var(--rule-soft));
        stroke: none;
      }
      .second {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
        stroke-dasharray: 6 3;
      }
      progress {
        inline-size: 100%;
        block-size: 10px;
        accent-color: var(--ink);
      }
      .wrong {
        color: var(--wrong);
      }
    `,
  ];

  @property({ attribute: false }) trail: Trail | null = null;
  /** Who works both out. */
  @property({ attribute: false }) asking: Comparing | null = null;
  @state() private one = '';
  @state() private other = NOW;
  /** Share that is done while it is worked out, else null. */
  @state() private working: number | null = null;
  @state() private made: Made | null = null;
  @state() private problem = '';
  @query('details') private details!: HTMLDetailsElement;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    void this.asking?.stopComparing();
  }

  /** Opens it and puts the keyboard at the first choice. */
  override focus(options?: FocusOptions): void {
    this.details.open = true;
    this.renderRoot.querySelector('select')?.focus(options);
  }

  /** Opens it and compares a kept version with the job as it is. */
  async compareVersion(id: string): Promise<void> {
    this.focus();
    this.one = `version:${id}`;
    this.other = NOW;
    await this.updateComplete;
    await this.#compare();
  }

  protected override render() {
    const words = HISTORY_WORDS.compare;
    const options = this.#options();
    return html`<details @toggle=${() => (this.details.open ? undefined : this.#letGo())}>
      <summary>${words.summary}</summary>
      <div class="stack">
        <div class="picks">
          ${this.#pick(words.one, this.#of(options, this.one), options, (key) => (this.one = key))}
          ${this.#pick(words.other, this.#of(options, this.other), options, (key) => (this.other = key))}
        </div>
        <p role="status">${this.#told(options)}</p>
        ${this.made === null ? nothing : this.#result(this.made)}
      </div>
    </details>`;
  }

  /** The button, or how far it is, or what went wrong. */
  #told(options: readonly Option[]) {
    const words = HISTORY_WORDS.compare;
    if (this.working !== null)
      return html`${words.working} ${words.done(Math.round(100 * this.working))}<progress
          max="1"
          .value=${this.working}
          aria-label=${words.working}
        ></progress
        ><button @click=${() => this.#letGo()}>${words.stop}</button>`;
    const isOutdated =
      this.made !== null &&
      [this.made.one, this.made.other].some(
        (own) => this.#of(options, own.key).document.revision !== own.document.revision,
      );
    return html`${this.problem === '' ? nothing : html`<span class="wrong">${this.problem}</span> `}${isOutdated ? html`${words.outdated} ` : nothing}<button
        ?disabled=${options.length < 2}
        @click=${() => this.#compare()}
      >
        ${words.begin}
      </button>`;
  }

  #pick(label: string, chosen: Option, options: readonly Option[], take: (key: string) => void) {
    const words = HISTORY_WORDS.compare;
    const group = (name: string, kind: string) => {
      const own = options.filter(({ key }) => key.startsWith(kind));
      return own.length === 0
        ? nothing
        : html`<optgroup label=${name}>${own.map((option) => this.#option(option, chosen))}</optgroup>`;
    };
    return html`<label
      >${label}<select
        data-means="compare-state"
        @change=${(event: Event) => take((event.target as HTMLSelectElement).value)}
      >
        ${this.#option(options[0], chosen)}${group(words.versions, 'version:')}${group(words.steps, 'step:')}
      </select></label
    >`;
  }

  #option({ key, name }: Option, chosen: Option) {
    return html`<option value=${key} .selected=${key === chosen.key}>${name}</option>`;
  }

  /** As it is now first, then versions, then steps, the last of both first. */
  #options(): readonly Option[] {
    const { project, trail } = this;
    if (project === null) return [];
    const words = HISTORY_WORDS.compare;
    const versions = versionsOf(project).toReversed();
    const steps = (trail?.steps ?? []).map((step, i) => ({ ...step, place: i })).toReversed();
    return [
      { key: NOW, name: words.now, document: project },
      ...versions.map(({ id, name, document }) => ({ key: `version:${id}`, name, document })),
      ...steps.map(({ id, label, project: document, place }) => ({
        key: `step:${id}`,
        name: words.step(place, stepSaid(label)),
        document,
      })),
    ];
  }

  /** The chosen one; where it is gone, or none was chosen yet, the last version or step that is not the present. */
  #of(options: readonly Option[], key: string): Option {
    const now = options[0];
    const usual = options.find(({ document }) => document.revision !== now.document.revision) ?? now;
    return options.find((option) => option.key === key) ?? usual;
  }

  #result({ one, other, comparison }: Made) {
    const words = HISTORY_WORDS.compare;
    const rows = compareRows(comparison, this.unit);
    const apart = comparison.pieces.filter(({ kind }) => kind !== 'same');
    const alike = comparison.pieces.length - apart.length;
    return html`<table aria-label=${words.table}>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${words.figure}</span></th>
            <th scope="col">${one.name}</th>
            <th scope="col">${other.name}</th>
          </tr>
        </thead>
        <tbody>
          ${this.#stopped(comparison)}
          ${rows.map(
            (row) =>
              html`<tr>
                <th scope="row">${row.name}</th>
                <td>${row.one}</td>
                <td>${row.other}${row.differs === '' ? nothing : html`<span class="differs">${row.differs}</span>`}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${apart.length === 0 && rows.every(({ differs }) => differs === '') ? html`<p>${words.alike}</p>` : nothing}
      ${apart.length === 0 ? nothing : this.#pieces(apart)}
      ${alike === 0 ? nothing : html`<p class="soft">${words.rest(alike)}</p>`}`;
  }

  #stopped({ one, other }: Comparison) {
    if (one.stopped === null && other.stopped === null) return nothing;
    return html`<tr class="wrong">
      <th scope="row">${HISTORY_WORDS.compare.stopped}</th>
      <td>${one.stopped === null ? nothing : toldText(one.stopped, this.unit)}</td>
      <td>${other.stopped === null ? nothing : toldText(other.stopped, this.unit)}</td>
    </tr>`;
  }

  #pieces(apart: Comparison['pieces']) {
    const words = HISTORY_WORDS.compare;
    return html`<h3>${words.pieces}</h3>
      <p class="soft">${words.legend}</p>
      <ul class="pieces">
        ${apart.map((piece) => {
          const { number = 0, name = '' } = piece.one ?? piece.other ?? {};
          return html`<li>
            ${twoOutlines(piece)}
            <p>
              <strong>${words.piece(number, name)}</strong
              >${pieceSaid(piece, this.unit).map((text) => html`<br />${text}`)}
            </p>
          </li>`;
        })}
      </ul>`;
  }

  async #compare(): Promise<void> {
    const { asking } = this;
    const options = this.#options();
    if (asking === null || options.length === 0) return;
    const [one, other] = [this.#of(options, this.one), this.#of(options, this.other)];
    this.working = 0;
    this.problem = '';
    const reply = await asking
      .compare(documentOf(one.document), documentOf(other.document), ({ done }) => {
        if (this.working !== null) this.working = done;
      })
      .catch((error: unknown) => {
        this.working = null;
        throw error;
      });
    if (reply.ok && reply.value === null) return;
    this.working = null;
    if (!reply.ok) this.problem = findingText(reply.problem, this.unit);
    else if (reply.value !== null) this.made = { one, other, comparison: reply.value };
  }

  /** Calls it off, and lets the worker forget both. */
  #letGo(): void {
    this.working = null;
    void this.asking?.stopComparing();
  }
}
