import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { JobSection } from './job-section.ts';
import { LOOK_WORDS as WORDS } from './look-words.ts';
import { SHARED } from './styles.ts';

/** As one walks round a thing, then over and under it. */
const SIDES = ['front', 'left', 'back', 'right', 'top', 'bottom'] as const;

/** The row beside the scene: from which of six sides the prop is looked at, and all of it in one picture. */
@customElement('fl-stage-sides')
export class StageSides extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        justify-content: flex-end;
        gap: var(--s1) var(--s2);
        pointer-events: none;
      }
      :host > * {
        pointer-events: auto;
      }
      [role='group'] {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        padding-inline: var(--s3) var(--s1);
        border: var(--narrow) solid var(--ink);
        background: var(--paper-high);
      }
      [role='group'] > span {
        padding-inline-end: var(--s1);
        color: var(--ink-soft);
        font-size: var(--t-small);
      }
      button {
        padding-block: 0;
        font-size: var(--t-small);
        font-weight: 450;
      }
      [role='group'] button {
        min-inline-size: var(--target);
        padding-inline: var(--s2);
        border: 0;
        background: none;
      }
      [role='group'] button:hover {
        text-decoration: underline;
      }
      @container (width < 720px) {
        [role='group'] {
          padding-inline: 0;
        }
        [role='group'] > span {
          display: none;
        }
        button,
        [role='group'] button {
          padding-inline: var(--s2) 6px;
        }
      }
    `,
  ];

  /** False where nothing is drawn in 3D: then there are no sides. */
  @property({ type: Boolean }) hasScene = false;

  protected override render() {
    const { sculpt, plain } = this.bench;
    if (!this.hasScene || (sculpt === null && plain.every(({ form }) => form === null))) return nothing;
    return html`<div role="group" aria-label=${WORDS.from}>
        <span aria-hidden="true">${WORDS.from}</span>
        ${SIDES.map((side) => html`<button @click=${() => this.ask(`look-${side}`)}>${WORDS.sides[side]}</button>`)}
      </div>
      <button @click=${() => this.ask('frame-prop')}>${WORDS.wholeProp}</button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-stage-sides': StageSides;
  }
}
