// How true pieces come out in foam of any thickness: npm run bench:foam [-- names of models]
// Every sample and every seam shape with its own seams in 2, 6, 10 and 15 mm foam whose face the model is: both sides of each seam walked
// against each other, the finished pieces put together again, and all that was found.
import { DRY_FIT_MM } from '../../src/base/tolerance.ts';
import type { Finding } from '../../src/base/finding.ts';
import type { SeamFit } from '../../src/model/dry-fit.ts';
import { gapReason } from '../../src/pipeline/gap-reasons.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { SHAPES } from '../reference/seams/test-models.ts';
import { runModel } from '../reference/test-model-chain.ts';
import { runSample, SAMPLE_NAMES } from '../support/run-sample.ts';
import { isWithin, seamFits } from './seam-share.ts';
import { textTable } from './text-table.ts';

const THICKNESSES_MM = [2, 6, 10, 15];

interface Subject {
  readonly name: string;
  readonly run: (thicknessMm: number) => Promise<Outcome>;
}

const SUBJECTS: readonly Subject[] = [
  ...SAMPLE_NAMES.map((name) => ({
    name: `sample ${name}`,
    run: (thicknessMm: number) =>
      runSample(name, (project) => {
        const [part] = project.parts;
        return { ...project, parts: [{ ...part, layers: [{ ...part.layers[0], thicknessMm }] }] };
      }),
  })),
  ...SHAPES.map((model) => ({
    name: model.name,
    run: async (thicknessMm: number) => (await runModel(model, { thicknessMm, modelIs: 'face' })).outcome,
  })),
];

interface Measured {
  readonly name: string;
  readonly thicknessMm: number;
  readonly outcome: Outcome;
}

const asked = process.argv.slice(2);
const all: Measured[] = [];
for (const { name, run } of SUBJECTS) {
  if (asked.length > 0 && !asked.some((word) => name.endsWith(word))) continue;
  for (const thicknessMm of THICKNESSES_MM) all.push({ name, thicknessMm, outcome: await run(thicknessMm) });
}

const missOf = ({ worstGapMm, worstOverlapMm }: SeamFit): number => Math.max(worstGapMm, worstOverlapMm);
const fitsOf = ({ dryFit }: Outcome): readonly SeamFit[] => dryFit?.perSeam ?? [];
const openOf = (outcome: Outcome): readonly SeamFit[] => fitsOf(outcome).filter((fit) => missOf(fit) > DRY_FIT_MM);

function rowOf({ name, thicknessMm, outcome }: Measured): string[] {
  const fits = fitsOf(outcome);
  const walks = seamFits({ pieces: outcome.pieces ?? [], flats: outcome.flats ?? [], seams: outcome.seams ?? [] });
  const most = (figure: (fit: SeamFit) => number): string =>
    fits.reduce((worst, fit) => Math.max(worst, figure(fit)), 0).toFixed(3);
  return [
    name,
    String(thicknessMm),
    String(outcome.pieces?.length ?? 0),
    `${walks.filter(isWithin).length} of ${walks.length}`,
    `${fits.length - openOf(outcome).length} of ${fits.length}`,
    most(({ worstGapMm }) => worstGapMm),
    most(({ worstOverlapMm }) => worstOverlapMm),
    most(({ worstSlipMm }) => worstSlipMm),
    most(({ worstStepMm }) => worstStepMm),
    (outcome.dryFit?.corners[0]?.overlapMm ?? 0).toFixed(3),
  ];
}

/** Findings by code; notes of the model file are not of the foam. */
function codesText(findings: readonly Finding[]): string {
  const counts = new Map<string, number>();
  for (const { code, severity } of findings)
    if (severity !== 'note' || !code.startsWith('read/')) counts.set(code, (counts.get(code) ?? 0) + 1);
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([code, count]) => (count === 1 ? code : `${code} ${count}`))
    .join(', ');
}

const head = ['model', 'mm', 'pieces', 'seams true', 'closed', 'gap', 'overlap', 'slip', 'step', 'corners'];
process.stdout
  .write(`Pieces in foam of four thicknesses, mm. Seams true: both sides within 0.5 mm or 0.25 %, whichever is more
Closed: put together dry, gap and overlap within ${DRY_FIT_MM} mm. Corners: how deep pieces without a common seam run into each other
${textTable(head, all.map(rowOf))}
${totalsText()}

What was found
${all.map(({ name, thicknessMm, outcome }) => `${name} ${thicknessMm}: ${codesText(outcome.findings) || 'nothing'}`).join('\n')}
${openText()}`);

function totalsText(): string {
  const seams = all.reduce((sum, { outcome }) => sum + fitsOf(outcome).length, 0);
  const open = all.reduce((sum, { outcome }) => sum + openOf(outcome).length, 0);
  return `All seams: ${seams - open} of ${seams} closed`;
}

/** What of the sculpt keeps a seam from closing. */
function reasonText(fit: SeamFit, { layers }: Outcome): string {
  for (const { cut, bends } of layers) {
    const reason = cut === null || bends === null ? null : gapReason(fit, cut, bends);
    if (reason?.why === 'gone') return `no edge left, ${reason.lengthMm.toFixed(1)} mm`;
    if (reason?.why === 'turned') return `facet turns ${reason.turnDeg.toFixed(1)} deg`;
  }
  return '';
}

/** Seams that do not close, with what was found of each. */
function openText(): string {
  const lines = all.flatMap(({ name, thicknessMm, outcome }) =>
    openOf(outcome).map((fit) => {
      const told = outcome.findings.filter(({ where }) => where.seam === fit.seam).map(({ code }) => code);
      const why = reasonText(fit, outcome);
      return [
        name,
        String(thicknessMm),
        fit.letter,
        fit.worstGapMm.toFixed(2),
        fit.worstOverlapMm.toFixed(2),
        fit.worstSlipMm.toFixed(2),
        why,
        [...new Set(told)].join(' '),
      ];
    }),
  );
  if (lines.length === 0) return '';
  return `\n${textTable(['not closed', 'mm', 'seam', 'gap', 'overlap', 'slip', 'why not', 'found of it'], lines)}`;
}
