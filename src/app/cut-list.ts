import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatArea, formatLength, formatPercent, formatThickness } from '../base/format-length.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import type { PlainPiece } from '../model/plain-piece.ts';
import { allCut, besideOf } from './bench-state.ts';
import './cautions.ts';
import './done-ticks.ts';
import { ChooseEvent } from './events.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import { PART_WORDS } from './part-words.ts';
import './piece-picture.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { TWIN_WORDS } from './twin-words.ts';
import { WORDS } from './words.ts';

/** Every piece to cut, with its figures. */
@customElement('fl-cut-list')
export class CutList extends JobSection {
  static override styles = [
    SHARED,
    css`
      ul {
        container-type: inline-size;
      }
      li button {
        display: grid;
        grid-template-columns: 60px minmax(0, 1fr) auto;
        gap: 0 var(--s3);
        align-items: center;
        inline-size: 100%;
        padding: var(--s2) 0;
        border: 0;
        background: none;
        text-align: start;
        font-weight: 450;
        line-height: 1.35;
      }
      li {
        border-block-end: var(--narrow) solid var(--rule-soft);
      }
      li button[aria-pressed='true'] {
        background: var(--lamp);
      }
      li button[aria-pressed='true'] .soft {
        color: inherit;
      }
      fl-piece-picture {
        block-size: 52px;
      }
      .name {
        font-size: var(--t-body);
        font-weight: 600;
      }
      .name b {
        font-weight: 700;
        margin-inline-end: var(--s1);
      }
      .figures {
        text-align: end;
      }
      .saw {
        grid-column: 2 / -1;
        padding-inline-start: 3.5em;
      }
      .saw span {
        display: block;
      }
      /* Settings stand under each other, beside their word. */
      .saw > span:first-child {
        float: inline-start;
        margin-inline: -3.5em 0;
      }
      @container (width < 400px) {
        li button {
          grid-template-columns: 60px minmax(0, 1fr);
        }
        .figures {
          grid-column: 2;
          text-align: start;
        }
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override render() {
    const pieces = this.bench.pieces?.pieces ?? [];
    const cut = allCut(this.bench);
    const count = cut.reduce((sum, piece) => sum + piece.quantity, 0);
    const area = cut.reduce((sum, piece) => sum + piece.quantity * piece.areaMm2, 0);
    return html`<fl-job-line heading=${WORDS.lines.cuts} mark=${cut.length === 0 ? 'missing' : 'so'}>
      ${
        cut.length === 0
          ? html`<p slot="answer" class="soft">${WORDS.cuts.waiting}</p>`
          : html`<p slot="answer">${WORDS.cuts.answer(count, formatArea(area, this.unit))}</p>
              <ul>
                ${pieces.map((piece, index) => this.#row(piece, index))}
                ${besideOf(this.bench).map((piece) => ('part' in piece ? this.#ofPart(piece) : this.#strip(piece)))}
              </ul>
              <fl-cautions .work=${['cut', 'sand']} label=${WORDS.cautions.cut}></fl-cautions>`
      }
    </fl-job-line>`;
  }

  #row(piece: FoamPiece, index: number) {
    const template = this.bench.pieces?.templates.find((candidate) => candidate.piece === piece.id) ?? null;
    const patch = this.bench.pieces?.patches[piece.patch];
    const isChosen = this.choice.kind === 'piece' && this.choice.piece === piece.id;
    const light = (): void => this.point({ pieces: [index] });
    const box = template?.foamBox;
    return html`<li>
      <button
        aria-pressed=${isChosen}
        @pointerenter=${light}
        @pointerleave=${() => this.point(null)}
        @focus=${light}
        @blur=${() => this.point(null)}
        @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'piece', piece: piece.id }))}
      >
        <fl-piece-picture .template=${template}></fl-piece-picture>
        <span>
          <span class="name"><b>${piece.number}</b>${piece.name}</span><br />
          <span class="soft">${WORDS.cuts.kind(piece)}</span>${this.#paper(piece)}
        </span>
        <span class="figures">
          ${
            box === undefined
              ? nothing
              : html`${WORDS.cuts.size(formatLength(box.maxX - box.minX, this.unit), formatLength(box.maxY - box.minY, this.unit))}<br />`
          }
          <span class="soft">
            ${WORDS.cuts.figures(
              piece.quantity,
              formatThickness(piece.thicknessMm, this.unit),
              formatArea(piece.areaMm2, this.unit),
              formatPercent(Math.max(patch?.stretchSpread?.max ?? 0, patch?.squashSpread?.max ?? 0)),
            )}
          </span>
        </span>
        ${this.#saw(piece)}
      </button>
      <fl-done-ticks
        .project=${this.project}
        .piece=${piece}
        .onItsPaper=${this.#sharing(piece) ?? null}
        .name=${`${piece.number} ${piece.name}`}
      ></fl-done-ticks>
    </li>`;
  }

  /** The twin on whose paper a piece is, or that is on its. */
  #sharing({ id }: FoamPiece): FoamPiece | undefined {
    const shared = this.bench.paper?.turned.find(({ piece, template }) => piece === id || template === id);
    const other = shared?.piece === id ? shared.template : shared?.piece;
    return this.bench.pieces?.pieces.find((piece) => piece.id === other);
  }

  /** With whose template it is cut, where it has a twin. */
  #paper(piece: FoamPiece) {
    const { pieces, templates } = this.bench.pieces ?? { pieces: [], templates: [] };
    const other = this.#sharing(piece);
    const isTurned = this.bench.paper?.turned.some((turned) => turned.piece === piece.id) ?? false;
    const apart = templates.find((template) => template.piece === piece.id)?.apart;
    const twin = pieces.find(({ id }) => id === piece.twinOf);
    const { turnedFrom, turnedFor, apart: apartText } = TWIN_WORDS;
    const text =
      other !== undefined
        ? (isTurned ? turnedFrom : turnedFor)(other.number)
        : apart === undefined || twin === undefined
          ? null
          : apartText(twin.number, apart);
    return text === null ? nothing : html`<br /><span class="soft">${text}</span>`;
  }

  /** A strip leads to the seam it is for. */
  #strip(strip: FoamStrip) {
    const { number, name, seam, quantity, thicknessMm, lengthMm, faceMm, backMm, areaMm2 } = strip;
    const template = this.bench.pieces?.templates.find((candidate) => candidate.piece === strip.id) ?? null;
    const isChosen = this.choice.kind === 'seam' && this.choice.seam === seam;
    const length = (mm: number): string => formatLength(mm, this.unit);
    return html`<li>
      <button
        aria-pressed=${isChosen}
        @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'seam', seam }))}
      >
        <fl-piece-picture .template=${template}></fl-piece-picture>
        <span>
          <span class="name"><b>${number}</b>${name}</span><br />
          <span class="soft">${WORDS.cuts.strip(strip)}</span>
        </span>
        <span class="figures">
          ${WORDS.cuts.size(length(lengthMm), length(Math.max(faceMm.max, backMm.max)))}<br />
          <span class="soft">
            ${WORDS.cuts.stripFigures(quantity, formatThickness(thicknessMm, this.unit), formatArea(areaMm2, this.unit))}
          </span>
        </span>
      </button>
      <fl-done-ticks .project=${this.project} .piece=${strip} .name=${`${number} ${name}`}></fl-done-ticks>
    </li>`;
  }

  /** A piece of another part leads to that part. */
  #ofPart(piece: PlainPiece | FoamPiece) {
    const { id, number, name, quantity, thicknessMm, areaMm2, part } = piece;
    const template = this.bench.pieces?.templates.find((candidate) => candidate.piece === id) ?? null;
    const isChosen = this.choice.kind === 'part' && this.choice.part === part;
    const length = (mm: number): string => formatLength(mm, this.unit);
    const box = template?.foamBox;
    const light = (): void => this.point({ parts: [part] });
    return html`<li>
      <button
        aria-pressed=${isChosen}
        @pointerenter=${light}
        @pointerleave=${() => this.point(null)}
        @focus=${light}
        @blur=${() => this.point(null)}
        @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'part', part }))}
      >
        <fl-piece-picture .template=${template}></fl-piece-picture>
        <span>
          <span class="name"><b>${number}</b>${name}</span><br />
          <span class="soft"
            >${'draft' in piece ? PART_WORDS.bends[piece.draft.bend.kind] : WORDS.cuts.kind(piece)}</span
          >
        </span>
        <span class="figures">
          ${box === undefined ? nothing : html`${WORDS.cuts.size(length(box.maxX - box.minX), length(box.maxY - box.minY))}<br />`}
          <span class="soft">
            ${WORDS.cuts.stripFigures(quantity, formatThickness(thicknessMm, this.unit), formatArea(areaMm2, this.unit))}
          </span>
        </span>
      </button>
      <fl-done-ticks .project=${this.project} .piece=${piece} .name=${`${number} ${name}`}></fl-done-ticks>
    </li>`;
  }

  /** How the saw is set for the piece's edges, flattest first. */
  #saw(piece: FoamPiece) {
    const settings = WORDS.cuts.saw.settings(piece);
    if (settings.length === 0) return nothing;
    return html`<span class="saw soft">
      <span>${WORDS.cuts.saw.label}</span> ${settings.map((text) => html`<span>${text}</span> `)}
    </span>`;
  }
}
