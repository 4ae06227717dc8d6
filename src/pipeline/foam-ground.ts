import type { Mesh } from '../mesh/mesh.ts';
import { BEND_LIMITS } from '../model/bend-check.ts';
import { rulesOf } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { LayerChoice, SculptPart } from '../project/project.ts';
import { groovedSurfaces } from './grooved-surface.ts';
import type { ProposalLimits, ProposalWish } from './propose/proposal.ts';

/** What pieces of a sheet must keep and where they keep their length: what seams are judged by. */
export type FoamGround = Pick<ProposalWish, 'positions' | 'limits'> & Required<Pick<ProposalWish, 'surfaceOf'>>;

/** A sheet of the wall as the maker chose it, and the foam it is of. */
export interface SheetChoice {
  readonly part: Pick<SculptPart, 'flatten' | 'pieceSettings'>;
  readonly choice: LayerChoice;
  readonly foam: FoamSheet;
}

/**
 * @param mesh      of the pieces: the sculpt, or the same cut finer along paths.
 * @param shell     of the sheet; its first vertices are those of the mesh.
 * @param limitPct  99th percentile of stretch and squash that no piece may pass, per cent; the foam's own unless said.
 */
export function foamGround(mesh: Mesh, shell: ShellLayer, sheet: SheetChoice, limitPct?: number): FoamGround {
  const { part, foam } = sheet;
  const { neutralPositions } = shell;
  const count = mesh.positions.length;
  return {
    positions: neutralPositions.length === count ? neutralPositions : neutralPositions.slice(0, count),
    surfaceOf: groovedSurfaces(mesh, { shell, rules: rulesOf(foam), pieceSettings: part.pieceSettings }),
    limits: limitsOf(sheet, limitPct ?? foam.stretchLimits.tooMuchPct),
  };
}

/** Stretch and squash, the size of the foam's sheets, its least width and its bends. */
function limitsOf({ part, choice, foam }: SheetChoice, limitPct: number): ProposalLimits {
  const rules = rulesOf(foam);
  const { thicknessMm, neutralFraction } = choice;
  return {
    stretchPct: limitPct,
    squashPct: limitPct,
    laying: part.flatten,
    sheet: { widthMm: foam.sheetWidthMm, heightMm: foam.sheetHeightMm },
    leastWidthMm: rules.narrowThicknesses * thicknessMm,
    bend: {
      thicknessMm,
      neutralFraction,
      foldLimitDeg: rules.foldLimitDeg,
      mostPct: (foam.bendLimits ?? BEND_LIMITS).tooMuchPct,
    },
  };
}
