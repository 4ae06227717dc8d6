import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { LengthUnit } from '../../base/format-length.ts';
import { VerbEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import type { Verb } from '../verb.ts';
import { HELP_DRAWING_STYLE, helpDrawing, isDrawn } from './drawings.ts';
import { GLOSSARY_WORDS, TERM_NAMES, type TermName } from './glossary-words.ts';
import { NO_HELP, type HelpLook } from './help-look.ts';
import { LINK_STYLE } from './help-style.ts';
import { HELP_WORDS } from './help-words.ts';
import { keyGroups, type KeyRow } from './key-rows.ts';
import { KEY_WORDS } from './key-words.ts';
import { linkedText } from './linked-text.ts';
import { SITUATIONS, type Situation } from './situations.ts';

/** All keys, or the words of the trade, laid over the bench; the job sheet beside it works on. Esc puts it away. */
@customElement('fl-help-sheet')
export class HelpSheet extends LitElement {
  static override styles = [
    SHARED,
    HELP_DRAWING_STYLE,
    LINK_STYLE,
    css`
      :host {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr);
        gap: var(--s3);
        min-block-size: 0;
        padding: var(--s4);
        background: var(--paper);
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--s2) var(--s4);
      }
      h2 {
        font-size: var(--t-head);
        font-weight: 640;
        line-height: 1.2;
      }
      .all {
        overflow-y: auto;
        padding: var(--s2) var(--s3) var(--s4);
        margin-inline: calc(-1 * var(--s3));
      }
      .all:focus-visible {
        outline-offset: -3px;
      }
      .groups {
        columns: 17rem;
        column-gap: var(--s6);
        margin-block-start: var(--s3);
      }
      .groups section {
        break-inside: avoid;
        margin-block-end: var(--s4);
      }
      h3 {
        font-size: var(--t-body);
        border-block-end: var(--wide) solid var(--ink);
        margin-block-end: var(--s1);
      }
      dl.keys > div {
        display: grid;
        grid-template-columns: 11em minmax(0, 1fr);
        gap: var(--s2);
        padding-block: 3px;
        border-block-end: var(--narrow) solid var(--rule-soft);
        font-size: var(--t-small);
      }
      dl.keys kbd {
        margin: 0 2px 0 0;
        font-size: 1em;
      }
      label.find {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s2);
      }
      dl.words {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 23rem), 1fr));
        gap: 0 var(--s6);
      }
      dl.words > div {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-content: start;
        gap: 0 var(--s4);
        padding-block: var(--s3);
        border-block-start: var(--narrow) solid var(--rule);
        scroll-margin-block: var(--s4);
      }
      dl.words > div.is-asked {
        border-inline-start: var(--s2) solid var(--lamp);
        padding-inline-start: var(--s3);
      }
      dl.words :is(dt, dd) {
        grid-column: 1;
      }
      dl.words dd.drawn {
        grid-column: 2;
        grid-row: 1 / 3;
      }
      dt {
        font-weight: 640;
      }
      @media print {
        :host {
          display: block;
        }
        .all {
          overflow: visible;
        }
        button {
          display: none;
        }
      }
      @media (width < 56.25em) {
        svg.help {
          inline-size: 99px;
          block-size: 48px;
        }
      }
    `,
  ];

  @property({ attribute: false }) help: HelpLook = NO_HELP;
  @property() unit: LengthUnit = 'mm';
  /** Single letters are keys. */
  @property({ type: Boolean }) letterKeys = true;
  /** The verbs there would be in a situation; null where the job has nothing for it. */
  @property({ attribute: false }) verbsIn: (situation: Situation) => readonly Verb[] | null = () => null;
  @state() private text = '';
  @query('.all') private all?: HTMLElement;
  #shown = '';

  protected override updated(): void {
    const { sheet, term } = this.help;
    const now = `${sheet ?? ''} ${term}`;
    if (now === this.#shown || sheet === null) return;
    this.#shown = now;
    this.text = '';
    const asked = this.renderRoot.querySelector('.is-asked');
    if (asked === null) this.all?.scrollTo({ top: 0 });
    else asked.scrollIntoView({ block: 'nearest' });
    this.all?.focus({ preventScroll: true });
    this.scrollIntoView({ block: 'nearest' });
  }

  protected override render() {
    const { sheet } = this.help;
    if (sheet === null) return nothing;
    const words = HELP_WORDS.sheet;
    return html`<div class="head">
        <h2>${words[sheet]}</h2>
        ${sheet === 'words' ? this.#finder() : nothing}
        <div class="row">
          ${sheet === 'keys' ? html`<button @click=${() => window.print()}>${words.print}</button>` : nothing}
          <button @click=${() => this.#ask(`help-${sheet}`)}>
            ${words.close}<kbd>${KEY_WORDS.caps['Escape']}</kbd>
          </button>
        </div>
      </div>
      <div class="all" tabindex="0" role="region" aria-label=${words[sheet]}>
        ${sheet === 'keys' ? this.#keys() : this.#words()}
      </div>`;
  }

  #ask(verb: string): void {
    this.dispatchEvent(new VerbEvent(verb));
  }

  #keys() {
    return html`<p class="small soft">${this.letterKeys ? KEY_WORDS.why : KEY_WORDS.off}</p>
      <div class="groups">
        ${keyGroups(SITUATIONS, this.verbsIn).map(
          ({ name, rows, isMissing }) =>
            html`<section>
              <h3>${KEY_WORDS.situations[name]}</h3>
              ${
                isMissing
                  ? html`<p class="small soft">${KEY_WORDS.none}</p>`
                  : html`<dl class="keys">${rows.map((one) => this.#key(one))}</dl>`
              }
            </section>`,
        )}
      </div>`;
  }

  #key({ caps, does }: KeyRow) {
    return html`<div>
      <dt>${caps.map((cap) => html`<kbd>${cap}</kbd>`)}</dt>
      <dd>${does}</dd>
    </div>`;
  }

  #finder() {
    return html`<label class="find"
      >${HELP_WORDS.sheet.find}
      <input
        type="text"
        autocomplete="off"
        .value=${this.text}
        @input=${(event: Event) => (this.text = (event.target as HTMLInputElement).value)}
    /></label>`;
  }

  #words() {
    const asked = this.text.trim().toLowerCase();
    const found = TERM_NAMES.filter((name) => {
      const { word, also, says } = GLOSSARY_WORDS[name];
      return `${word} ${also} ${says}`.toLowerCase().includes(asked);
    }).sort((a, b) => GLOSSARY_WORDS[a].word.localeCompare(GLOSSARY_WORDS[b].word));
    return html`<p class="small soft" role="status">
        ${found.length === 0 ? HELP_WORDS.sheet.none : HELP_WORDS.sheet.count(found.length)}
      </p>
      <dl class="words">${found.map((name) => this.#word(name))}</dl>`;
  }

  #word(name: TermName) {
    const { word, says } = GLOSSARY_WORDS[name];
    return html`<div class=${name === this.help.term ? 'is-asked' : ''}>
      <dt>${word}</dt>
      <dd>${linkedText(says, this.unit, (term) => this.#ask(`word-${term}`))}</dd>
      ${isDrawn(name) ? html`<dd class="drawn">${helpDrawing(name)}</dd>` : nothing}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-help-sheet': HelpSheet;
  }
}
