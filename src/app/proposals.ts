import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatArea, formatLength, formatPercent } from '../base/format-length.ts';
import type { ProposalAnswer, ProposalKind } from '../worker/proposing-api.ts';
import { HIDDEN_CHOICES, setHiddenSide } from '../project/hidden-commands.ts';
import { hasMarks } from './edge-facts.ts';
import { ViewEvent } from './events.ts';
import { countByArrows, figureShown, figureTyped } from './figure-input.ts';
import { toldText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import { keyCap } from './key-cap.ts';
import { alikeAnswers, easeSaid, kindsOf } from './propose-actions.ts';
import { PROPOSE_WORDS } from './propose-words.ts';
import { limitsOnBench } from './sheet-on-bench.ts';
import { SHARED } from './styles.ts';
import type { Proposals } from './view-state.ts';

type Row = keyof typeof PROPOSE_WORDS.rows;
const ROWS = [
  'pieces',
  'darts',
  'length',
  'stretch',
  'squash',
  'foam',
  'sheets',
  'pages',
] as const satisfies readonly Row[];

/** Something told of one answer or of several. */
interface Reason {
  readonly kinds: readonly ProposalKind[];
  readonly isBroken: boolean;
  readonly text: string;
  readonly triangle: number;
}

/** Seams found by search: how to begin, three answers side by side with their figures, and the way to take one. */
@customElement('fl-proposals')
export class ProposalTable extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      .begin label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        color: var(--ink-soft);
        font-size: var(--t-small);
      }
      .begin input {
        inline-size: 3.6em;
      }
      table {
        inline-size: 100%;
        table-layout: fixed;
      }
      thead th {
        font-weight: 600;
        text-align: end;
        vertical-align: bottom;
      }
      tbody th {
        font-weight: 400;
        color: var(--ink-soft);
        text-align: start;
      }
      th:first-child {
        inline-size: 4.6em;
      }
      td {
        text-align: end;
      }
      td button {
        padding-inline: var(--s2);
        white-space: nowrap;
      }
      td.is-lit {
        background: var(--paper-low);
      }
      svg {
        inline-size: 100%;
        block-size: 5.5rem;
        fill: var(--ink-soft);
        stroke: none;
      }
      .wrong {
        color: var(--wrong);
      }
      .wrong,
      .look {
        font-weight: 700;
      }
      .reasons {
        margin-block-start: var(--s2);
      }
    `,
  ];

  @property({ attribute: false }) proposals: Proposals | null = null;
  /** What the maker set as the limit, per cent; null: what the foam can take. */
  @property({ type: Number }) limitPct: number | null = null;
  /** Kind that is pointed at. */
  @property({ attribute: false }) lit: ProposalKind | null = null;

  /** Puts the keyboard where the first answer is taken. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('td button')?.focus(options);
  }

  protected override render() {
    const words = PROPOSE_WORDS;
    const { proposals } = this;
    return html`<div class="stack">
      ${this.#begin()}
      ${
        proposals === null
          ? nothing
          : html`${this.#why(proposals)}
              ${Object.keys(proposals.answers).length === 0 ? html`<p class="small soft">${waiting(proposals)}</p>` : this.#table(proposals)}
              <div class="row">
                ${proposals.state === 'looking' ? html`<button class="next" @click=${() => this.ask('stop-proposing')}>${words.stop}${keyCap('M')}</button>` : html`<button class="plain" @click=${() => this.ask('put-proposals')}>${words.put}</button>`}
                <span class="small soft">${footOf(proposals)}</span>
              </div>`
      }
    </div>`;
  }

  #begin() {
    const words = PROPOSE_WORDS;
    if (this.proposals?.state === 'looking') return nothing;
    const hasSeams = hasMarks(this.sculptPart);
    const hidden = this.sculptPart?.hiddenSide ?? 'nowhere';
    const limit = this.#limit();
    return html`<div class="row begin">
      <button aria-keyshortcuts="M" @click=${() => this.ask('propose')}>${words.begin}${keyCap('M')}</button>
      ${hasSeams ? html`<button title=${words.restWhy} @click=${() => this.ask('propose-rest')}>${words.rest}</button>` : nothing}
      <label
        >${words.limit}
        <input
          data-means="proposal-limit"
          type="text"
          inputmode="decimal"
          autocomplete="off"
          aria-label=${words.limitLabel}
          .value=${figureShown(limit)}
          @keydown=${countByArrows(0.5, 50, 0.5)}
          @change=${this.#takeLimit}
        />%</label
      >
      <label
        >${words.hide}
        <select data-means="proposal-hide" aria-label=${words.hideLabel} @change=${this.#takeSide}>
          ${(['nowhere', ...HIDDEN_CHOICES] as const).map(
            (side) => html`<option value=${side} .selected=${side === hidden}>${words.sides[side]}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  #limit(): number {
    return this.limitPct ?? limitsOnBench(this.project, 1).tooMuchPct;
  }

  #table(proposals: Proposals) {
    const words = PROPOSE_WORDS;
    const { answers, from } = proposals;
    const kinds = kindsOf(proposals);
    const isEasing = from === 'ease';
    const rowWords = isEasing ? { ...words.rows, ...words.easing.rows } : words.rows;
    const each = (cell: (answer: ProposalAnswer, kind: ProposalKind) => unknown) =>
      kinds.map((kind) => {
        const answer = answers[kind];
        return html`<td
          class=${this.lit === kind ? 'is-lit' : ''}
          @pointerenter=${() => this.#show(kind)}
          @pointerleave=${() => this.#show(null)}
        >
          ${answer === undefined ? (proposals.state === 'done' ? nothing : words.unknown) : cell(answer, kind)}
        </td>`;
      });
    return html`<table>
        <caption class="unseen">
          ${isEasing ? words.easing.caption : words.caption}
        </caption>
        <thead>
          <tr>
            <td></td>
            ${kinds.map((kind) => html`<th scope="col">${words.kinds[kind]}</th>`)}
          </tr>
        </thead>
        <tbody>
          <tr>
            <td></td>
            ${each((answer, kind) => picture(answer, kind))}
          </tr>
          ${ROWS.map(
            (row) =>
              html`<tr>
                <th scope="row">${rowWords[row]}</th>
                ${each((answer) => this.#figure(row, answer))}
              </tr>`,
          )}
          ${
            isEasing
              ? html`<tr>
                  <th scope="row">${words.easing.mends}</th>
                  ${each(({ mends = [] }) => (mends.length === 0 ? '–' : words.easing.limits(mends)))}
                </tr>`
              : nothing
          }
          <tr>
            <td></td>
            ${each(
              (_, kind) =>
                html`<button
                  aria-label="${words.take}: ${words.kinds[kind]}"
                  @click=${() => this.ask(`take-${kind}`)}
                  @focus=${() => this.#show(kind)}
                  @blur=${() => this.#show(null)}
                >
                  ${words.take}
                </button>`,
            )}
          </tr>
        </tbody>
      </table>
      ${alikeAnswers(kinds, answers).map((same) => html`<p class="small">${words.same(same.map((kind) => words.kinds[kind]))}</p>`)}
      ${this.#reasons(kinds, answers)}`;
  }

  #figure(row: Row, answer: ProposalAnswer): unknown {
    const { unit } = this;
    const { needs } = answer;
    switch (row) {
      case 'pieces':
        return answer.pieces;
      case 'darts':
        return answer.darts;
      case 'length':
        return formatLength(answer.lengthMm, unit);
      case 'stretch':
        return formatPercent(answer.stretchPct);
      case 'squash':
        return formatPercent(answer.squashPct);
      case 'foam':
        return needs === null ? PROPOSE_WORDS.unknown : formatArea(needs.foamMm2, unit);
      case 'sheets':
        return needs?.sheets ?? PROPOSE_WORDS.unknown;
      case 'pages':
        return needs?.pages ?? PROPOSE_WORDS.unknown;
    }
  }

  /** Which limits a piece that is eased breaks now: pointing at one lights its place up. */
  #why({ why = [] }: Proposals) {
    if (why.length === 0) return nothing;
    return html`<p class="small">${PROPOSE_WORDS.easing.why}</p>
      <ul class="reasons small">
        ${why.map(
          ({ text, triangle }) =>
            html`<li
              @pointerenter=${() => this.point({ triangles: [triangle] })}
              @pointerleave=${() => this.point(null)}
            >
              ${text}
            </li>`,
        )}
      </ul>`;
  }

  /** Which limit stops it, or where a bend is tight, and where that is: pointing at it lights the place up. Said of several at once, it is said once. */
  #reasons(kinds: readonly ProposalKind[], answers: Proposals['answers']) {
    const told = new Map<string, Reason>();
    for (const kind of kinds) {
      const { isFeasible = true, reasons = [] } = answers[kind] ?? {};
      for (const { text, triangle } of reasons) {
        const key = `${isFeasible} ${triangle} ${text}`;
        const own = [...(told.get(key)?.kinds ?? []), kind];
        told.set(key, { kinds: own, isBroken: !isFeasible, text, triangle });
      }
    }
    if (told.size === 0) return nothing;
    return html`<ul class="reasons small">
      ${[...told.values()].map((reason) => this.#reason(reason, kinds.length))}
    </ul>`;
  }

  #reason({ kinds, isBroken, text, triangle }: Reason, count: number) {
    const words = PROPOSE_WORDS;
    const light = (): void => this.point({ triangles: [triangle] });
    const dark = (): void => this.point(null);
    const name = kinds.length === count ? words.all : kinds.map((kind) => words.kinds[kind]).join(', ');
    return html`<li @pointerenter=${light} @pointerleave=${dark}>
      <span class=${isBroken ? 'wrong' : 'look'}>${isBroken ? words.broken : words.bent}</span>, ${name}:
      ${toldText(text, this.unit)}
    </li>`;
  }

  #show(kind: ProposalKind | null): void {
    this.lit = kind;
    const preview = kind === null ? null : (this.proposals?.answers[kind]?.edges ?? null);
    this.dispatchEvent(new ViewEvent(kind === null ? { preview } : { preview, stage: 0 }));
  }

  #takeSide(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    this.send(setHiddenSide(HIDDEN_CHOICES.find((side) => side === value) ?? null));
  }

  #takeLimit(event: Event): void {
    const input = event.target as HTMLInputElement;
    const pct = figureTyped(event);
    if (pct >= 0.5 && pct <= 50) this.dispatchEvent(new ViewEvent({ proposalPct: pct }));
    else input.value = figureShown(this.#limit());
  }
}

/** What is said while there is nothing to show. */
function waiting({ from, state, why }: Proposals): string {
  if (from !== 'ease') return PROPOSE_WORDS.looking;
  return state === 'done' ? easeSaid(why?.length ?? 0, 0, why === undefined) : PROPOSE_WORDS.easing.begun;
}

/** What is said beside the button under the answers. */
function footOf({ from, state, answers }: Proposals): string {
  const words = PROPOSE_WORDS;
  const count = Object.keys(answers).length;
  if (from !== 'ease') return { looking: words.better, stopping: words.working, done: words.done }[state];
  if (count === 0) return '';
  return state === 'done' ? words.easing.done : words.working;
}

/** The flat pieces, small; y is turned for the screen. */
function picture({ picture: { outlines, size }, pieces }: ProposalAnswer, kind: ProposalKind) {
  const [wide, high] = size;
  const path = outlines.map((ring) => `M${points(ring, high)}Z`).join('');
  return html`<svg viewBox="0 0 ${wide || 1} ${high || 1}" role="img" aria-label=${PROPOSE_WORDS.picture(kind, pieces)}>
    ${svg`<path d=${path} fill-rule="evenodd" />`}
  </svg>`;
}

function points(ring: Float32Array, high: number): string {
  const places: string[] = [];
  for (let i = 0; i < ring.length; i += 2) places.push(`${ring[i].toFixed(1)} ${(high - ring[i + 1]).toFixed(1)}`);
  return places.join('L');
}
