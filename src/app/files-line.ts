import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import data from '../../shared/cautions.json';
import type { FilesAsk, PaperFile } from '../worker/files-api.ts';
import { allCut } from './bench-state.ts';
import './cutter-fields.ts';
import { dataText } from './data-words.ts';
import { FilesEvent, WishEvent } from './events.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { withPart } from './files-actions.ts';
import {
  DPI,
  EVERYTHING,
  FIRST_PICK,
  isForCutter,
  isNothing,
  NO_FILES,
  SMALLER,
  type FilesLook,
} from './files-look.ts';
import { FILES_WORDS } from './files-words.ts';
import { KEEP_WORDS } from './files/keep-words.ts';
import { toldText } from './finding-text.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { SHARED } from './styles.ts';
import { FIRST_WISHES, type Wishes } from './view-state.ts';
import { WORDS } from './words.ts';

const LASER_CAUTIONS = data.cautions.filter(({ work }) => work.includes('laser'));

const kindsOfPaper = (): readonly PaperFile[] => Object.keys(FILES_WORDS.paper.kinds) as PaperFile[];

/** Files to take away: which, and for machines how; several come as one. */
@customElement('fl-files-line')
export class FilesLine extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .choices {
        flex-direction: column;
      }
      .choices label {
        font-size: var(--t-small);
        min-block-size: 28px;
      }
      .under {
        margin-inline-start: calc(18px + var(--s2));
      }
      .caution {
        padding: var(--s3);
        border: var(--wide) solid var(--wrong);
      }
      .caution h3 {
        font-size: var(--t-body);
        color: var(--wrong);
      }
      dt {
        font-weight: 700;
      }
      .save {
        font-size: var(--t-large);
        min-block-size: 52px;
        inline-size: 100%;
        text-align: start;
      }
      progress {
        inline-size: 100%;
        block-size: 10px;
        accent-color: var(--ink);
      }
      .names {
        columns: 12em;
      }
    `,
  ];

  @property({ attribute: false }) making: FilesLook = NO_FILES;
  @property({ attribute: false }) wishes: Wishes = FIRST_WISHES;
  /** Cutters whose caution was read. */
  @state() private read: readonly string[] = [];

  protected override render() {
    const hasPieces = allCut(this.bench).length > 0 && this.bench.paper !== null;
    return html`<fl-job-line heading=${WORDS.lines.files} mark=${hasPieces ? 'so' : 'missing'}>
      ${
        hasPieces
          ? html`<p slot="answer">${FILES_WORDS.answer}</p>
              ${this.#picks(this.#pick)}`
          : html`<p slot="answer" class="soft">${FILES_WORDS.waiting}</p>`
      }
    </fl-job-line>`;
  }

  get #pick(): FilesAsk {
    return this.wishes.files ?? FIRST_PICK;
  }

  #picks(pick: FilesAsk) {
    const { paper, cutter, pictures, models } = FILES_WORDS;
    const tick = (label: string, isOn: boolean, take: (isOn: boolean) => FilesAsk) =>
      html`<label
        ><input
          data-means="files-kind"
          type="checkbox"
          .checked=${isOn}
          @change=${(event: Event) => this.#take(take((event.target as HTMLInputElement).checked))}
        />${label}</label
      >`;
    return html`<button @click=${() => this.#take(EVERYTHING)}>${KEEP_WORDS.everything}</button>
      <fieldset>
        <legend>${paper.legend}</legend>
        <div class="choices">
          ${kindsOfPaper().map((kind) => tick(paper.kinds[kind], pick.paper.includes(kind), (isOn) => withPaper(pick, kind, isOn)))}
        </div>
      </fieldset>
      <fieldset>
        <legend>${cutter.legend}</legend>
        <div class="choices">
          ${tick(cutter.sheetSvg, pick.sheetSvg, (isOn) => ({ ...pick, sheetSvg: isOn }))}
          ${tick(cutter.dxf, pick.dxf, (isOn) => ({ ...pick, dxf: isOn }))}
        </div>
        ${isForCutter(pick) ? html`<fl-cutter-fields class="under" .project=${this.project}></fl-cutter-fields>` : nothing}
      </fieldset>
      <fieldset>
        <legend>${pictures.legend}</legend>
        <div class="choices">${tick(pictures.png, pick.pngDpi !== null, (isOn) => withPart(pick, 'png', isOn))}</div>
        ${pick.pngDpi === null ? nothing : this.#dpi(pick, pick.pngDpi)}
      </fieldset>
      <fieldset>
        <legend>${models.legend}</legend>
        <div class="choices">
          ${tick(models.stl, pick.stl, (isOn) => ({ ...pick, stl: isOn }))}
          ${tick(models.obj, pick.obj, (isOn) => ({ ...pick, obj: isOn }))}
          ${pick.stl || pick.obj ? tick(models.smaller, pick.timesSmaller !== null, (isOn) => withPart(pick, 'smaller', isOn)) : nothing}
        </div>
        ${pick.stl || pick.obj ? this.#models(pick) : nothing}
      </fieldset>
      ${this.#caution(pick)} ${this.#save(pick)}`;
  }

  #dpi(pick: FilesAsk, dpi: number) {
    return html`<fl-number-field
      data-means="files-dpi"
      class="under"
      label=${FILES_WORDS.pictures.dpi}
      .value=${dpi}
      .least=${DPI.least}
      .most=${DPI.most}
      @fl-number=${(event: NumberEvent) => this.#take({ ...pick, pngDpi: event.value ?? dpi })}
    ></fl-number-field>`;
  }

  #models(pick: FilesAsk) {
    const { timesSmaller } = pick;
    const { stack, times } = FILES_WORDS.models;
    const hasStack = (this.sculptPart?.layers.length ?? 1) > 1;
    return html`${hasStack ? html`<p class="small soft under">${stack}</p>` : nothing}
    ${
      timesSmaller === null
        ? nothing
        : html`<fl-number-field
            data-means="files-smaller"
            class="under"
            label=${times}
            .value=${timesSmaller}
            .least=${SMALLER.over}
            .most=${SMALLER.most}
            isOver
            @fl-number=${(event: NumberEvent) => this.#take({ ...pick, timesSmaller: event.value ?? timesSmaller })}
          ></fl-number-field>`
    }`;
  }

  /** What a laser must never cut: it stands there until it was read, unless a blade cuts. */
  #caution(pick: FilesAsk) {
    if (this.#isSafe(pick)) return nothing;
    const kind = this.project?.cutter?.kind;
    const take = (): void => {
      this.read = [...this.read, kind ?? ''];
      // The button in hand is gone then: the keyboard goes on to what was waiting.
      void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('button.save')?.focus());
    };
    return html`<div class="caution stack" role="group" aria-label=${FILES_WORDS.cautionFirst}>
      <h3>${FILES_WORDS.cautionFirst}</h3>
      ${kind === undefined ? html`<p class="small">${FILES_WORDS.cautionUnknown}</p>` : nothing}
      <dl class="small">
        ${LASER_CAUTIONS.map(
          ({ title, text }) =>
            html`<dt>${dataText(title)}</dt>
              <dd>${dataText(text)}</dd>`,
        )}
      </dl>
      <p class="small soft">${dataText(data.ending)}</p>
      <button @click=${take}>${FILES_WORDS.seen}</button>
    </div>`;
  }

  /** True where nothing dangerous is left unread. */
  #isSafe(pick: FilesAsk): boolean {
    const kind = this.project?.cutter?.kind;
    return !isForCutter(pick) || kind === 'blade' || this.read.includes(kind ?? '');
  }

  #save(pick: FilesAsk) {
    const { progress, saved } = this.making;
    if (progress !== null)
      return html`<div class="stack">
        <progress max="1" .value=${progress.done} aria-label=${FILES_WORDS.progress}></progress>
        <div class="row">
          <span class="small"
            >${progress.text === '' ? WORDS.progress.begins : toldText(progress.text, this.unit)}</span
          >
          <button @click=${() => this.ask('stop-files')}>${FILES_WORDS.stop}</button>
        </div>
      </div>`;
    const why = isNothing(pick) ? FILES_WORDS.nothing : this.#isSafe(pick) ? FILES_WORDS.zip : FILES_WORDS.seenFirst;
    return html`<div class="stack">
      <button
        class="save"
        aria-describedby="why"
        ?disabled=${isNothing(pick) || !this.#isSafe(pick)}
        @click=${() => this.dispatchEvent(new FilesEvent(pick))}
      >
        ${FILES_WORDS.save}
      </button>
      <p id="why" class="small soft">${why}</p>
      ${saved === null ? nothing : this.#saved(saved)}
    </div>`;
  }

  #saved({ name, names, notes }: NonNullable<FilesLook['saved']>) {
    return html`<p class="small" role="status">${FILES_WORDS.saved(name, names.length)}</p>
      ${
        names.length === 1
          ? nothing
          : html`<details>
              <summary>${FILES_WORDS.inside}</summary>
              <ul class="small names">
                ${names.map((file) => html`<li>${file}</li>`)}
              </ul>
            </details>`
      }
      ${notes.map(({ text }) => html`<p class="small">${text}</p>`)}`;
  }

  #take(files: FilesAsk): void {
    this.dispatchEvent(new WishEvent({ files }));
  }
}

/** In the order of the list, whatever was picked first. */
function withPaper(pick: FilesAsk, kind: PaperFile, isOn: boolean): FilesAsk {
  return { ...pick, paper: kindsOfPaper().filter((one) => (one === kind ? isOn : pick.paper.includes(one))) };
}
