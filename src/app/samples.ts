import { foamId } from '../base/ids.ts';
import type { ModelIs } from '../model/shell-layer.ts';
import type { ModelUnit } from '../model/source-model.ts';
import { setFoam, setModelIs, setScale, setSeams, setThickness, setUpAxis, type Command } from '../project/commands.ts';
import { newProject } from '../project/new-project.ts';
import type { Project, SourceRef } from '../project/project.ts';
import type { SeamMarks } from '../model/seams.ts';
import list from '../../samples/samples.json';

/** One thing of the lamplighter's kit, as samples/samples.json lists it. */
export interface Sample {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly objFile: string;
  readonly seamFile: string;
  readonly unit: ModelUnit;
  /** Foam the sample is meant for, mm. */
  readonly thickness: number;
  readonly upAxis: 'x' | 'y' | 'z';
  readonly modelIs: ModelIs;
}

/** The samples in the order they are offered; the first one opens by itself on the first visit. */
export const SAMPLES = list as readonly Sample[];

export interface SampleFiles {
  readonly model: Uint8Array;
  readonly seams: SeamMarks;
}

/** Model and seams of a sample, or null when one of them is not served. */
export async function loadSample(sample: Sample): Promise<SampleFiles | null> {
  const [model, seams] = await Promise.all([fetch(`samples/${sample.objFile}`), fetch(`samples/${sample.seamFile}`)]);
  if (!model.ok || !seams.ok) return null;
  const marks = (await seams.json()) as Partial<SeamMarks>;
  return {
    model: new Uint8Array(await model.arrayBuffer()),
    seams: { edges: marks.edges ?? [], paths: marks.paths ?? [] },
  };
}

/** A job that is ready to print: everything the sample decides is decided, and nothing of it can be undone by accident. */
export function projectFromSample(sample: Sample, source: SourceRef, seams: SeamMarks): Project {
  const start = newProject(sample.title, source);
  const sheet = start.foams.find((foam) => foam.thicknessMm === sample.thickness);
  const choices: Command[] = [
    setScale({ by: 'unit', unit: sample.unit }),
    setUpAxis(sample.upAxis),
    setModelIs(sample.modelIs),
    sheet === undefined ? setThickness(sample.thickness) : setFoam(foamId(sheet.id), sheet.thicknessMm),
    setSeams(seams),
  ];
  return choices.reduce((project, choice) => choice.apply(project), start);
}
