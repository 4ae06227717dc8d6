import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { TrimProfile } from '../model/trim.ts';
import { usualProfile } from '../project/new-strips.ts';
import { changePlain } from '../project/plain-commands.ts';
import type { CoversPart, TrimPart } from '../project/plain-part.ts';
import type { StripAlong, StripWish } from '../project/trim-part.ts';
import { choiceField, lengthField, numberField, openLengthField } from './figure-fields.ts';
import { FIELDS_BELOW, FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import { profileFields } from './profile-fields.ts';
import { STRIP_WORDS } from './strip-words.ts';
import { SHARED } from './styles.ts';
import { pairsOfSeam } from './wish-actions.ts';
import { means } from './help/means.ts';

/** A strip turns by less at a node of seams, degrees. */
const MOST_TURN_DEG = 150;

/** What covers and trim are like, and the seams that trim follows. */
@customElement('fl-strip-fields')
export class StripFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    FIELDS_BELOW,
    css`
      .choices {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s1) var(--s4);
        font-size: var(--t-small);
      }
    `,
  ];

  @property({ attribute: false }) item: CoversPart | TrimPart | null = null;

  protected override render() {
    const { item: part, unit } = this;
    if (part === null) return nothing;
    const words = STRIP_WORDS;
    const { strip } = part;
    return html`<fieldset>
        <legend>${words.fields}</legend>
        <div class="fields">
          ${means(
            'strip-width',
            lengthField(words.width, strip.widthMm, unit, (widthMm) => this.#change({ widthMm })),
          )}
          ${means(
            'strip-longest',
            openLengthField(words.longest, strip.mostLengthMm, unit, (mm) => this.#longest(mm), words.asItComes, {
              least: 2 * strip.widthMm,
            }),
          )}
          ${
            part.kind === 'covers'
              ? means(
                  'strip-turn',
                  numberField(words.turn, part.mostTurnDeg, '°', (deg) => this.#turn(deg), { most: MOST_TURN_DEG }),
                )
              : means(
                  'strip-left',
                  numberField(words.left, 100 * strip.leftShare, '%', (pct) => this.#change({ leftShare: pct / 100 }), {
                    most: 100,
                  }),
                )
          }
          ${means(
            'strip-profile',
            choiceField(words.profile, words.profiles, strip.profile.kind, (kind) => this.#profile(kind)),
          )}
          ${profileFields(strip.profile, unit, (profile) => this.#change({ profile }))}
        </div>
      </fieldset>
      ${part.kind === 'trim' ? this.#along(part) : nothing}`;
  }

  #along({ on, along }: TrimPart) {
    const words = STRIP_WORDS;
    if (along.by === 'line') return html`<p class="small soft">${words.drawn}</p>`;
    if (this.sculptPart?.id !== on) return html`<p class="small soft">${words.notAtWork}</p>`;
    const seams = (this.bench.seams?.chains ?? []).filter(({ id }) => pairsOfSeam(this.bench, id).length > 0);
    const chosen = seams.filter(({ id, letter }) => this.#follows(along, id, letter)).map(({ id }) => id);
    return html`<fieldset>
      <legend>${words.along}</legend>
      <div class="choices">
        ${seams.map(({ id, letter }) => {
          const isOn = chosen.includes(id);
          const isLast = isOn && chosen.length === 1;
          const others = chosen.filter((one) => one !== id);
          const light = (): void => this.#light(id);
          const dim = (): void => this.point(null);
          return html`<label
            title=${isLast ? words.lastSeam : nothing}
            @pointerenter=${light}
            @pointerleave=${dim}
            @focusin=${light}
            @focusout=${dim}
          >
            <input
              data-means="strip-edges"
              type="checkbox"
              .checked=${isOn}
              ?disabled=${isLast}
              @change=${() => this.#follow(isOn ? others : [...chosen, id])}
            />${letter === '' ? words.edge(id) : letter}
          </label>`;
        })}
      </div>
    </fieldset>`;
  }

  #light(seam: string): void {
    const at = (this.bench.seams?.chains ?? []).findIndex(({ id }) => id === seam);
    if (at >= 0) this.point({ seams: [at] });
  }

  #follows(along: Exclude<StripAlong, { by: 'line' }>, id: string, letter: string): boolean {
    if (along.by === 'seams') return along.ids.includes(id) || along.ids.includes(letter);
    const own = pairsOfSeam(this.bench, id);
    return along.edges.some(([a, b]) => own.some(([c, d]) => (a === c && b === d) || (a === d && b === c)));
  }

  #follow(seams: readonly string[]): void {
    const edges = seams.flatMap((id) => pairsOfSeam(this.bench, id).slice(0, 1));
    if (this.item !== null)
      this.send(changePlain<TrimPart>(this.item.id, { along: { by: 'edges', edges } }, 'follow other seams'));
  }

  #longest(mm: number | undefined): void {
    if (mm !== undefined) return this.#change({ mostLengthMm: mm });
    const { item } = this;
    if (item === null) return;
    const { mostLengthMm: _, ...strip } = item.strip;
    this.send(changePlain<CoversPart>(item.id, { strip }, 'change a strip'));
  }

  #turn(mostTurnDeg: number): void {
    if (this.item !== null) this.send(changePlain<CoversPart>(this.item.id, { mostTurnDeg }, 'change a strip'));
  }

  /** An edging goes round all the foam of the sculpt. */
  #profile(kind: TrimProfile['kind']): void {
    const { item, project } = this;
    const layers = project?.parts.find(({ id }) => id === item?.on)?.layers ?? [];
    const wallMm = layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
    this.#change({ profile: usualProfile(kind, wallMm) });
  }

  #change(change: Partial<StripWish>): void {
    const { item } = this;
    if (item !== null)
      this.send(changePlain<CoversPart>(item.id, { strip: { ...item.strip, ...change } }, 'change a strip'));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-strip-fields': StripFields;
  }
}
