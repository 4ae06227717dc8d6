import { formatFine, formatLength, formatNumber, formatPercent } from '../../base/format-length.ts';
import { DRY_FIT_MM } from '../../base/tolerance.ts';
import { allCut } from '../bench-state.ts';
import { fitFigures } from '../fit-figures.ts';
import { tableRows, type TableGround } from '../legend/table-rows.ts';
import { VERDICT_WORDS } from './verdict-words.ts';

/** Something that was checked, and whether it was found good. */
export interface Check {
  readonly name: keyof typeof VERDICT_WORDS.checks;
  readonly isGood: boolean;
  /** One sentence with the figures. */
  readonly text: string;
}

/** All that was checked before printing; what cannot be checked yet is left out. */
export function checksOf(ground: TableGround): readonly Check[] {
  const made = [scale, seams, gaps, stretch, bends, sheets, pages, twins, cautions].map((check) => check(ground));
  return made.filter((check) => check !== null);
}

/** Codes of findings about two sides of a seam that do not agree. */
const UNEVEN_SEAMS = ['foam/seam-difference', 'foam/seam-slip'];

function scale({ bench, unit }: TableGround): Check | null {
  if (bench.sculpt === null) return null;
  const { sized, facts } = bench.sculpt;
  const longest = formatLength(Math.max(...facts.boxSize), unit);
  return { name: 'scale', isGood: sized, text: VERDICT_WORDS.checks.scale(longest) };
}

function seams({ bench, unit }: TableGround): Check | null {
  const joined = bench.pieces?.seams.some(({ kind }) => kind !== 'open') === true;
  const figures = fitFigures(bench);
  if (figures === null || !joined) return null;
  const isGood = !bench.findings.some(({ code, severity }) => severity !== 'note' && UNEVEN_SEAMS.includes(code));
  return { name: 'seams', isGood, text: VERDICT_WORDS.checks.seams(formatFine(figures.seams, unit)) };
}

function gaps({ bench: { dryFit }, unit }: TableGround): Check | null {
  if (dryFit === null || dryFit.perSeam.length === 0) return null;
  const { worstGapMm, worstOverlapMm } = dryFit;
  return {
    name: 'gaps',
    isGood: Math.max(worstGapMm, worstOverlapMm) <= DRY_FIT_MM,
    text: VERDICT_WORDS.checks.gaps(formatFine(worstGapMm, unit), formatFine(worstOverlapMm, unit)),
  };
}

function stretch(ground: TableGround): Check | null {
  const figures = fitFigures(ground.bench);
  if (figures === null) return null;
  const isGood = !tableRows('stretch', ground).some(({ isOver }) => isOver);
  const { stretch: most, squash } = figures;
  return { name: 'stretch', isGood, text: VERDICT_WORDS.checks.stretch(formatPercent(most), formatPercent(squash)) };
}

function bends(ground: TableGround): Check | null {
  const rows = tableRows('bend', ground);
  if (rows.length === 0) return null;
  const [{ figureText, where }] = rows;
  return {
    name: 'bends',
    isGood: !rows.some(({ isOver }) => isOver),
    text: VERDICT_WORDS.checks.bends(figureText, where),
  };
}

function sheets({ bench }: TableGround): Check | null {
  const count = bench.sheets?.sheets.length;
  if (count === undefined || count === 0) return null;
  const isGood = !bench.findings.some(({ code, severity }) => severity !== 'note' && code.startsWith('nest/'));
  return { name: 'sheets', isGood, text: VERDICT_WORDS.checks.sheets(count, allCut(bench).length) };
}

function pages({ bench }: TableGround): Check | null {
  const list = bench.paper?.pages ?? [];
  if (list.length === 0) return null;
  const isGood =
    list.some(({ kind }) => kind === 'scale') &&
    !bench.findings.some(({ code, severity }) => severity !== 'note' && code.startsWith('tile/'));
  return { name: 'pages', isGood, text: VERDICT_WORDS.checks.pages(list.length) };
}

function twins({ bench }: TableGround): Check | null {
  const hands = bench.pieces?.pieces.filter(({ hand }) => hand !== undefined).length ?? 0;
  return hands === 0 ? null : { name: 'twins', isGood: true, text: VERDICT_WORDS.checks.twins(formatNumber(hands)) };
}

const cautions = ({ bench }: TableGround): Check | null =>
  bench.paper === null ? null : { name: 'cautions', isGood: true, text: VERDICT_WORDS.checks.cautions() };
