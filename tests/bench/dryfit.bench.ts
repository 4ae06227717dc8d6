// How well finished pieces close when they are put together: npm run bench:dryfit [-- names of models]
// Every sample and every seam shape with its own seams in 2, 6, 10 and 15 mm foam whose face the model is.
import { DRY_FIT_MM } from '../../src/base/tolerance.ts';
import type { SeamFit } from '../../src/model/dry-fit.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { SHAPES } from '../reference/seams/test-models.ts';
import { runModel } from '../reference/test-model-chain.ts';
import { runSample, SAMPLE_NAMES } from '../support/run-sample.ts';
import { textTable } from './text-table.ts';

const THICKNESSES_MM = [2, 6, 10, 15];

/** Findings that say why edges cannot meet. */
const REASONS = /^(shell|foam\/(side|bevel))/;

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

const asked = process.argv.slice(2);
const rows: string[][] = [];
for (const { name, run } of SUBJECTS) {
  if (asked.length > 0 && !asked.some((word) => name.endsWith(word))) continue;
  for (const thicknessMm of THICKNESSES_MM) rows.push(rowOf(name, thicknessMm, await run(thicknessMm)));
}

const head = ['model', 'mm', 'seams', 'closed', 'gap', 'overlap', 'slip', 'step', 'worst seams', 'findings'];
process.stdout.write(`Finished pieces put together, mm; closed: seams within ${DRY_FIT_MM} mm
${textTable(head, rows)}`);

function rowOf(name: string, thicknessMm: number, { dryFit, findings }: Outcome): string[] {
  const seams = dryFit?.perSeam ?? [];
  const most = (figure: (fit: SeamFit) => number): string =>
    seams.reduce((worst, fit) => Math.max(worst, figure(fit)), 0).toFixed(3);
  const open = seams.filter((fit) => missOf(fit) > DRY_FIT_MM).sort((a, b) => missOf(b) - missOf(a));
  const reasons = new Set(findings.map(({ code }) => code).filter((code) => REASONS.test(code)));
  return [
    name,
    String(thicknessMm),
    String(seams.length),
    String(seams.length - open.length),
    most(({ worstGapMm }) => worstGapMm),
    most(({ worstOverlapMm }) => worstOverlapMm),
    most(({ worstSlipMm }) => worstSlipMm),
    most(({ worstStepMm }) => worstStepMm),
    open
      .slice(0, 5)
      .map((fit) => `${fit.letter} ${missOf(fit).toFixed(1)}`)
      .join(', '),
    [...reasons].join(' '),
  ];
}

function missOf({ worstGapMm, worstOverlapMm }: SeamFit): number {
  return Math.max(worstGapMm, worstOverlapMm);
}
