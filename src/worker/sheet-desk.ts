import type { PieceId } from '../base/ids.ts';
import type { FreeAsk, FreePlaces } from '../model/free-places.ts';
import type { Sheet } from '../model/sheet.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { fillOf } from '../project/fill-rule.ts';
import { foamArea } from '../steps/nest/foam-area.ts';
import { boughtRoom, stockRoom, type FoamRoom } from '../steps/nest/foam-room.ts';
import { freePlaces, type LaidArea } from '../steps/nest/free-places.ts';
import type { SheetAsking } from './sheet-api.ts';

/** Answers about the sheets of the last compute. */
export class SheetDesk implements SheetAsking {
  readonly #outcome: () => Outcome | null;

  constructor(outcome: () => Outcome | null) {
    this.#outcome = outcome;
  }

  freePlaces(ask: FreeAsk): Promise<FreePlaces | null> {
    const outcome = this.#outcome();
    const sheet = outcome?.sheets?.sheets.at(ask.sheet);
    if (outcome === null || sheet === undefined) return Promise.resolve(null);
    const room = roomOf(outcome, sheet);
    const moving = areaOf(outcome, ask.piece);
    if (room === null || moving === null) return Promise.resolve(null);
    const { turnRad, isFlipped } = ask;
    const others = sheet.placements.flatMap((other): LaidArea[] => {
      const area = areaOf(outcome, other.piece);
      if (area === null || (other.piece === ask.piece && other.copy === ask.copy)) return [];
      const move = { x: other.x, y: other.y, turnRad: other.turnRad, isFlipped: other.isFlipped ?? false };
      return [{ piece: other.piece, copy: other.copy, area, move }];
    });
    const own = { piece: ask.piece, copy: ask.copy, area: moving, move: { x: 0, y: 0, turnRad, isFlipped } };
    const { spacingMm } = fillOf(outcome.project.stock, sheet.foam);
    return Promise.resolve(freePlaces(room, spacingMm, own, others));
  }
}

function roomOf({ project }: Outcome, { foam, name }: Sheet): FoamRoom | null {
  const fill = fillOf(project.stock, foam);
  const inHand = project.stock?.sheets?.find(({ id }) => id === name.stock);
  if (inHand !== undefined) return stockRoom(inHand, fill, name.nth);
  const bought = project.foams.find(({ id }) => id === foam);
  return bought === undefined ? null : boughtRoom(bought, fill, name.nth);
}

function areaOf({ templates }: Outcome, piece: PieceId): LaidArea['area'] | null {
  const template = templates?.find((one) => one.piece === piece);
  return template === undefined ? null : foamArea(template);
}
