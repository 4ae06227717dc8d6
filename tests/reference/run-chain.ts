import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { FlattenWishes } from '../../src/model/flatten-settings.ts';
import type { PieceSetting } from '../../src/model/foam-settings.ts';
import type { SeamMarks, SeamSetting } from '../../src/model/seams.ts';
import type { ModelIs } from '../../src/model/shell-layer.ts';
import type { ScaleChoice } from '../../src/model/source-model.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { projectFileOf, reportOf } from '../../src/pipeline/write-files.ts';
import { nameFromFile, newProject } from '../../src/project/new-project.ts';
import type { Report } from './report-shape.ts';

export interface ChainInput {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  /** Pairs of corners in file order. */
  readonly seams: SeamMarks['edges'];
  readonly paths?: SeamMarks['paths'];
  readonly scale: ScaleChoice;
  readonly thicknessMm: number;
  readonly modelIs: ModelIs;
  readonly neutralFraction: number;
  /** What is dear in laying flat, where it is not what a new part begins with. */
  readonly flatten?: Partial<FlattenWishes>;
  /** What is wished of single seams and pieces. */
  readonly seamSettings?: readonly SeamSetting[];
  readonly pieceSettings?: readonly PieceSetting[];
}

export interface ChainOutput {
  readonly report: Report;
  /** `report.json` as it is written. */
  readonly reportText: string;
  /** `project.foamloft.json` as it is written. */
  readonly projectText: string;
  readonly outcome: Outcome;
}

/** The chain as the command `make` runs it, up to the texts of the report and the project. Throws when it stops on the way. */
export async function runChain(input: ChainInput): Promise<ChainOutput> {
  const pipeline = new Pipeline();
  const hash = await contentHash(input.bytes);
  pipeline.putSource(hash, { fileName: input.fileName, bytes: input.bytes });
  const format = input.fileName.toLowerCase().endsWith('.stl') ? 'stl' : 'obj';
  const fresh = newProject(nameFromFile(input.fileName), { hash, fileName: input.fileName, format });
  const [part] = fresh.parts;
  const project = {
    ...fresh,
    parts: [
      {
        ...part,
        scale: input.scale,
        seams: { edges: input.seams, paths: input.paths ?? [] },
        modelIs: input.modelIs,
        flatten: { ...part.flatten, ...input.flatten },
        seamSettings: input.seamSettings ?? [],
        pieceSettings: input.pieceSettings ?? [],
        layers: [{ ...part.layers[0], thicknessMm: input.thicknessMm, neutralFraction: input.neutralFraction }],
      },
    ],
  };
  const outcome = await pipeline.run(project, QUIET_WORK, { strictSeams: true, date: '2026-11-25' });
  if (outcome.stopped !== null) {
    const { step, problem } = outcome.stopped;
    throw new Error(`${input.fileName} stopped at ${step}: ${problem.code} ${problem.text}`);
  }
  const reportText = reportOf(outcome);
  return {
    report: JSON.parse(reportText) as Report,
    reportText,
    projectText: projectFileOf(outcome, (wanted) => pipeline.sourceOf(wanted)),
    outcome,
  };
}
