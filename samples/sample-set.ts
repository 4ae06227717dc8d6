import { buildBracer } from './bracer.ts';
import { flameBadge } from './flame-badge.ts';
import { buildHelm } from './helm.ts';
import type { SampleModel } from './kit/model-builder.ts';
import { objText, seamText } from './kit/obj-text.ts';
import { buildLantern } from './lantern.ts';
import { buildMaulHead } from './maul-head.ts';
import { buildShoulderPlate } from './shoulder-plate.ts';

/** A sculpt of `samples.json`. */
export interface SculptEntry {
  readonly id: string;
  readonly title: string;
  /** One plain sentence for the list of samples. */
  readonly sentence: string;
  /** File names beside `samples.json`. */
  readonly objFile: string;
  readonly seamFile: string;
  readonly unit: 'mm';
  /** Foam the sample was drawn for, mm. */
  readonly thickness: number;
  readonly upAxis: 'y';
  readonly modelIs: 'face';
}

/** Whole props of `samples.json`: a project as it was saved. */
export interface ProjectEntry {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly projectFile: string;
}

/** One entry of `samples.json`. */
export type SampleEntry = SculptEntry | ProjectEntry;

interface Sample {
  readonly title: string;
  readonly sentence: string;
  readonly thickness: number;
  readonly build: () => SampleModel;
}

/** A travelling lamplighter's kit. The first one opens on the first start. */
export const SAMPLES: readonly Sample[] = [
  {
    title: 'Lamplighter’s helm',
    sentence: 'A peaked helm with a flame-shaped keel, cheek guards and a neck guard, for a head of 580 mm girth.',
    thickness: 6,
    build: buildHelm,
  },
  {
    title: 'Bracer',
    sentence: 'A forearm guard of eight panels, flared at both ends and laced along the back.',
    thickness: 6,
    build: buildBracer,
  },
  {
    title: 'Shoulder plate',
    sentence: 'A ridged dome over two lames that overlap like roof tiles, the lower one with a lip.',
    thickness: 6,
    build: buildShoulderPlate,
  },
  {
    title: 'Maul head',
    sentence: 'An eight-sided hammer head with chamfered faces and a hole for the handle below.',
    thickness: 10,
    build: buildMaulHead,
  },
  {
    title: 'Lantern',
    sentence: 'A six-sided lantern with arched windows, an overhanging roof and a vented cap.',
    thickness: 5,
    build: buildLantern,
  },
];

/** The props that two of them are the sculpts of. */
export const KIT: ProjectEntry = {
  id: 'kit',
  title: 'Maul and lantern',
  sentence: 'The whole props, with handle, pommel, badges and rings, a floor with a lamp and strips over seams.',
  projectFile: 'kit.foamloft.json',
};

/** The files of the sample set by name, but for that of {@link KIT}; the same text on every run. */
export function sampleFiles(): Map<string, string> {
  const files = new Map<string, string>();
  const sculpts: SculptEntry[] = SAMPLES.map(({ title, sentence, thickness, build }) => {
    const model = build();
    const entry: SculptEntry = {
      id: model.name,
      title,
      sentence,
      objFile: `${model.name}.obj`,
      seamFile: `${model.name}.seams.json`,
      unit: 'mm',
      thickness,
      upAxis: 'y',
      modelIs: 'face',
    };
    files.set(entry.objFile, objText(model));
    files.set(entry.seamFile, seamText(model));
    return entry;
  });
  files.set('flame-badge.svg', flameBadge());
  const entries: SampleEntry[] = [...sculpts, KIT];
  files.set('samples.json', `${JSON.stringify(entries, null, 2)}\n`);
  return files;
}
