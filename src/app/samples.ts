import { foamId } from '../base/ids.ts';
import type { ModelIs } from '../model/shell-layer.ts';
import type { ModelUnit } from '../model/source-model.ts';
import { setFoam, setModelIs, setScale, setSeams, setThickness, setUpAxis, type Command } from '../project/commands.ts';
import { newProject } from '../project/new-project.ts';
import type { Project, SourceRef } from '../project/project.ts';
import type { SeamMarks } from '../model/seams.ts';
import { DATA_WORDS, dataText } from './data-words.ts';
import { begunHere } from './language/begun-here.ts';
import list from '../../samples/samples.json';

/** A sculpt of the lamplighter's kit, as samples/samples.json lists it. */
export interface SculptSample {
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

/** Whole props of the kit: a project as it was saved. */
export interface ProjectSample {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly projectFile: string;
}

export type Sample = SculptSample | ProjectSample;

/** The samples in the order they are offered; the first one opens by itself on the first visit. */
export const SAMPLES = list as readonly Sample[];

export interface SampleFiles {
  readonly model: Uint8Array;
  readonly seams: SeamMarks;
}

/** A file of a sample, or null when it is not served. */
export async function loadSampleFile(name: string): Promise<Uint8Array | null> {
  const answer = await fetch(`samples/${name}`);
  return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : null;
}

/** Model and seams of a sample, or null when one of them is not served. */
export async function loadSample(sample: SculptSample): Promise<SampleFiles | null> {
  const [model, seams] = await Promise.all([loadSampleFile(sample.objFile), loadSampleFile(sample.seamFile)]);
  if (model === null || seams === null) return null;
  const marks = JSON.parse(new TextDecoder().decode(seams)) as Partial<SeamMarks>;
  return {
    model: inWindowsWords(model),
    seams: { edges: marks.edges ?? [], paths: marks.paths ?? [] },
  };
}

/** Lines of an OBJ that name an object or a group: pieces are called by them. */
const NAMED = /^[og] .+$/gm;

/** A sample's model with its names in the language of the window, where that has words for them; else the very same bytes. */
function inWindowsWords(model: Uint8Array): Uint8Array {
  const text = new TextDecoder().decode(model);
  const named = text.replace(NAMED, (line) => DATA_WORDS[line] ?? line);
  return named === text ? model : new TextEncoder().encode(named);
}

/** A project of the kit with its own name and those of its parts in the language of the window. */
export function inWindowsNames(project: Project): Project {
  const named = <T extends { readonly name: string }>(one: T): T => ({
    ...one,
    name: DATA_WORDS[`part ${one.name}`] ?? dataText(one.name),
  });
  const plain = project.plain === undefined ? {} : { plain: project.plain.map(named) };
  return begunHere({ ...named(project), parts: project.parts.map(named), ...plain });
}

/** A job that is ready to print: everything the sample decides is decided, and nothing of it can be undone by accident. */
export function projectFromSample(sample: SculptSample, source: SourceRef, seams: SeamMarks): Project {
  const start = begunHere(newProject(dataText(sample.title), source));
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
