import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ROOM_MM, type HoleJoin, type PartJoin, type SeatJoin } from '../project/joins.ts';
import { changeJoin, removeJoin } from '../project/joins-commands.ts';
import { choiceField, lengthField } from './figure-fields.ts';
import { JobSection } from './job-section.ts';
import { PART_JOIN_WORDS } from './part-join-words.ts';
import { nameOfPart } from './part-names.ts';
import { SHARED } from './styles.ts';
import { means } from './help/means.ts';

/** Greatest room round what goes through a hole, mm. */
const MOST_ROOM_MM = 50;

/** How parts have to do with each other, each with the room it has; any may be forgotten. */
@customElement('fl-part-joins')
export class PartJoins extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      h3 {
        font-size: var(--t-small);
        font-weight: 600;
        color: var(--ink-soft);
      }
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        justify-content: space-between;
        gap: var(--s2) var(--s4);
        padding-block: var(--s2);
        border-block-end: var(--narrow) solid var(--rule-soft);
      }
      label {
        display: flex;
        flex-direction: column;
        color: var(--ink-soft);
      }
    `,
  ];

  protected override render() {
    const joins = this.project?.joins ?? [];
    const words = PART_JOIN_WORDS;
    if (joins.length === 0) return nothing;
    return html`<h3>${words.list}</h3>
      <ul aria-label=${words.list}>
        ${joins.map((join) => {
          const says = this.#says(join);
          return html`<li>
            <span>${says}</span>
            ${this.#field(join)}
            <button class="plain" aria-label="${words.remove}: ${says}" @click=${() => this.send(removeJoin(join.id))}>
              ${words.remove}
            </button>
          </li>`;
        })}
      </ul>`;
  }

  #says(join: PartJoin): string {
    const words = PART_JOIN_WORDS;
    const name = (id: string): string => nameOfPart(this.project, id) ?? words.lost;
    switch (join.kind) {
      case 'hole':
        return words.hole(name(join.part), name(join.through));
      case 'seat':
        return words.seat(name(join.part), name(join.on));
      case 'travel':
        return words.travel;
    }
  }

  #field(join: PartJoin) {
    const words = PART_JOIN_WORDS;
    if (join.kind === 'hole')
      return means(
        'join-room',
        lengthField(
          words.room,
          join.roomMm ?? ROOM_MM,
          this.unit,
          (roomMm) => this.send(changeJoin<HoleJoin>(join.id, { roomMm })),
          { least: 0, most: MOST_ROOM_MM },
        ),
      );
    if (join.kind === 'seat')
      return means(
        'join-side',
        choiceField(words.side, words.sides, join.side ?? 'face', (side) =>
          this.send(changeJoin<SeatJoin>(join.id, { side })),
        ),
      );
    return nothing;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-part-joins': PartJoins;
  }
}
