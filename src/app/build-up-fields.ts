import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatLength } from '../base/format-length.ts';
import type { ProfileCorner, SideLine, WindingWish, WrapSheet } from '../model/build-up.ts';
import type { BuildUpFields as BuildUpOf } from '../project/build-up-part.ts';
import { profileText, readProfile } from '../project/core-text.ts';
import { newWinding, woundOver } from '../project/new-core.ts';
import { changePlain } from '../project/plain-commands.ts';
import type { BuildUpPart } from '../project/plain-part.ts';
import type { PartsAsking, PipeOffer } from '../worker/parts-api.ts';
import { BUILD_UP_WORDS } from './build-up-words.ts';
import './core-side.ts';
import { choiceField, lengthField } from './figure-fields.ts';
import { FIELDS_BELOW, FIELDS_STYLE } from './fields-style.ts';
import { findingText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { means } from './help/means.ts';

type Wish = BuildUpOf['wish'];

/** A core, the profile that is built up on it, and a strip that is wound round it. Its side is drawn while the profile is typed. */
@customElement('fl-build-up-fields')
export class BuildUpFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    FIELDS_BELOW,
    css`
      .profile input {
        inline-size: 100%;
        font-size: var(--t-body);
      }
      .profile {
        display: flex;
        flex-direction: column;
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) item: BuildUpPart | null = null;
  /** Who knows the pipes and draws the side. */
  @property({ attribute: false }) asking: PartsAsking | null = null;
  @state() private pipes: readonly PipeOffer[] = [];
  @state() private lines: readonly SideLine[] = [];
  /** What is wrong with the profile as it was typed. */
  @state() private fault = '';
  #turn = 0;
  #isAsked = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (this.asking !== null && !this.#isAsked) {
      this.#isAsked = true;
      void this.asking.pipes().then((pipes) => (this.pipes = pipes));
    }
    if (changed.has('item')) this.fault = '';
    if ((changed.has('item') || changed.has('asking')) && this.item !== null) void this.#draw(this.item.wish);
  }

  protected override render() {
    const { item } = this;
    if (item === null) return nothing;
    const { wish } = item;
    const words = BUILD_UP_WORDS;
    return html`${this.#core(wish)}
      <fieldset class="stack">
        <legend>${words.built}</legend>
        <label class="profile">
          ${words.profile}
          <input
            data-means="profile"
            type="text"
            autocomplete="off"
            spellcheck="false"
            .value=${profileText(wish.profile)}
            aria-invalid=${this.fault === '' ? 'false' : 'true'}
            aria-describedby="profile-means profile-fault"
            @input=${(event: Event) => this.#type(event, wish)}
            @change=${(event: Event) => this.#take(event, wish)}
          />
        </label>
        <span id="profile-means" class="small soft">${words.profileMeans}</span>
        <span id="profile-fault" class="small wrong" role="status">${this.fault}</span>
        <fl-core-side
          .lines=${this.lines}
          core=${wish.core.pipe ?? formatLength(wish.core.diameterMm, this.unit)}
        ></fl-core-side>
        <div class="fields">
          ${means(
            'build-up-rule',
            choiceField(words.rule, words.rules, wish.rule, (rule) => this.#change({ rule })),
          )}
        </div>
      </fieldset>
      ${this.#wound(wish)}`;
  }

  #core({ core }: Wish) {
    const words = BUILD_UP_WORDS;
    const { unit } = this;
    return html`<fieldset>
      <legend>${words.core}</legend>
      <div class="fields">
        <label>
          ${words.pipe}
          <select data-means="pipe" @change=${(event: Event) => this.#pipe((event.target as HTMLSelectElement).value)}>
            <option value="" .selected=${core.pipe === undefined}>${words.byDiameter}</option>
            ${this.pipes.map(
              ({ name }) => html`<option value=${name} .selected=${name === core.pipe}>${name}</option>`,
            )}
          </select>
        </label>
        ${means(
          'core-diameterMm',
          lengthField(words.diameter, core.diameterMm, unit, (diameterMm) => this.#ofDiameter(diameterMm)),
        )}
        ${means(
          'core-lengthMm',
          lengthField(words.long, core.overallMm, unit, (overallMm) => this.#change({ core: { ...core, overallMm } })),
        )}
      </div>
    </fieldset>`;
  }

  #wound({ windings, profile, core }: Wish) {
    const words = BUILD_UP_WORDS;
    const { unit } = this;
    const wind = (own: readonly WindingWish[]): void => this.#change({ windings: own });
    if (windings.length === 0)
      return html`<div class="row">
        <button @click=${() => wind([newWinding(profile, core.overallMm)])}>${words.wind}</button>
      </div>`;
    return windings.map((winding, at) => {
      const change = (to: Partial<WindingWish>): void => wind(windings.with(at, { ...winding, ...to }));
      const { by } = winding;
      return html`<fieldset>
        <legend>${words.wound}</legend>
        <div class="fields">
          ${means(
            'winding-width',
            lengthField(words.width, winding.widthMm, unit, (widthMm) => change({ widthMm })),
          )}
          ${
            'pitchMm' in by
              ? means(
                  'winding-pitch',
                  lengthField(words.pitch, by.pitchMm, unit, (pitchMm) => change({ by: { pitchMm } })),
                )
              : means(
                  'winding-overlap',
                  lengthField(words.overlap, by.overlapMm, unit, (overlapMm) => change({ by: { overlapMm } }), {
                    least: -winding.widthMm,
                  }),
                )
          }
        </div>
        <button class="plain" @click=${() => wind(windings.toSpliced(at, 1))}>${words.unwind}</button>
      </fieldset>`;
    });
  }

  #pipe(name: string): void {
    const { item } = this;
    const pipe = this.pipes.find((one) => one.name === name);
    if (item === null) return;
    const { pipe: _, material: __, ...core } = item.wish.core;
    this.#change({
      core: pipe === undefined ? core : { ...core, pipe: name, material: pipe.material, diameterMm: pipe.outsideMm },
    });
  }

  /** Another diameter is that of no pipe by name. */
  #ofDiameter(diameterMm: number): void {
    const { item } = this;
    if (item === null) return;
    const { pipe: _, material: __, ...core } = item.wish.core;
    this.#change({ core: { ...core, diameterMm } });
  }

  /** Drawn, and nothing else. */
  #type(event: Event, wish: Wish): void {
    const read = readProfile((event.target as HTMLInputElement).value);
    if (read.ok) void this.#draw(withProfile(wish, read.value));
  }

  #take(event: Event, wish: Wish): void {
    const read = readProfile((event.target as HTMLInputElement).value);
    this.fault = read.ok ? '' : findingText(read.problem, this.unit);
    if (read.ok) this.#change(withProfile(wish, read.value));
  }

  #change(change: Partial<Wish>): void {
    const { item } = this;
    if (item !== null)
      this.send(changePlain<BuildUpPart>(item.id, { wish: { ...item.wish, ...change } }, 'change a core'));
  }

  /** What is not made leaves the last drawing. */
  async #draw(wish: Wish): Promise<void> {
    const { item, asking } = this;
    if (item === null || asking === null) return;
    const turn = ++this.#turn;
    const sheets = item.foams
      .filter((id) => item.wraps?.includes(id) !== false)
      .flatMap((id) => this.project?.foams.find((foam) => foam.id === id) ?? [])
      .map(({ thicknessMm, neutralFraction }): WrapSheet => ({ thicknessMm, neutralFraction }));
    const lines = await asking.coreSide({ ...wish, sheets });
    if (turn === this.#turn && lines.length > 0) this.lines = lines;
  }
}

const withProfile = (wish: Wish, profile: readonly ProfileCorner[]): Wish => ({
  ...wish,
  profile,
  windings: woundOver(wish.windings, wish.profile, profile),
});

declare global {
  interface HTMLElementTagNameMap {
    'fl-build-up-fields': BuildUpFields;
  }
}
