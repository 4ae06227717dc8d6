import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { VerbEvent } from './events.ts';
import { termVerbs } from './help/term-verbs.ts';
import { isTaken } from './key-cap.ts';
import { SHARED } from './styles.ts';
import type { Verb } from './verb.ts';
import { WORDS } from './words.ts';

/** All that can be done, found by typing. A field with a list under it (the combobox pattern of WAI-ARIA). */
@customElement('fl-finder')
export class Finder extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        background: var(--paper-high);
        border: var(--wide) solid var(--ink);
        padding: var(--s3);
      }
      input[type='text'] {
        inline-size: 100%;
        font-size: var(--t-large);
        min-block-size: 44px;
      }
      ul {
        max-block-size: min(50vh, 24rem);
        overflow-y: auto;
        margin-block-start: var(--s2);
      }
      li {
        display: flex;
        justify-content: space-between;
        gap: var(--s4);
        padding: var(--s2);
        cursor: pointer;
      }
      li[aria-selected='true'] {
        background: var(--lamp);
        color: var(--on-lamp);
      }
      .none {
        padding: var(--s2);
      }
    `,
  ];

  @property({ attribute: false }) verbs: readonly Verb[] = [];
  @state() private text = '';
  @state() private at = 0;
  @query('input') private input!: HTMLInputElement;

  protected override firstUpdated(): void {
    this.input.focus();
  }

  protected override updated(_changed: PropertyValues): void {
    this.renderRoot.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }

  protected override render() {
    const found = this.#found();
    const at = Math.min(this.at, found.length - 1);
    return html`<input
        type="text"
        role="combobox"
        aria-expanded="true"
        aria-controls="list"
        aria-autocomplete="list"
        aria-label=${WORDS.finder.label}
        aria-activedescendant=${at >= 0 ? `verb-${at}` : nothing}
        placeholder=${WORDS.finder.hint}
        autocomplete="off"
        .value=${this.text}
        @input=${this.#type}
        @keydown=${this.#onKey}
      />
      <ul id="list" role="listbox" aria-label=${WORDS.finder.label}>
        ${found.map(
          (verb, i) =>
            html`<li
              id="verb-${i}"
              role="option"
              aria-selected=${i === at}
              @pointerdown=${(event: Event) => this.#choose(event, verb)}
            >
              <span>${verb.label}</span>${this.#key(verb)}
            </li>`,
        )}
      </ul>
      ${found.length === 0 ? html`<p class="none soft">${WORDS.finder.none}</p>` : nothing}`;
  }

  /** Verbs that hold every word typed, first those in which each begins a word, then words of the trade. */
  #found(): readonly Verb[] {
    const words = this.text
      .toLowerCase()
      .split(/\s+/)
      .filter((word) => word !== '');
    const verbs = this.verbs.filter((verb) => words.every((word) => verb.label.toLowerCase().includes(word)));
    const begins = ({ label }: Verb): boolean => {
      const parts = label.toLowerCase().split(/[\s(:]+/);
      return words.every((word) => parts.some((part) => part.startsWith(word)));
    };
    return [...verbs.filter(begins), ...verbs.filter((verb) => !begins(verb)), ...termVerbs(words)];
  }

  /** A key that does something else as things stand says when it does this. */
  #key(verb: Verb) {
    if (verb.key === undefined) return nothing;
    const cap = html`<kbd>${verb.key.toUpperCase()}</kbd>`;
    return isTaken(this.verbs, verb) ? html`<span class="small">${WORDS.finder.later}${cap}</span>` : cap;
  }

  #type(event: Event): void {
    this.text = (event.target as HTMLInputElement).value;
    this.at = 0;
  }

  #onKey(event: KeyboardEvent): void {
    const found = this.#found();
    if (event.key === 'Enter') {
      const verb = found[Math.min(this.at, found.length - 1)];
      if (verb !== undefined) this.#choose(event, verb);
      return;
    }
    const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (way === undefined || found.length === 0) return;
    event.preventDefault();
    this.at = (Math.min(this.at, found.length - 1) + way + found.length) % found.length;
  }

  #choose(event: Event, verb: Verb): void {
    event.preventDefault();
    this.dispatchEvent(new VerbEvent(verb.id));
  }
}
