import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { ProposalReport } from '../../src/pipeline/proposal-files.ts';
import { checkProposal, type ProposalFigures } from '../reference/recompute/check-proposal.mjs';

/** One run of `seams` on the command line, in a process of its own as a maker starts it. */
export interface ProposeRun {
  /** Figures recomputed from outside. */
  readonly figures: ProposalFigures;
  readonly darts: number;
  readonly moves: number;
  /** All pieces pass, and nothing of the report disagrees. */
  readonly isFeasible: boolean;
  /** What does not agree with the report. */
  readonly faults: readonly string[];
  /** When the first feasible answer was told, s from the start; null where none was. */
  readonly firstSeconds: number | null;
  /** From start to end of the process, writing included, s. */
  readonly wallSeconds: number;
}

/**
 * @param cli      the built command line.
 * @param folder   where seam file and report are left.
 * @param options  of the command.
 * @returns the program's own sentence where it refuses.
 */
export function runProposal(
  cli: string,
  model: string,
  folder: string,
  name: string,
  options: readonly string[],
): ProposeRun | { readonly refused: string } {
  mkdirSync(folder, { recursive: true });
  const [out, report] = [join(folder, `${name}.seams.json`), join(folder, `${name}.report.json`)];
  const started = performance.now();
  const words = [cli, 'seams', model, '--out', out, '--report', report, ...options];
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8', maxBuffer: 1 << 28 });
  const wallSeconds = (performance.now() - started) / 1000;
  if (status !== 0) return { refused: stderr.trim().split('\n')[0] ?? `${basename(model)}: exit ${status}` };
  const told = JSON.parse(readFileSync(report, 'utf8')) as ProposalReport;
  const checked = checkProposal(readFileSync(model), JSON.parse(readFileSync(out, 'utf8')), told);
  const first = /^([\d.]+) s, /m.exec(stdout);
  return {
    figures: checked.figures,
    darts: told.dartCount,
    moves: told.moves,
    isFeasible: checked.faults.length === 0 && checked.pieces.every(({ passes }) => passes),
    faults: checked.faults,
    firstSeconds: first === null ? null : Number(first[1]),
    wallSeconds,
  };
}
