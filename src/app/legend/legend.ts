import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  formatFine,
  formatLength,
  formatNumber,
  formatPercent,
  MM_PER_INCH,
  type LengthUnit,
} from '../../base/format-length.ts';
import type { Project } from '../../project/project.ts';
import { EMPTY_BENCH, type Bench } from '../bench-state.ts';
import { SHARED } from '../styles.ts';
import { FIRST_VIEW, type ViewState } from '../view-state.ts';
import { WORDS } from '../words.ts';
import { figureScale, type FigureScale } from './figure-scale.ts';
import { figureOf, type FigureKind } from './figures.ts';
import { LEGEND_WORDS } from './legend-words.ts';
import { placeRead } from './place-under.ts';
import { needlesOf, readingAt, type FigureReading } from './reading.ts';
import './scale-bar.ts';

/** Strokes as they are drawn on the foam. */
const STROKES = [
  ['whole', 'M1 6h24'],
  ['broken', 'M1 6h9M16 6h9'],
] as const;

/** Under this strain a place is told to be flat, per cent: its radius is hundreds of times the thickness. */
const FLAT_PCT = 0.1;

/**
 * The legend of what colours show on the bench: what is measured and in which unit, the scale with its ends at the limits of the foam, the
 * figures under the pointer or where the keyboard is, and what strokes mean. Nothing while colours tell no figure.
 */
@customElement('fl-legend')
export class Legend extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      section {
        display: grid;
        gap: var(--s1);
        padding: var(--s2) var(--s3);
        border: var(--narrow) solid var(--ink);
        background: var(--paper-high);
        font-size: var(--t-small);
      }
      h2 {
        font-size: var(--t-small);
        font-weight: 600;
      }
      p {
        min-block-size: 1lh;
        font-variant-numeric: tabular-nums;
      }
      .strokes {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--s4);
      }
      .stroke {
        display: inline-block;
        inline-size: 26px;
        block-size: 12px;
        vertical-align: -1px;
      }
      .stroke path {
        stroke: var(--ink);
        stroke-width: 1.6;
      }
    `,
  ];

  @property({ attribute: false }) project: Project | null = null;
  @property({ attribute: false }) bench: Bench = EMPTY_BENCH;
  @property({ attribute: false }) view: ViewState = FIRST_VIEW;

  protected override render() {
    const { bench, view, project, unit } = this;
    const kind = figureOf(view.colouring);
    if (kind === null) return nothing;
    const scale = figureScale(kind, project, bench, view.sheet);
    const place = placeRead(view, bench);
    const reading = place === null ? null : readingAt(kind, bench, view.bends, place);
    const { title, ends } = LEGEND_WORDS;
    return html`<section aria-label=${LEGEND_WORDS.choice}>
      <h2>${title[kind](unit)}</h2>
      <fl-scale-bar
        label=${this.#label(kind, scale)}
        .ends=${ends[kind]}
        .limit=${scale.limit}
        .notice=${scale.notice}
        .isOneSided=${scale.isOneSided}
        .needles=${reading === null ? [] : needlesOf(reading)}
        .figure=${(figure: number) => this.#tick(kind, figure)}
      ></fl-scale-bar>
      <p aria-live=${view.under === null ? 'polite' : 'off'}>
        ${reading === null ? this.#hint(kind) : this.#said(reading)}
      </p>
      ${this.#strokes(kind)}
    </section>`;
  }

  get unit(): LengthUnit {
    return this.project?.lengthUnit ?? 'mm';
  }

  #label(kind: FigureKind, { limit, notice }: FigureScale): string {
    return LEGEND_WORDS.scale[kind](this.#figure(kind, limit), this.#figure(kind, notice));
  }

  /** A figure with its unit. */
  #figure(kind: FigureKind, figure: number): string {
    if (kind === 'room' || kind === 'fit') return formatFine(figure, this.unit);
    return kind === 'pull' ? LEGEND_WORDS.pull(formatNumber(figure, 1)) : formatPercent(figure);
  }

  /** A figure under a tick, as its title has the unit. */
  #tick(kind: FigureKind, figure: number): string {
    const isLength = kind === 'room' || kind === 'fit';
    if (isLength && this.unit === 'in') return formatNumber(figure / MM_PER_INCH, 2);
    const digits = Number.isInteger(figure) ? 0 : 1;
    return formatNumber(figure, figure >= 10 ? 0 : digits);
  }

  #hint(kind: FigureKind): string {
    if (kind === 'room' && this.bench.room === null) return LEGEND_WORDS.noCore;
    if (kind === 'bend' && this.view.bends === null) return LEGEND_WORDS.waiting;
    return LEGEND_WORDS.hint[kind];
  }

  #said(reading: FigureReading): string {
    const { unit } = this;
    const words = LEGEND_WORDS.reading;
    switch (reading.kind) {
      case 'stretch':
        return words.stretch(formatPercent(reading.squashPct), formatPercent(reading.stretchPct));
      case 'bend': {
        const { strainPct, radiusMm } = reading;
        const pct = Math.abs(strainPct);
        return pct < FLAT_PCT
          ? words.flat
          : words.bend(strainPct > 0, formatLength(radiusMm, unit), formatPercent(pct));
      }
      case 'room':
        return words.room(formatFine(Math.abs(reading.roomMm), unit), reading.roomMm < 0);
      case 'pull':
        return words.pull(
          reading.letter,
          LEGEND_WORDS.pull(formatNumber(reading.nPerCm, 1)),
          WORDS.springing.way(reading.way),
        );
      case 'fit':
        return words.fit(reading.letter, this.#gap(reading.faceGapMm), this.#gap(reading.backGapMm));
    }
  }

  #gap(mm: number): string {
    const text = formatFine(Math.abs(mm), this.unit);
    return mm < 0 ? LEGEND_WORDS.overlap(text) : LEGEND_WORDS.gap(text);
  }

  #strokes(kind: FigureKind) {
    if (kind !== 'stretch' && kind !== 'bend') return nothing;
    const words = kind === 'stretch' ? WORDS.forming.legend : LEGEND_WORDS.bendStrokes;
    return html`<div class="strokes">
      ${STROKES.map(
        ([name, path]) =>
          html`<span>
            <svg class="stroke" viewBox="0 0 26 12" aria-hidden="true">${svg`<path d=${path} />`}</svg>
            ${words[name]}
          </span>`,
      )}
    </div>`;
  }
}
