import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatLength } from '../base/format-length.ts';
import { addSeamEdges } from '../project/commands.ts';
import { addMarks } from '../project/path-commands.ts';
import { findingText } from './finding-text.ts';
import { keyCap } from './key-cap.ts';
import { hasMarks } from './edge-facts.ts';
import { edgeIndexOf, filePairs } from './edge-index.ts';
import { SharpEvent, ViewEvent } from './events.ts';
import './findings.ts';
import { hasWrong } from './findings.ts';
import './job-line.ts';
import type { LineMark } from './job-line.ts';
import { JobSection } from './job-section.ts';
import './proposals.ts';
import './cost-list.ts';
import './dart-list.ts';
import './score-list.ts';
import { SHARED } from './styles.ts';
import type { Costs, Proposals, Reach, Tool } from './view-state.ts';
import { WORDS } from './words.ts';

/** Angle the field begins with, degrees: well above what a smooth surface shows from facet to facet, well below a hard corner. */
const FIRST_ANGLE_DEG = 40;

/** Where the sculpt parts into pieces. */
@customElement('fl-seams-line')
export class SeamsLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      .tools {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(7.4rem, 1fr));
        gap: var(--s2);
      }
      .tools button {
        display: flex;
        justify-content: space-between;
        align-items: center;
        padding-inline: var(--s2);
      }
      .called::first-letter {
        text-transform: uppercase;
      }
      .mirror {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s2);
        min-block-size: var(--target);
      }
      .angle,
      .groups {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s2) var(--s3);
      }
      input[type='range'],
      .groups select {
        accent-color: var(--ink);
        font-size: var(--t-small);
        flex: 1 1 7rem;
        min-inline-size: 0;
      }
      li {
        display: flex;
        justify-content: space-between;
        align-items: center;
        gap: var(--s3);
        padding-block: var(--s2);
        border-block-start: var(--narrow) solid var(--rule-soft);
        font-size: var(--t-small);
      }
      li button {
        flex: none;
      }
    `,
  ];

  @property() tool: Tool = 'choose';
  /** How far the knife goes. */
  @property() reach: Reach = 'edge';
  @property({ attribute: false }) isMirrored = false;
  @property({ attribute: false }) proposals: Proposals | null = null;
  @property({ attribute: false }) costs: Costs | null = null;
  @property({ attribute: false }) proposalPct: number | null = null;
  @state() private angleDeg = FIRST_ANGLE_DEG;
  #sharpOnes: readonly number[] = [];

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('bench') || changed.has('angleDeg')) this.#sharpOnes = this.#sharpEdges();
  }

  protected override render() {
    const { sculpt } = this.bench;
    const isReady = sculpt !== null;
    return html`<fl-job-line
      ?asks=${this.bench.sculpt?.sized === true}
      heading=${WORDS.lines.seams}
      mark=${this.#mark()}
    >
      ${this.#answer()}
      ${
        isReady
          ? html`<div class="tools" role="group" aria-label=${WORDS.seams.by}>
                ${this.#tool('part', 'P')} ${this.#reach('round', 'L')} ${this.#reach('ridge', 'B')}
                ${this.#tool('path', 'R')} ${this.#tool('dart', 'Z')} ${this.#tool('walk', 'E')}
              </div>
              ${this.#hint()} ${this.#mirror()}
              <fl-proposals
                .project=${this.project}
                .bench=${this.bench}
                .proposals=${this.proposals}
                .limitPct=${this.proposalPct}
              ></fl-proposals>
              <fl-cost-list .project=${this.project} .bench=${this.bench} .costs=${this.costs}></fl-cost-list>
              ${this.#sharp()} ${this.#groups()} ${this.#offers()}
              ${
                hasMarks(this.sculptPart)
                  ? html`<button class="plain" @click=${() => this.ask('join-all')}>${WORDS.verbs.joinAll}</button>`
                  : nothing
              }`
          : nothing
      }
      <fl-dart-list .project=${this.project} .bench=${this.bench}></fl-dart-list>
      <fl-score-list .project=${this.project} .bench=${this.bench}></fl-score-list>
      <fl-findings .bench=${this.bench} .project=${this.project} .steps=${['seams', 'cut']}></fl-findings>
    </fl-job-line>`;
  }

  /** Whether marks appear on both sides of the mirror; left out where the sculpt has none. */
  #mirror() {
    if (this.bench.mirror === null) return nothing;
    return html`<label class="mirror"
      ><input
        data-means="mirror"
        type="checkbox"
        aria-keyshortcuts="0"
        .checked=${this.isMirrored}
        @change=${() => this.ask('mirror')}
      />
      ${WORDS.marking.bothSides} ${keyCap('0')}</label
    >`;
  }

  /** What the tool in hand is for. */
  #hint() {
    const { tool, reach } = this;
    if (tool === 'choose') return nothing;
    const text = tool === 'part' && reach !== 'edge' ? WORDS.marking.tools[reach] : WORDS.tools[tool];
    return html`<p class="small">${text}</p>`;
  }

  #mark(): LineMark {
    const { sculpt, pieces } = this.bench;
    if (sculpt === null) return 'wait';
    if (hasWrong(this.bench, ['seams', 'cut'])) return 'wrong';
    const isParted =
      pieces !== null && pieces.patches.every((patch) => patch.kind === 'disc' || patch.kind === 'windowed');
    return isParted ? 'so' : 'missing';
  }

  #answer() {
    const { pieces, seams } = this.bench;
    if (pieces === null || seams === null) return html`<p slot="answer" class="soft">${WORDS.seams.waiting}</p>`;
    const inner = seams.chains.filter((chain) => chain.kind !== 'open').length;
    return html`<p slot="answer">${WORDS.seams.counts(inner, pieces.benchPatches)}</p>`;
  }

  #tool(tool: 'part' | 'path' | 'dart' | 'walk', key: string) {
    const verb = { part: 'part-tool', path: 'path-tool', dart: 'dart-tool', walk: 'walk' }[tool];
    return html`<button
      aria-pressed=${this.tool === tool && (tool !== 'part' || this.reach === 'edge')}
      aria-keyshortcuts=${key}
      @click=${() => this.ask(verb)}
    >
      <span class="called">${WORDS.seams.tools[tool]}</span>${keyCap(key)}
    </button>`;
  }

  /** The knife, following lines. */
  #reach(reach: 'round' | 'ridge', key: string) {
    const isOn = this.tool === 'part' && this.reach === reach;
    return html`<button aria-pressed=${isOn} aria-keyshortcuts=${key} @click=${() => this.ask(`follow-${reach}`)}>
      <span class="called">${WORDS.seams.reach[reach]}</span>${keyCap(key)}
    </button>`;
  }

  /** Groups of the file that a border can be parted along. */
  #groups() {
    const groups = this.bench.sculpt?.groups ?? [];
    if (groups.length === 0) return nothing;
    const words = WORDS.marking;
    const part = (): void => this.ask(`round-group-${this.renderRoot.querySelector('select')?.value ?? ''}`);
    return html`<div class="groups">
      <label for="group">${words.group}</label>
      <select data-means="group" id="group">
        ${groups.map(({ group, name }) => html`<option value=${group}>${name}</option>`)}
      </select>
      <button @click=${part}>${words.partRound}</button>
    </div>`;
  }

  #sharp() {
    const count = this.#sharpOnes.length;
    return html`<div class="angle">
      <label for="angle">${WORDS.seams.sharper}</label>
      <input
        data-means="sharper"
        id="angle"
        type="range"
        min="5"
        max="120"
        step="1"
        .value=${String(this.angleDeg)}
        @input=${this.#turnAngle}
        @focus=${this.#showSharp}
        @blur=${this.#hideSharp}
        @pointerenter=${this.#showSharp}
        @pointerleave=${this.#hideSharp}
      />
      <output for="angle" class="number">${this.angleDeg}°</output>
      <button
        ?disabled=${count === 0}
        @click=${() => this.dispatchEvent(new SharpEvent(this.angleDeg))}
        @pointerenter=${this.#showSharp}
        @pointerleave=${this.#hideSharp}
      >
        ${WORDS.seams.partEdges(count)}
      </button>
    </div>`;
  }

  #offers() {
    const offers = this.bench.pieces?.cutOffers ?? [];
    const { sculpt } = this.bench;
    if (offers.length === 0 || sculpt === null) return nothing;
    const index = edgeIndexOf(sculpt);
    return html`<ul>
      ${offers.map((offer) => {
        const edges = offer.edges.map(([a, b]) => index.between(a, b)).filter((edge) => edge >= 0);
        const show = (): boolean => this.dispatchEvent(new ViewEvent({ preview: edges }));
        return html`<li
          @pointerenter=${show}
          @pointerleave=${this.#hideSharp}
          @focusin=${show}
          @focusout=${this.#hideSharp}
        >
          <span>${findingText(offer, this.unit)}</span>
          <button
            class="next"
            @click=${() => this.send(offer.marks ? addMarks(offer.marks) : addSeamEdges(filePairs(sculpt, edges)))}
          >
            ${WORDS.seams.partAlong(formatLength(offer.lengthMm, this.unit))}
          </button>
        </li>`;
      })}
    </ul>`;
  }

  /** Edges that would be parted now: folded sharper than the angle, and not parted already. */
  #sharpEdges(): number[] {
    const { sculpt, seams } = this.bench;
    if (sculpt === null) return [];
    const least = (this.angleDeg * Math.PI) / 180;
    const edges: number[] = [];
    sculpt.edgeFoldRad.forEach((fold, edge) => {
      const isFree = sculpt.edgeIsOpen[edge] === 0 && (seams?.chainOfEdge[edge] ?? -1) < 0;
      if (isFree && Math.abs(fold) > least) edges.push(edge);
    });
    return edges;
  }

  #turnAngle(event: Event): void {
    this.angleDeg = (event.target as HTMLInputElement).valueAsNumber;
    void this.updateComplete.then(() => this.#showSharp());
  }

  #showSharp(): void {
    this.dispatchEvent(new ViewEvent({ preview: this.#sharpOnes }));
  }

  #hideSharp(): void {
    this.dispatchEvent(new ViewEvent({ preview: null }));
  }
}
