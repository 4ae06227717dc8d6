import type { Finding } from '../../base/finding.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { BEND_LIMITS, type BendLimits, type BendStrain } from '../../model/bend-check.ts';
import type { PieceFold } from '../../model/foam-piece.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { PieceKerfs } from '../../model/kerfs.ts';
import type { PieceScore } from '../../model/score.ts';
import { bendFinding } from './bend-check.ts';
import type { BendChoice } from './bend-style.ts';
import { grooveFindings } from './groove-findings.ts';
import { kerfFindings } from './kerf-findings.ts';
import {
  lossFinding,
  narrowFinding,
  overlapFinding,
  stretchFindings,
  type PieceLabel,
  type StretchFacts,
} from './piece-findings.ts';
import type { PieceShape } from './piece-shape.ts';
import { deepScoreFinding } from './score-findings.ts';

/** Width of the widest place is known to this, mm: finer than any foam is cut. */
const WIDTH_PRECISION_MM = 0.1;

/** What was made of a piece that findings go by. */
export interface MadeOfPiece {
  readonly folds: readonly PieceFold[];
  readonly scores: readonly PieceScore[];
  readonly strain: BendStrain | undefined;
  readonly kerfs: PieceKerfs | undefined;
  readonly choice: BendChoice;
}

/** What the maker must know of one piece, what it is bent by and cut to. */
export function findingsOfPiece(
  { mesh, rules }: { readonly mesh: Mesh; readonly rules: FoamRules },
  label: PieceLabel,
  facts: StretchFacts,
  shape: PieceShape,
  { folds, scores, strain, kerfs, choice }: MadeOfPiece,
  bendLimits: BendLimits = BEND_LIMITS,
): readonly Finding[] {
  const { thicknessMm } = shape;
  const widthMm = 2 * widestSpot(shape.neutral, WIDTH_PRECISION_MM).radiusMm;
  const found = [
    strain === undefined ? null : bendFinding(label, { strain, thicknessMm, limits: bendLimits, rules }),
    overlapFinding(label, facts.patch, facts.flat),
    lossFinding(label, 'face', shape.face.loss),
    lossFinding(label, 'back', shape.back.loss),
    deepScoreFinding(label, scores, thicknessMm, rules.leastHingeMm),
    narrowFinding(label, widthMm, thicknessMm, rules.narrowThicknesses),
  ];
  return [
    ...stretchFindings(label, facts),
    ...found.filter((finding): finding is Finding => finding !== null),
    ...kerfFindings(label, { choice, kerfs, thicknessMm, limits: bendLimits, rules }),
    ...grooveFindings(label, {
      folds,
      mesh,
      patch: facts.patch,
      shape,
      leastHingeMm: rules.leastHingeMm,
    }),
  ];
}
