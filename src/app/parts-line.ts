import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { spokenName } from '../base/spoken-name.ts';
import { addPlain, changePlain, freePartId, workOn, type NewPlain } from '../project/plain-commands.ts';
import type { ShapePart } from '../project/plain-part.ts';
import { firstFoam } from '../project/new-project.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { PartsAsking } from '../worker/parts-api.ts';
import { ChooseEvent, PartFileEvent, SculptFileEvent } from './events.ts';
import './findings.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import { partAdds } from './part-adds.ts';
import { factsOfParts, type PartFacts } from './part-facts.ts';
import './part-fields.ts';
import './part-joins.ts';
import { ownFields } from './part-own-fields.ts';
import { PART_WORDS } from './part-words.ts';
import { newShapeCommand, type DraftShape } from './parts-actions.ts';
import './shape-form.ts';
import type { ShapeEvent } from './shape-form.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** What a new shape begins as: what most handles are made of. */
const FIRST_DRAFT: DraftShape = { shape: 'wrap', sizes: {}, tried: null };

/** What the prop is made of, part by part; one may be chosen, changed and taken away, others added. */
@customElement('fl-parts-line')
export class PartsLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      .part {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--s3);
        inline-size: 100%;
        padding: var(--s2) 0;
        border: 0;
        background: none;
        text-align: start;
        font-weight: 450;
        line-height: 1.35;
      }
      .part[aria-expanded='true'] {
        background: var(--lamp);
        color: var(--on-lamp);
        padding-inline: var(--s2);
      }
      .part[aria-expanded='true'] .soft,
      .part[aria-expanded='true'] .wrong {
        color: inherit;
      }
      .name {
        font-size: var(--t-body);
        font-weight: 600;
      }
      .figures {
        text-align: end;
      }
      li {
        border-block-end: var(--narrow) solid var(--rule-soft);
      }
      .body {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--s4);
        padding-block: var(--s3) var(--s4);
      }
      .wrong {
        color: var(--wrong);
        font-weight: 600;
      }
      .new {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--s3);
        padding: var(--s4);
        border: var(--wide) solid var(--ink);
      }
      .new h3 {
        font-size: var(--t-body);
        font-weight: 700;
      }
      input[type='file'] {
        display: none;
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;
  /** Who knows the shapes. */
  @property({ attribute: false }) asking: PartsAsking | null = null;
  /** A shape that is being added. */
  @state() private draft: DraftShape | null = null;

  protected override render() {
    const { project } = this;
    if (project === null) return nothing;
    const facts = factsOfParts(project, this.bench);
    const pieces = facts.reduce((sum, one) => sum + (one.pieces ?? 0), 0);
    const isWrong = facts.some(({ isMade }) => !isMade);
    const words = PART_WORDS.add;
    return html`<fl-job-line
      asks
      heading=${WORDS.lines.parts}
      mark=${isWrong ? 'wrong' : facts.length === 0 ? 'missing' : 'so'}
    >
      <p slot="answer">${facts.length === 0 ? PART_WORDS.none : PART_WORDS.answer(facts.length, pieces)}</p>
      <ul aria-label=${PART_WORDS.list}>
        ${facts.map((one) => this.#row(one, facts.length === 1))}
      </ul>
      <fl-part-joins .project=${project}></fl-part-joins>
      ${
        this.draft === null
          ? html`<div class="row">
              <button @click=${this.#begin}>${words.shape}</button>
              <button @click=${() => this.#chooser('sculpt')?.click()}>${words.sculpt}</button>
              <button class="from-file" title=${words.fileWhy} @click=${() => this.#chooser('part')?.click()}>
                ${words.file}
              </button>
              ${partAdds(project, this.bench, this.choice, (part) => this.#add(part))}
              ${this.#fileField('sculpt', '.obj,.stl')} ${this.#fileField('part', '.svg,.png,.jpg,.jpeg,.obj,.stl')}
            </div>`
          : this.#new(this.draft)
      }
    </fl-job-line>`;
  }

  #row(facts: PartFacts, isLast: boolean) {
    const { id, name, copies, kind, pieces, foam, told, isAtWork, isMade } = facts;
    const isChosen = this.#isChosen(id);
    const words = PART_WORDS;
    const isSeveral = (this.project?.parts.length ?? 0) > 1;
    const about = [kind, ...(isAtWork && isSeveral ? [words.atWork] : []), foam].filter((text) => text !== '');
    return html`<li>
      <button
        class="part"
        data-part=${id}
        aria-expanded=${isChosen}
        @pointerenter=${() => this.point({ parts: [id] })}
        @pointerleave=${() => this.point(null)}
        @focus=${() => this.point({ parts: [id] })}
        @blur=${() => this.point(null)}
        @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'part', part: id }))}
      >
        <span>
          <span class="name">${name}</span><br />
          <span class="small soft">${about.join(', ')}</span>
        </span>
        <span class="figures small">
          ${isMade ? (pieces === null ? words.notYet : words.pieces(pieces)) : html`<span class="wrong">${words.notMade}</span>`}
          ${copies > 1 ? html`<br /><span class="soft">${words.copies(copies)}</span>` : nothing}
          ${told > 0 ? html`<br /><b>${words.told(told)}</b>` : nothing}
        </span>
      </button>
      ${isChosen ? this.#body(facts, isLast) : nothing}
    </li>`;
  }

  #body({ part, isAtWork }: PartFacts, isLast: boolean) {
    const words = PART_WORDS.fields;
    if (part === null) return html`<p class="small soft">${words.ofArea}</p>`;
    return html`<div class="body">
      ${
        part.kind === 'sculpt'
          ? html`<div class="row">
                ${isAtWork ? nothing : html`<button @click=${() => this.send(workOn(part.id))}>${words.workOn}</button>`}
                <span class="small soft">${isAtWork ? words.sculpt : words.notAtWork}</span>
              </div>
              <fl-findings
                .bench=${this.bench}
                .project=${this.project}
                .steps=${isAtWork ? ['assembly'] : []}
                ofPart=${isAtWork ? '' : part.id}
              ></fl-findings>`
          : html`<fl-findings
                .bench=${this.bench}
                .project=${this.project}
                .steps=${part.kind === 'shape' ? ['shape'] : []}
                ofPart=${part.id}
              ></fl-findings>
              ${part.kind === 'shape' ? this.#shape(part) : ownFields(part, this.project, this.bench, this.asking)}`
      }
      <fl-part-fields .project=${this.project} .bench=${this.bench} .item=${part} .isLast=${isLast}></fl-part-fields>
    </div>`;
  }

  #shape(part: ShapePart) {
    const { id, shape, sizes } = part;
    return html`<fl-shape-form
      .asking=${this.asking}
      .shape=${shape}
      .sizes=${sizes}
      .foam=${this.#foamOf(part.foams[0])}
      .unit=${this.unit}
      .isKept=${true}
      @fl-shape=${(event: ShapeEvent) => {
        if (event.tried.pieces.length > 0)
          this.send(changePlain<ShapePart>(id, { shape: event.shape, sizes: event.sizes }, 'change a shape'));
      }}
    ></fl-shape-form>`;
  }

  /** A shape that is not in the project yet. */
  #new(draft: DraftShape) {
    const words = PART_WORDS.add;
    return html`<section class="new" aria-label=${words.heading}>
      <h3>${words.heading}</h3>
      <fl-shape-form
        .asking=${this.asking}
        .shape=${draft.shape}
        .sizes=${draft.sizes}
        .foam=${this.#foamOf(undefined)}
        .unit=${this.unit}
        @fl-shape=${({ shape, sizes, tried }: ShapeEvent) => (this.draft = { shape, sizes, tried })}
      ></fl-shape-form>
      <div class="row">
        <button class="next" @click=${() => void this.#put(draft)}>${words.put}</button>
        <button class="plain" @click=${() => (this.draft = null)}>${words.leave}</button>
      </div>
    </section>`;
  }

  #foamOf(id: string | undefined): FoamSheet | null {
    const foams = this.project?.foams ?? [];
    const usual = this.sculptPart?.layers.at(-1)?.foam;
    const find = (wanted: string | undefined): FoamSheet | undefined => foams.find((foam) => foam.id === wanted);
    return find(id) ?? find(usual) ?? (foams.length === 0 ? null : firstFoam(foams));
  }

  /** Puts a part in the project and opens its fields. */
  #add(part: NewPlain): void {
    if (this.project === null) return;
    const id = freePartId(this.project);
    this.send(addPlain(part));
    this.dispatchEvent(new ChooseEvent({ kind: 'part', part: id }));
  }

  #isChosen(id: string): boolean {
    return this.choice.kind === 'part' && this.choice.part === id;
  }

  #begin(): void {
    this.draft = FIRST_DRAFT;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('section.new')?.scrollIntoView({ block: 'nearest' }),
    );
  }

  async #put({ shape, sizes, tried }: DraftShape): Promise<void> {
    const foam = this.#foamOf(undefined);
    if (this.project === null || this.asking === null || foam === null) return;
    const { thicknessMm, neutralFraction } = foam;
    const now = tried ?? (await this.asking.tryShape({ shape, sizes, foam: { thicknessMm, neutralFraction } }));
    if (now.pieces.length === 0) return;
    const { command, id } = newShapeCommand(
      this.project,
      this.bench,
      spokenName(shape),
      { shape, sizes, tried: now },
      foam,
    );
    this.draft = null;
    this.send(command);
    this.dispatchEvent(new ChooseEvent({ kind: 'part', part: id }));
  }

  #fileField(id: 'sculpt' | 'part', accept: string) {
    return html`<input
      id=${id}
      type="file"
      accept=${accept}
      tabindex="-1"
      aria-hidden="true"
      @change=${(event: Event) => this.#takeFile(event, id)}
    />`;
  }

  #chooser(id: 'sculpt' | 'part'): HTMLInputElement | null {
    return this.renderRoot.querySelector(`#${id}`);
  }

  #takeFile(event: Event, as: 'sculpt' | 'part'): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    const foam = this.#foamOf(undefined);
    input.value = '';
    if (file === undefined || foam === null) return;
    this.dispatchEvent(as === 'sculpt' ? new SculptFileEvent(file) : new PartFileEvent(file, foam.id));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-parts-line': PartsLine;
  }
}
