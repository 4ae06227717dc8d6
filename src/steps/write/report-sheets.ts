import { ringArea } from '../../geom/ring.ts';
import type { Sheet, SheetLayout } from '../../model/sheet.ts';

/** Sheets of foam with what lies on them. */
export const sheetsReport = ({ sheets }: SheetLayout): readonly Record<string, unknown>[] =>
  sheets.map((sheet) => ({
    foam: sheet.foam,
    name: sheet.name,
    ...(sheet.label === undefined ? {} : { label: sheet.label }),
    thicknessMm: sheet.thicknessMm,
    widthMm: sheet.widthMm,
    heightMm: sheet.heightMm,
    ...(sheet.outline === undefined ? {} : { outline: sheet.outline }),
    ...(sheet.keepOut === undefined ? {} : { keepOut: sheet.keepOut }),
    usedShare: sheet.usedShare,
    fillAlong: sheet.fillAlong,
    filledMm: sheet.filledMm,
    ...(sheet.offcut === undefined ? {} : { offcut: sheet.offcut }),
    placements: sheet.placements,
  }));

/** What the layout of each foam comes to. */
export function foamLayoutReport({ sheets, tooLarge, splits, odd }: SheetLayout): Record<string, unknown> {
  const foams = [...new Set(sheets.map(({ foam }) => foam))].map((foam) => {
    const own = sheets.filter((sheet) => sheet.foam === foam);
    const last = own[own.length - 1];
    const length = ({ fillAlong, widthMm, heightMm }: Sheet): number => (fillAlong === 'y' ? heightMm : widthMm);
    const begunMm2 = own.reduce(
      (sum, sheet) => sum + sheet.widthMm * sheet.heightMm * (sheet === last ? sheet.filledMm / length(sheet) : 1),
      0,
    );
    const cutMm2 = own.reduce((sum, sheet) => sum + sheet.usedShare * areaOfSheet(sheet), 0);
    return {
      foam,
      bought: own.filter(({ label }) => label === undefined).length,
      inHand: own.filter(({ label }) => label !== undefined).length,
      lastFilledMm: last.filledMm,
      density: cutMm2 / begunMm2,
    };
  });
  return { foams, tooLarge, ...(splits === undefined ? {} : { splits }), ...(odd === undefined ? {} : { odd }) };
}

const areaOfSheet = ({ outline, widthMm, heightMm }: Sheet): number =>
  outline === undefined ? widthMm * heightMm : Math.abs(ringArea(outline));
