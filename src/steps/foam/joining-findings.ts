import type { Finding } from '../../base/finding.ts';
import { FELT_STEP_MM } from '../../base/tolerance.ts';
import { deg } from '../../geom/vec.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ChainBevels } from './chain-bevels.ts';
import type { SeamCut, SideCut } from './seam-cuts.ts';
import { stepText } from './step-words.ts';
import { degrees, edgesOf, mm, ROUNDING_DEG, seamName } from './seam-findings.ts';

/**
 * A rebate that the fold does not let, and two thicknesses that leave a step or lean more than a blade or a saw table can.
 * @param bevels   half the fold along the chain.
 * @param sheets   thickness of each side's foam, mm.
 * @param limitDeg steepest lean of the blade, and how far off a right angle the fold of a rebate may be, degrees.
 */
export function joiningFindings(
  part: string,
  chain: SeamChain,
  bevels: ChainBevels,
  cut: SeamCut,
  sheets: readonly number[],
  limitDeg: number,
): readonly Finding[] {
  const { joining, step } = cut;
  const where = { part, seam: chain.id, edges: edgesOf(chain) };
  const folds = [...bevels.atStart, ...bevels.atEnd].map((half) => 2 * deg(half));
  const offSquare = folds.reduce((most, fold) => Math.max(most, Math.abs(Math.abs(fold) - 90)), 0);
  const findings: Finding[] = [];
  if (joining === 'shared') {
    const leans = cut.sides.map(steepestDeg);
    const most = Math.max(...leans);
    const side = leans.indexOf(most);
    if (most <= limitDeg + ROUNDING_DEG) return [];
    const rebate = offSquare <= limitDeg ? 'make it a rebate, or ' : '';
    findings.push({
      code: 'foam/bevel-steep',
      severity: 'warning',
      text: `At seam ${chain.letter} the foam of ${mm(sheets[side])} leans ${degrees(most)} from square to meet foam of ${mm(sheets[1 - side])}, and a blade or saw table leans at most ${degrees(limitDeg)}: ${rebate}cut both pieces from one foam.`,
      value: most,
      limit: limitDeg,
      unit: 'deg',
      where,
    });
  }
  if (joining !== 'halved') return findings;
  if (chain.kind === 'rebate') {
    findings.push({
      code: 'foam/no-rebate',
      severity: 'warning',
      text: `${seamName(chain)} is to be a rebate, but its fold is up to ${degrees(offSquare)} off a right angle and a rebate can be cut up to ${degrees(limitDeg)} off: it is cut as a butt seam; choose butt or lap for it, or part the piece elsewhere.`,
      value: offSquare,
      limit: limitDeg,
      unit: 'deg',
      where,
    });
  }
  const stepMm = Math.max(step.faceMm, step.backMm);
  if (stepMm > FELT_STEP_MM) {
    const rebate = chain.kind === 'butt' && offSquare <= limitDeg ? ', or make it a rebate' : '';
    findings.push({
      code: 'foam/seam-step',
      severity: step.faceMm > FELT_STEP_MM ? 'warning' : 'note',
      text: `At seam ${chain.letter} foam of ${sheets.map(mm).join(' meets foam of ')}, and its fold is too small to share between them: there is a step of ${stepText(step)}. Sand it off or leave it${rebate}.`,
      value: stepMm,
      unit: 'mm',
      where,
    });
  }
  return findings;
}

const steepestDeg = ({ bevel: { atStart, atEnd } }: SideCut): number =>
  [...atStart, ...atEnd].reduce((most, lean) => Math.max(most, Math.abs(deg(lean))), 0);
