import { LitElement, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, type LengthUnit } from '../base/format-length.ts';
import type { RoomField } from '../model/room-field.ts';
import './field-scale.ts';
import { LOOK_WORDS as WORDS } from './look-words.ts';
import { SHARED } from './styles.ts';

/** The scale of the room round cores: 0 is where foam touches, ticks stand at the room wanted, a needle at the place under the pointer. */
@customElement('fl-room-legend')
export class RoomLegend extends LitElement {
  static override styles = [SHARED];

  @property({ attribute: false }) field: RoomField | null = null;
  /** Room under the pointer, mm, or null. */
  @property({ attribute: false }) roomMm: number | null = null;
  @property() unit: LengthUnit = 'mm';

  protected override render() {
    const { field, roomMm } = this;
    if (field === null) return html`<p class="small">${WORDS.noCore}</p>`;
    const { limitMm, wantedMm } = field;
    const mm = (figure: number): string => formatFine(figure, this.unit);
    return html`<fl-field-scale
        label=${WORDS.roomLegend(mm(limitMm), mm(wantedMm))}
        .limit=${limitMm}
        .notice=${wantedMm > 0 ? wantedMm : limitMm / 2}
        .needles=${roomMm === null ? [] : [roomMm]}
      ></fl-field-scale>
      <p class="small" aria-live="polite">
        ${roomMm === null ? WORDS.roomHint(mm(wantedMm)) : WORDS.roomReading(mm(Math.abs(roomMm)), roomMm < 0)}
      </p>`;
  }
}
