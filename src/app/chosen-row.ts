import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  formatFine,
  formatLength,
  formatMeasured,
  formatPercent,
  formatThickness,
  parseLength,
} from '../base/format-length.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import { setPieceSetting } from '../project/commands.ts';
import { setPieceFoam } from '../project/piece-commands.ts';
import './drawing-fields.ts';
import { drawingWords } from './drawing-fields.ts';
import { chainIndex, pieceIndex } from './bench-state.ts';
import { areaWords, chosenArea, giveOf } from './chosen-area.ts';
import { patchAt } from './darts.ts';
import { edgeFacts } from './edge-facts.ts';
import { ViewEvent } from './events.ts';
import { countByArrows, figureShown, figureTyped } from './figure-input.ts';
import { toldText } from './finding-text.ts';
import './finish-fillet.ts';
import { GLUING_WORDS } from './gluing-words.ts';
import './grain-field.ts';
import type { GrainEvent } from './grain-field.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { faceOfPiece } from './piece-face.ts';
import './paint-field.ts';
import { factsOfParts, factsText } from './part-facts.ts';
import { PAINT_WORDS } from './paint-words.ts';
import './piece-foam-field.ts';
import type { PieceFoamEvent } from './piece-foam-field.ts';
import { joinFacts } from './seam-joins.ts';
import { SHARED } from './styles.ts';
import './verb-row.ts';
import type { Verb } from './verb.ts';
import { FIRST_VIEW, type ViewState } from './view-state.ts';
import { edgeWishOf, facesOfPiece, grainCommands, grainOf } from './wish-actions.ts';
import { placedText } from './verdict/name-of-place.ts';
import { findingKey, toldFindings } from './verdict/told-findings.ts';
import { WORDS } from './words.ts';

/** A new lap width was typed for the chosen seam, mm. */
export class LapEvent extends Event {
  constructor(readonly mm: number) {
    super('fl-lap', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-lap': LapEvent;
  }
}

/** The row under the scene: what is chosen or which tool is in hand, its figures and its verbs. Empty when nothing is. */
@customElement('fl-chosen-row')
export class ChosenRow extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        color: var(--ink-soft);
      }
      input[inputmode] {
        inline-size: 3.6em;
      }
      input[type='text'] {
        inline-size: 9em;
      }
      /* Beside the job sheet on a small screen the row lies over the picture: what it is about must stay seen. */
      @container (width < 720px) {
        label {
          gap: var(--s1);
        }
        input[type='text'] {
          inline-size: 8em;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: ViewState = FIRST_VIEW;
  @property({ attribute: false }) verbs: readonly Verb[] = [];

  protected override render() {
    const near = this.verbs.filter((verb) => verb.isNear === true);
    const { tool, choice } = this.view;
    if (tool !== 'choose') {
      const edge = tool === 'walk' ? this.view.walked : (this.view.preview?.[0] ?? null);
      const isBare = edge === null || tool === 'path' || tool === 'dart' || tool === 'drawing' || tool === 'move';
      const facts = isBare ? this.#hint() : this.#edgeFacts(edge);
      return html`<fl-verb-row
        .name=${WORDS.chosen.tools[tool]}
        .facts=${facts}
        .verbs=${near}
        .back=${WORDS.chosen.done}
        >${tool === 'part' && this.view.reach === 'ridge' ? this.#ridge() : nothing}
        ${tool === 'drawing' ? html`<fl-drawing-fields .drawing=${this.view.drawing}></fl-drawing-fields>` : nothing}</fl-verb-row
      >`;
    }
    switch (choice.kind) {
      case 'seam':
        return this.#seam(choice.seam, near);
      case 'piece': {
        const piece = this.bench.pieces?.pieces[pieceIndex(this.bench, choice.piece)];
        return piece === undefined ? nothing : this.#piece(piece, near);
      }
      case 'part': {
        const facts = this.project === null ? [] : factsOfParts(this.project, this.bench);
        const own = facts.find(({ id }) => id === choice.part);
        return own === undefined ? nothing : this.#row(own.name, factsText(own), near);
      }
      case 'step': {
        const words = this.view.gluing.shop?.steps[choice.step - 1];
        return words === undefined
          ? nothing
          : this.#row(GLUING_WORDS.step(choice.step), toldText(words.title, this.unit), near);
      }
      case 'finding': {
        const told = toldFindings(this.bench).find((finding) => findingKey(finding) === choice.key);
        if (told === undefined) return nothing;
        const { at, text } = placedText(told, this.bench, this.project, toldText(told.text, this.unit));
        return this.#row(at, text, near);
      }
      default:
        return nothing;
    }
  }

  /** What the tool in hand is for. */
  #hint(): string {
    const { tool, reach, within, lay } = this.view;
    if (tool === 'path' && within !== null) return WORDS.marking.tools.split;
    if (tool === 'path' && lay !== 'edges') return WORDS.marking.tools[lay];
    if (tool === 'choose') return '';
    if (tool === 'move' && this.view.grip?.path === null) return WORDS.marking.move.edges;
    if (tool === 'drawing') return drawingWords(this.view, this.unit);
    if (tool === 'dart' && this.view.dart !== null) return this.#dart(this.view.dart);
    return tool === 'part' && reach !== 'edge' ? WORDS.marking.tools[reach] : WORDS.tools[tool];
  }

  /** How long the dart is, and what its piece gives with it. */
  #dart({ tip, lengthMm }: NonNullable<ViewState['dart']>): string {
    const patch = patchAt(this.bench, tip);
    const [stretch, squash] = [patch?.stretchSpread, patch?.squashSpread].map((spread) =>
      spread == null ? '…' : formatPercent(spread.p99),
    );
    return WORDS.marking.darts.pulled(formatMeasured(lengthMm, this.unit), stretch, squash);
  }

  #ridge() {
    const words = WORDS.marking;
    return html`<label>
      ${words.sharper}
      <input
        data-means="ridge"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-label=${words.degrees}
        .value=${figureShown(this.view.ridgeDeg)}
        @keydown=${countByArrows(1, 170)}
        @change=${this.#takeRidge}
      />
      °
    </label>`;
  }

  #takeRidge(event: Event): void {
    const input = event.target as HTMLInputElement;
    const ridgeDeg = figureTyped(event);
    if (ridgeDeg >= 1 && ridgeDeg <= 170) this.dispatchEvent(new ViewEvent({ ridgeDeg, preview: null }));
    else input.value = figureShown(this.view.ridgeDeg);
  }

  #row(name: string, facts: string, verbs: readonly Verb[], fields: unknown = nothing) {
    return html`<fl-verb-row .name=${name} .facts=${facts} .verbs=${verbs} .back=${WORDS.chosen.back}
      >${fields}</fl-verb-row
    >`;
  }

  #edgeFacts(edge: number): string {
    const facts = edgeFacts(this.bench, edge);
    return facts === null ? '' : WORDS.chosen.edgeFacts(facts, this.unit);
  }

  #seam(id: string, verbs: readonly Verb[]) {
    const chain = this.bench.seams?.chains[chainIndex(this.bench, id)];
    if (chain === undefined) return nothing;
    const seam = this.bench.pieces?.seams.find((candidate) => candidate.id === id);
    const [one, other] = (seam?.lengthMm ?? []).map((mm) => formatMeasured(mm, this.unit));
    const wishes = this.#wishes(id);
    if (chain.kind === 'open')
      return this.#row(
        WORDS.chosen.openEdge(chain.letter),
        [...(one === undefined ? [] : [WORDS.chosen.openFacts(one)]), ...wishes].join(', '),
        verbs,
      );
    const facts =
      seam === undefined || other === undefined
        ? ''
        : [
            WORDS.chosen.seamFacts(one, other, formatFine(Math.abs(seam.differenceMm), this.unit)),
            ...joinFacts(this.bench, seam, this.unit),
            ...wishes,
          ].join(', ');
    const lap =
      chain.kind === 'lap'
        ? html`<fl-length-field
            data-means="lap"
            label=${WORDS.chosen.allowance}
            .mm=${chain.allowanceMm}
            .unit=${this.unit}
            min="1"
            max="60"
            @fl-length=${(event: LengthEvent) => this.dispatchEvent(new LapEvent(event.mm))}
          ></fl-length-field>`
        : nothing;
    return this.#row(
      WORDS.chosen.seam(chain.letter),
      facts,
      verbs,
      html`${lap} ${this.#taut()}
        <fl-finish-fillet .project=${this.project} .bench=${this.bench} .seam=${id}></fl-finish-fillet>`,
    );
  }

  /** How far the seam may stray when it is straightened. */
  #taut() {
    return html`<fl-length-field
      data-means="taut"
      class="inline"
      label="${WORDS.marking.verbs.straighten} ${WORDS.marking.within}"
      .mm=${this.view.tautMm}
      .unit=${this.unit}
      min="0.2"
      max="50"
      @fl-length=${({ mm }: LengthEvent) => this.dispatchEvent(new ViewEvent({ tautMm: mm }))}
    ></fl-length-field>`;
  }

  #wishes(id: string): readonly string[] {
    const { holdLength = false, straight = false } = edgeWishOf(this.bench, this.sculptPart, id);
    const words = WORDS.forming.edges;
    return [...(holdLength ? [words.held] : []), ...(straight ? [words.straight] : [])];
  }

  #piece(piece: FoamPiece, verbs: readonly Verb[]) {
    const area = chosenArea(this.bench, this.view);
    const facts =
      area === null
        ? `${WORDS.chosen.pieceFacts(formatThickness(piece.thicknessMm, this.unit), toldText(piece.bendReason, this.unit))} ${WORDS.forming.areas.again}`
        : areaWords(area, giveOf(this.sculptPart?.regions ?? [], area.faces), this.unit, this.view.withinMm === null);
    if (area !== null) {
      const fields = html`${this.#within()}
      ${this.#paint(area.faces, this.view.withinMm === null ? PAINT_WORDS.areas.named.panel(area.piece, area.panel + 1) : PAINT_WORDS.areas.named.spot(area.piece))}`;
      return this.#row(WORDS.chosen.piece(piece.number, piece.name), facts, verbs, fields);
    }
    const fields = html`<label>
        ${WORDS.chosen.pieceName}
        <input
          data-means="piece-name"
          type="text"
          autocomplete="off"
          .value=${piece.name}
          @change=${(event: Event) => this.#name(piece, event)}
        />
      </label>
      <label>
        ${WORDS.chosen.quantity}
        <input
          data-means="piece-quantity"
          type="text"
          inputmode="numeric"
          autocomplete="off"
          .value=${String(piece.quantity)}
          @keydown=${countByArrows(1, 99)}
          @change=${(event: Event) => this.#quantity(piece, event)}
        />
      </label>
      <fl-grain-field
        .grain=${grainOf(this.bench, this.sculptPart, piece)}
        .hasUp=${piece.up !== null}
        @fl-grain=${(event: GrainEvent) => grainCommands(this.bench, piece, event.grain).forEach((command) => this.send(command))}
      ></fl-grain-field>
      ${this.#foam(piece)} ${this.#isSeen(piece) ? this.#paint(facesOfPiece(this.bench, piece), piece.name) : nothing}`;
    return this.#row(WORDS.chosen.piece(piece.number, piece.name), facts, verbs, fields);
  }

  #paint(faces: readonly number[], name: string) {
    return html`<fl-paint-field .project=${this.project} .faces=${faces} .name=${name}></fl-paint-field>`;
  }

  /** Whether a piece is of the sheet that is seen, the one that is painted. */
  #isSeen({ layer }: FoamPiece): boolean {
    return this.sculptPart?.layers.at(-1)?.id === layer;
  }

  /** Which foam it is cut from; pieces under the outermost sheet are of their sheet's foam. */
  #foam(piece: FoamPiece) {
    const outermost = this.sculptPart?.layers.at(-1);
    if (outermost === undefined || outermost.id !== piece.layer) return nothing;
    return html`<fl-piece-foam-field
      .foams=${this.project?.foams ?? []}
      .layerFoam=${outermost.foam}
      .layerMm=${outermost.thicknessMm}
      .foam=${piece.foam}
      .unit=${this.unit}
      @fl-piece-foam=${(event: PieceFoamEvent) => this.send(setPieceFoam(facesOfPiece(this.bench, piece), event.foam))}
    ></fl-piece-foam-field>`;
  }

  /** How far the area reaches from the place that was clicked; emptied, as far as its panel. */
  #within() {
    const words = WORDS.forming.areas;
    return html`<label>
      ${words.within}
      <input
        data-means="within"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        placeholder=${words.wholePanel}
        .value=${this.view.withinMm === null ? '' : formatLength(this.view.withinMm, this.unit)}
        @change=${this.#takeWithin}
      />
    </label>`;
  }

  #takeWithin(event: Event): void {
    const mm = parseLength((event.target as HTMLInputElement).value, this.unit);
    this.dispatchEvent(new ViewEvent({ withinMm: mm }));
  }

  #name(piece: FoamPiece, event: Event): void {
    const name = (event.target as HTMLInputElement).value.trim();
    if (name !== '') this.send(setPieceSetting(faceOfPiece(this.bench, piece), { name }));
  }

  #quantity(piece: FoamPiece, event: Event): void {
    const quantity = figureTyped(event);
    if (Number.isInteger(quantity) && quantity >= 1)
      this.send(setPieceSetting(faceOfPiece(this.bench, piece), { quantity }));
  }
}
