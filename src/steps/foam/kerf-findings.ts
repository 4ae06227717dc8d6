import type { Finding } from '../../base/finding.ts';
import { formatMm } from '../../base/format-length.ts';
import type { BendLimits } from '../../model/bend-check.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { PieceKerfs } from '../../model/kerfs.ts';
import type { BendChoice } from './bend-style.ts';
import { isWebThin } from './kerf-lines.ts';
import { kerfFaultText } from './kerf-turn.ts';
import type { PieceLabel } from './piece-findings.ts';

/** What is told of the kerfs of a piece, or of kerfs it was to have. */
export interface KerfFacts {
  readonly choice: BendChoice;
  readonly kerfs: PieceKerfs | undefined;
  readonly thicknessMm: number;
  readonly limits: BendLimits;
  readonly rules: FoamRules;
}

/** Kerfs that cannot be cut, that leave too little under them or too little between them, or turn too far for what they leave. */
export function kerfFindings(
  label: PieceLabel,
  { choice, kerfs, thicknessMm, limits, rules }: KerfFacts,
): readonly Finding[] {
  const where = { part: label.part, piece: label.id };
  if (choice.kerfFault !== undefined)
    return [
      {
        code: 'foam/kerf-unfit',
        severity: 'warning',
        text: `${label.name} is rolled and not kerfed: it ${kerfFaultText(choice.kerfFault)}.`,
        where,
      },
    ];
  if (choice.style !== 'kerfed') return [];
  if (kerfs === undefined)
    return [
      {
        code: 'foam/kerf-thin',
        severity: 'note',
        text: `${label.name} is ${formatMm(thicknessMm)} thick and a kerf leaves ${formatMm(rules.hingeMm)} (shop rule): there is nothing to cut, so it is rolled.`,
        value: thicknessMm,
        limit: rules.hingeMm,
        unit: 'mm',
        where,
      },
    ];
  const findings: Finding[] = [];
  if (kerfs.hingeMm < rules.leastHingeMm)
    findings.push({
      code: 'foam/kerf-deep',
      severity: 'warning',
      text: `${label.name} has kerfs ${formatMm(kerfs.depthMm)} deep, which leave ${formatMm(kerfs.hingeMm)}, and less than ${formatMm(rules.leastHingeMm)} tears when it is bent (shop rule): leave more.`,
      value: kerfs.hingeMm,
      limit: rules.leastHingeMm,
      unit: 'mm',
      where,
    });
  const webMm = kerfs.spacingMm.least - kerfs.widthMm;
  if (kerfs.spacingMm.most > 0 && isWebThin(webMm, kerfs.depthMm))
    findings.push({
      code: 'foam/kerf-close',
      severity: 'warning',
      text: `${label.name} has kerfs ${formatMm(kerfs.spacingMm.least)} apart where they are nearest, and ${webMm > 0 ? `only ${formatMm(webMm)} of foam between two` : 'they run into each other'}: the bend is too tight there for ${formatMm(thicknessMm)} of foam; use thinner foam, leave more under the kerfs, or part the piece there.`,
      value: kerfs.spacingMm.least,
      limit: kerfs.widthMm,
      unit: 'mm',
      where,
    });
  const { hingePct } = kerfs;
  if (hingePct > limits.noticePct) {
    const isTooMuch = hingePct > limits.tooMuchPct;
    const limit = isTooMuch ? limits.tooMuchPct : limits.noticePct;
    findings.push({
      code: 'foam/kerf-tight',
      severity: isTooMuch ? 'warning' : 'note',
      text: `${label.name} turns ${kerfs.turnDeg.toFixed(0)}° at each kerf: what is left under it stretches by ${hingePct.toFixed(0)} %, over the ${limit.toFixed(0)} % ${isTooMuch ? 'this foam takes' : 'worth a word'} by shop rule: leave less under the kerfs, or roll it${thicknessMm > 2 * kerfs.hingeMm ? '' : ', since the foam is hardly thicker than what is left'}.`,
      value: hingePct,
      limit,
      unit: '%',
      where,
    });
  }
  return findings;
}
