import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { setLengthUnit } from '../project/commands.ts';
import { CommandEvent, WishEvent } from './events.ts';
import { LANGUAGES } from './language/language.ts';
import './help/help-foot.ts';
import './licences.ts';
import './offline/offline-row.ts';
import { SHARED } from './styles.ts';
import { FIRST_WISHES, type Wishes } from './view-state.ts';
import { WORDS } from './words.ts';

/** Foot of the job sheet: units, light, keys, and what the window is made of. */
@customElement('fl-job-foot')
export class JobFoot extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        padding-block-end: var(--s8);
      }
      fieldset {
        display: grid;
        grid-template-columns: 7.5em minmax(0, 1fr);
      }
      fieldset:first-of-type {
        margin-block-start: var(--s6);
      }
      legend {
        float: inline-start;
        display: flex;
        align-items: center;
        min-block-size: var(--target);
        font-size: var(--t-small);
        color: var(--ink-soft);
        padding: 0;
      }
    `,
  ];

  @property({ attribute: false }) wishes: Wishes = FIRST_WISHES;
  @property() unit: 'mm' | 'in' = 'mm';

  protected override render() {
    const words = WORDS.foot;
    return html`${this.#choices(words.units, 'unit', ['mm', 'in'] as const, this.unit, words.unitNames, (unit) =>
        this.dispatchEvent(new CommandEvent(setLengthUnit(unit))),
      )}
      ${this.#choices(
        words.language,
        'language',
        ['auto', ...LANGUAGES] as const,
        this.wishes.language ?? 'auto',
        words.languages,
        (language) => this.#wish({ language }),
      )}
      ${this.#choices(words.light, 'theme', ['auto', 'light', 'dark'] as const, this.wishes.theme, words.themes, (theme) => this.#wish({ theme }))}
      ${this.#choices(
        words.contrast,
        'contrast',
        ['auto', 'more'] as const,
        this.wishes.contrast,
        words.contrasts,
        (contrast) => this.#wish({ contrast }),
      )}
      ${this.#choices(
        words.picture,
        'picture',
        ['auto', 'fine', 'plain'] as const,
        this.wishes.picture,
        words.pictures,
        (picture) => this.#wish({ picture }),
      )}
      ${this.#choices(
        words.keys,
        'keys',
        ['on', 'off'] as const,
        this.wishes.letterKeys ? 'on' : 'off',
        words.keyNames,
        (keys) => this.#wish({ letterKeys: keys === 'on' }),
      )} <fl-offline-row></fl-offline-row> <fl-help-foot></fl-help-foot> <fl-licences></fl-licences>`;
  }

  #choices<T extends string>(
    label: string,
    name: string,
    values: readonly T[],
    chosen: T,
    names: Readonly<Record<T, string>>,
    take: (value: T) => void,
  ) {
    return html`<fieldset>
      <legend>${label}</legend>
      <div class="choices">
        ${values.map(
          (value) =>
            html`<label
              ><input
                data-means=${`foot-${name}`}
                type="radio"
                name=${name}
                .checked=${value === chosen}
                @change=${() => take(value)}
              />${names[value]}</label
            >`,
        )}
      </div>
    </fieldset>`;
  }

  #wish(patch: Partial<Wishes>): void {
    this.dispatchEvent(new WishEvent(patch));
  }
}
