import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, formatLength, formatThickness } from '../../base/format-length.ts';
import type { PartStep } from '../../model/part-work.ts';
import { pieceTick } from '../../project/piece-standing.ts';
import type { Project } from '../../project/project.ts';
import type { ShopView, StepPicture } from '../../worker/shop-api.ts';
import '../cautions.ts';
import { toldText } from '../finding-text.ts';
import '../gluing-picture.ts';
import { JobSection } from '../job-section.ts';
import '../page-picture.ts';
import { SHARED } from '../styles.ts';
import { SAW_WORDS } from '../saw-words.ts';
import { TWIN_WORDS } from '../twin-words.ts';
import { WORDS } from '../words.ts';
import { AT_BENCH_WORDS } from './at-bench-words.ts';
import { lieOf } from './lie-of.ts';
import { plainBevels } from './plain-bevels.ts';
import { titleOf } from './line-title.ts';
import { SHEET_SIDE_STYLE, sheetOfPiece } from './sheet-of-piece.ts';
import { warmOf } from './warm-words.ts';
import { copiesOf, copyState, turnCopy } from './work-copies.ts';
import type { LineCautions } from './work-cautions.ts';
import type { CutPiece, WorkLine } from './work-order.ts';
import { WORK_LINE_STYLE } from './work-line-style.ts';
import './work-picture.ts';
import { lineState } from './work-ticks.ts';

const NO_CAUTIONS: LineCautions = { told: [], named: [] };

/** One line of the work, as large as the screen. */
@customElement('fl-work-line')
export class WorkLineView extends JobSection {
  static override styles = [SHARED, WORK_LINE_STYLE, SHEET_SIDE_STYLE];

  @property({ attribute: false }) line: WorkLine | null = null;
  /** All lines: what else is done with a piece. */
  @property({ attribute: false }) lines: readonly WorkLine[] = [];
  @property({ attribute: false }) shop: ShopView | null = null;
  @property({ attribute: false }) cautions: LineCautions = NO_CAUTIONS;
  /** How the prop looks when a step of gluing is done; null until it is drawn. */
  @property({ attribute: false }) drawn: StepPicture | null = null;

  protected override render() {
    const { line, project } = this;
    if (line === null || project === null) return nothing;
    const picture = this.#picture(line);
    const { far, near } = titleOf(line, this.bench);
    const minded = this.cautions.told.length === 0 ? '' : 'minded';
    return html`<article class=${picture === null ? 'bare' : minded}>
      ${picture === null ? nothing : html`<figure>${picture}</figure>`}
      <div class="text">
        <h1><span class="far">${far}</span> ${near === '' ? nothing : html`<span class="name">${near}</span>`}</h1>
        ${this.#figures(line)} ${this.#state(project, line)} ${this.#copies(project, line)} ${this.#cautions()}
        ${this.#body(line)} ${this.#ticks(project, line)}
      </div>
    </article>`;
  }

  #state(project: Project, line: WorkLine) {
    const state = lineState(project, line);
    if (state === 'open') return nothing;
    return html`<p class=${state === 'changed' ? 'wrong' : 'is-done'}>
      ${state === 'done' ? html`<span aria-hidden="true">✓ </span>` : nothing}${AT_BENCH_WORDS.state[state]}
    </p>`;
  }

  /** One tick for each where several are cut alike. */
  #copies(project: Project, line: WorkLine) {
    const copies = copiesOf(line);
    if (copies.length === 0) return nothing;
    const words = AT_BENCH_WORDS.copies;
    return html`<div class="copies" role="group" aria-label=${words.label}>
      ${copies.map((copy, i) => {
        const isDone = copyState(project, line, copy) === 'done';
        return html`<button
          aria-pressed=${isDone}
          aria-label=${words.copy(i + 1, copies.length)}
          @click=${() => this.send(turnCopy(project, line, copy))}
        >
          <span aria-hidden="true">${isDone ? '✓' : i + 1}</span>
        </button>`;
      })}
    </div>`;
  }

  /** How many are cut, and of how thick a foam: to be read from afar too. */
  #figures(line: WorkLine) {
    if (line.what !== 'cut') return nothing;
    const { quantity, thicknessMm } = line.piece;
    return html`<p class="far figures">
      ${AT_BENCH_WORDS.cut.figures(quantity, formatThickness(thicknessMm, this.unit))}
    </p>`;
  }

  #picture(line: WorkLine) {
    switch (line.what) {
      case 'pages':
      case 'square': {
        const page = this.bench.paper?.pages.find(({ kind }) => kind === (line.what === 'pages' ? 'map' : 'scale'));
        return page === undefined ? null : html`<fl-page-picture .page=${page} boldness="2"></fl-page-picture>`;
      }
      case 'cut':
      case 'bevel':
      case 'form': {
        const { piece } = line;
        return html`<fl-work-picture
          .template=${this.bench.pieces?.templates.find((template) => template.piece === piece.id) ?? null}
          .piece=${'edges' in piece ? piece : null}
          .label=${AT_BENCH_WORDS.cut.picture(`${piece.number} ${piece.name}`)}
        ></fl-work-picture>`;
      }
      case 'glue':
        return this.drawn === null
          ? html`<p class="soft" role="status">${AT_BENCH_WORDS.glue.drawing}</p>`
          : html`<fl-gluing-picture
              .drawn=${this.drawn}
              .label=${AT_BENCH_WORDS.glue.picture(line.step.number)}
            ></fl-gluing-picture>`;
      default:
        return null;
    }
  }

  #body(line: WorkLine) {
    const words = AT_BENCH_WORDS;
    switch (line.what) {
      case 'pages':
        return html`<p>${WORDS.paper.trueScale}</p>
          <div class="row">
            <button class="large" @click=${() => this.ask('save-pdf')}>${words.pages.save}</button>
          </div>`;
      case 'square':
        return html`<p>${words.square.text}</p>`;
      case 'cut':
        return this.#cut(line.piece);
      case 'bevel':
        return this.#list(this.#bevels(line.piece), words.bevel.under);
      case 'form':
        return this.#list(this.#forming(line.piece));
      case 'fit':
        return this.#fit();
      case 'glue':
        return this.#glue(line);
      case 'part':
        return this.#part(line.work.steps[line.at], line.work.copies);
      case 'finish':
        return html`<p class="soft">${line.when}${line.why === '' ? '' : `: ${line.why}`}</p>
          ${line.words.texts.map((text) => html`<p>${text}</p>`)}`;
    }
  }

  #list(texts: readonly string[], note = '') {
    return html`<ul>
        ${texts.map((text) => html`<li>${text}</li>`)}
      </ul>
      ${note === '' ? nothing : html`<p class="soft">${note}</p>`}`;
  }

  #cut(piece: CutPiece) {
    const words = AT_BENCH_WORDS.cut;
    const { hand, tracedSide } = piece;
    const length = (mm: number): string => formatLength(mm, this.unit);
    const box = this.bench.pieces?.templates.find((template) => template.piece === piece.id)?.foamBox;
    const hasBevels = this.lines.some((line) => line.what === 'bevel' && line.piece.id === piece.id);
    const facts = [
      ...(hand === undefined ? [] : [words.hands[hand]]),
      ...(box === undefined ? [] : [WORDS.cuts.size(length(box.maxX - box.minX), length(box.maxY - box.minY))]),
    ];
    const [foundOn] = lieOf(this.bench, piece.id);
    return html`<p>${facts.join(', ')}</p>
      <p>${words.traced[tracedSide]} ${hasBevels ? words.straight : ''}</p>
      ${this.#paperOf(piece)} ${'draft' in piece ? piece.draft.notes.map((note) => html`<p>${note}</p>`) : nothing}
      <p>${this.#lies(piece)}</p>
      ${foundOn === undefined ? nothing : sheetOfPiece(this.bench, piece, foundOn.at)}`;
  }

  /** On which of the sheets it lies: there may be several, and several copies. */
  #lies({ id }: CutPiece): string {
    const words = AT_BENCH_WORDS.cut;
    const of = this.bench.sheets?.sheets.length ?? 0;
    const sheets = lieOf(this.bench, id).map(({ at, label }) => {
      const sheet = words.sheet(at + 1, of);
      return label === '' ? sheet : words.inHand(sheet, label);
    });
    return sheets.length === 0 ? words.nowhere : words.onSheet(sheets);
  }

  /** With whose template it is cut, where it has none of its own. */
  #paperOf({ id }: CutPiece) {
    const shared = this.bench.paper?.turned.find(({ piece }) => piece === id);
    const other = this.bench.pieces?.pieces.find((piece) => piece.id === shared?.template);
    return other === undefined ? nothing : html`<p>${TWIN_WORDS.turnedFrom(other.number)}</p>`;
  }

  #bevels(piece: CutPiece): readonly string[] {
    if ('edges' in piece) return SAW_WORDS.settings(piece);
    const words = AT_BENCH_WORDS.bevel;
    if ('bevelDeg' in piece) return [words.strip(piece.bevelDeg)];
    return plainBevels(piece, words.leans).map(({ setting, lengthsMm }) =>
      words.edges(
        setting,
        [...lengthsMm].sort((a, b) => b - a).map((mm) => formatLength(mm, this.unit)),
      ),
    );
  }

  #forming(piece: CutPiece): readonly string[] {
    if (!('folds' in piece)) return [];
    const words = AT_BENCH_WORDS.form;
    const length = (mm: number): string => formatLength(mm, this.unit);
    const { folds, kerfs, scores = [], bend } = piece;
    const most = (figures: readonly number[]): string => length(Math.max(...figures));
    const grooves = (['back', 'face'] as const).flatMap((side) => {
      const own = folds.flatMap(({ groove }) => (groove?.side === side ? [groove] : []));
      if (own.length === 0) return [];
      return [
        words.grooves(
          own.length,
          side,
          most(own.map(({ depthMm }) => depthMm)),
          most(own.map(({ widthMm }) => widthMm)),
        ),
      ];
    });
    return [
      ...grooves,
      ...(kerfs === undefined ? [] : [words.kerfs(kerfs.lines.length, kerfs.side, length(kerfs.depthMm))]),
      ...(scores.length === 0 ? [] : [words.scores(scores.length, most(scores.map(({ depthMm }) => depthMm)))]),
      ...(bend === undefined ? [] : [words.bend(length(bend.radiusMm))]),
      ...warmOf(this.shop, piece.id),
    ];
  }

  #fit() {
    const { dryFit, pieces } = this.bench;
    if (dryFit === null) return nothing;
    const words = AT_BENCH_WORDS.fit;
    const fine = (mm: number): string => formatFine(mm, this.unit);
    const worst = [...dryFit.perSeam].sort(
      (a, b) => Math.max(b.worstGapMm, b.worstOverlapMm) - Math.max(a.worstGapMm, a.worstOverlapMm),
    )[0];
    const name = (id: string): string => {
      const piece = pieces?.pieces.find((one) => one.id === id);
      return piece === undefined ? '' : `${piece.number} ${piece.name}`;
    };
    return html`<p>${words.text}</p>
      <p>${WORDS.fit.dryFit(fine(dryFit.worstGapMm), fine(dryFit.worstOverlapMm))}</p>
      <p>${words.worst(worst.letter, name(worst.pieces[0]), name(worst.pieces[1]))}</p>`;
  }

  #glue({ step, words, batch }: Extract<WorkLine, { what: 'glue' }>) {
    return html`${
        batch === null
          ? nothing
          : html`<div class="batch">
              <p><b>${toldText(batch.title, this.unit)}</b></p>
              <p>${toldText(batch.times, this.unit)}</p>
            </div>`
      }
      ${
        words.warm.length === 0
          ? nothing
          : html`<p class="soft">
              ${AT_BENCH_WORDS.glue.warmed}
              ${[...new Set(words.warm)].map((text) => toldText(text, this.unit)).join(' ')}
            </p>`
      }
      ${words.painted === '' ? nothing : html`<p><b>${words.painted}</b></p>`}
      <ol>
        ${step.runs.map((_, i) => html`<li>${toldText(words.runs[i], this.unit)}</li>`)}
      </ol>`;
  }

  #part({ text, numbers }: PartStep, copies: number) {
    const words = AT_BENCH_WORDS.part;
    return html`<p>${text}</p>
      ${numbers.length === 0 ? nothing : html`<p>${words.pieces(numbers)}</p>`}
      ${copies === 1 ? nothing : html`<p class="soft">${words.copies(copies)}</p>`}`;
  }

  #cautions() {
    const { told, named } = this.cautions;
    return html`${
      told.length === 0
        ? nothing
        : html`<aside class="mind"><fl-cautions manner="told" .ids=${told}></fl-cautions></aside>`
    }${
      named.length === 0
        ? nothing
        : html`<p class="soft">
            <fl-cautions manner="named" .label=${AT_BENCH_WORDS.mind} .ids=${named}></fl-cautions>
          </p>`
    }`;
  }

  /** How far a piece is in all kinds of work it goes through; glued once every step of gluing that takes it is done. */
  #ticks(project: Project, line: WorkLine) {
    if (line.what !== 'cut' && line.what !== 'bevel' && line.what !== 'form') return nothing;
    const words = AT_BENCH_WORDS.ticks;
    const { piece } = line;
    const kinds = this.lines.flatMap((other) =>
      (other.what === 'bevel' || other.what === 'form') && other.piece.id === piece.id && other.tick.of !== 'step'
        ? [other.tick.of]
        : [],
    );
    const glued = this.lines.filter(
      (other) =>
        other.what === 'glue' &&
        (other.step.runs.some(({ pieces }) => pieces.includes(piece.id)) || other.step.adds.pieces.includes(piece.id)),
    );
    const states = [
      ...(['printed', 'cut', ...kinds] as const).map((kind) => [kind, pieceTick(project.done, piece, kind)] as const),
      ...(glued.length === 0
        ? []
        : [['glued', glued.every((one) => lineState(project, one) === 'done') ? 'done' : 'open'] as const]),
    ];
    return html`<ul class="ticks" aria-label=${words.label}>
      ${states.map(
        ([kind, state]) =>
          html`<li class=${state}>
            <span aria-hidden="true">${{ done: '✓', open: '·', changed: '!' }[state]}</span> ${words.kinds[kind]}<span
              class="unseen"
              >: ${words.stands[state]}</span
            >
          </li>`,
      )}
    </ul>`;
  }
}
