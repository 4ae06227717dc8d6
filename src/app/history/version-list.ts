import { css, html, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { fetchVersion, freeName, keepVersion, removeVersion, renameVersion } from '../../project/kept-commands.ts';
import { LONGEST_NAME, MOST_VERSIONS, versionsOf, type KeptVersion } from '../../project/kept-version.ts';
import { whenSaid } from '../files/when.ts';
import { JobSection } from '../job-section.ts';
import { SHARED } from '../styles.ts';
import { CompareAskEvent } from './history-events.ts';
import { HISTORY_WORDS } from './history-words.ts';

/** Versions kept under names: keep one, name it, fetch it back, compare it, remove it. */
@customElement('fl-version-list')
export class VersionList extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--s3);
        font-size: var(--t-small);
      }
      h3 {
        font-size: var(--t-small);
        font-weight: 600;
      }
      .keep {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s3);
        align-items: end;
      }
      .keep label {
        flex: 1 1 12em;
        display: grid;
        color: var(--ink-soft);
      }
      li {
        display: grid;
        gap: var(--s1);
        padding-block: var(--s2);
        border-block-start: var(--narrow) solid var(--rule-soft);
      }
      li input[type='text'] {
        inline-size: 100%;
        font-weight: 600;
        border-block-end-width: var(--narrow);
      }
      li button.plain {
        min-block-size: var(--target);
      }
      /* Nothing to say takes no room. */
      #taken:empty {
        margin-block-start: calc(-1 * var(--s3));
      }
      .wrong {
        color: var(--wrong);
      }
    `,
  ];

  /** A name that another version has, while it stands there. */
  @state() private taken = '';
  @query('.keep input') private name!: HTMLInputElement;

  /** Puts the keyboard at the name of a new version. */
  override focus(options?: FocusOptions): void {
    this.name.focus(options);
  }

  protected override render() {
    const words = HISTORY_WORDS.versions;
    const versions = this.project === null ? [] : versionsOf(this.project);
    const isFull = versions.length >= MOST_VERSIONS;
    return html`<h3>${words.heading}</h3>
      ${
        isFull
          ? html`<p>${words.full(MOST_VERSIONS)}</p>`
          : html`<div class="keep">
              <label
                >${words.name}<input
                  data-means="version-name"
                  type="text"
                  maxlength=${LONGEST_NAME}
                  autocomplete="off"
                  aria-describedby="taken"
                  .value=${this.#suggested(versions)}
                  @input=${() => (this.taken = '')}
                  @keydown=${(event: KeyboardEvent) => (event.key === 'Enter' ? this.#keep() : undefined)}
              /></label>
              <button @click=${() => this.#keep()}>${words.keep}</button>
            </div>`
      }
      <p id="taken" class="wrong" role="status">${this.taken === '' ? nothing : words.taken(this.taken)}</p>
      ${
        versions.length === 0
          ? nothing
          : html`<ul>
              ${versions.toReversed().map((version) => this.#version(version))}
            </ul>`
      }
      <p class="soft">${words.why}${versions.length === 0 ? nothing : html` ${words.ticks}`}</p>`;
  }

  #suggested(versions: readonly KeptVersion[]): string {
    for (let n = versions.length + 1; ; n += 1) {
      const name = HISTORY_WORDS.versions.suggested(n);
      if (versions.every((version) => version.name !== name)) return name;
    }
  }

  #version({ id, name, keptAt }: KeptVersion) {
    const words = HISTORY_WORDS.versions;
    return html`<li>
      <input
        data-means="version-name"
        type="text"
        maxlength=${LONGEST_NAME}
        autocomplete="off"
        aria-label=${words.nameOf(name)}
        .value=${name}
        @change=${(event: Event) => this.#rename(id, event.target as HTMLInputElement, name)}
      />
      <div class="row">
        <span class="soft">${words.kept(whenSaid(Date.parse(keptAt)))}</span>
        <button class="plain" aria-label=${words.fetchOf(name)} @click=${() => this.send(fetchVersion(id))}>
          ${words.fetch}
        </button>
        <button
          class="plain"
          aria-label=${words.compareOf(name)}
          @click=${() => this.dispatchEvent(new CompareAskEvent(id))}
        >
          ${words.compare}
        </button>
        <button class="plain" aria-label=${words.removeOf(name)} @click=${() => this.send(removeVersion(id))}>
          ${words.remove}
        </button>
      </div>
    </li>`;
  }

  #keep(): void {
    const { project } = this;
    if (project === null) return;
    const name = freeName(project, this.name.value);
    if (name === null) {
      this.taken = this.name.value.trim();
      return;
    }
    this.taken = '';
    this.send(keepVersion(name, `${new Date().toISOString().slice(0, 19)}Z`));
  }

  #rename(id: string, field: HTMLInputElement, name: string): void {
    const { project } = this;
    const free = project === null ? null : freeName(project, field.value);
    if (free !== null) return this.send(renameVersion(id, free));
    this.taken = field.value.trim() === name ? '' : field.value.trim();
    field.value = name;
  }
}
