import { html, nothing } from 'lit';
import { formatMm } from '../base/format-length.ts';
import type { Command } from '../project/commands.ts';
import type { SculptPart } from '../project/project.ts';
import { MOST_OFF_MM, setOff } from '../project/wear-commands.ts';
import { WORDS } from './words.ts';

/** A move of less than this is none: no knife cuts finer, mm. */
const NO_MOVE_MM = 0.01;

/** Offers to move all of the foam outward or inward so that it fits; nothing where no move does it or none is needed. */
export function moveButton(
  moveMm: number | null | undefined,
  part: SculptPart | null,
  send: (command: Command) => void,
) {
  if (moveMm == null || part === null || Math.abs(moveMm) < NO_MOVE_MM) return nothing;
  const offMm = (part.offMm ?? 0) + moveMm;
  if (Math.abs(offMm) > MOST_OFF_MM) return nothing;
  return html`<button @click=${() => send(setOff(offMm))}>
    ${WORDS.wear.move(formatMm(Math.abs(moveMm)), moveMm > 0)}
  </button>`;
}
