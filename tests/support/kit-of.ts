import { partId } from '../../src/base/ids.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import type { Source } from '../../src/pipeline/sculpt-stage.ts';
import type { Project } from '../../src/project/project.ts';

/** A project of one sculpt and a pipeline that holds its bytes. */
interface Alone {
  readonly project: Project;
  readonly pipeline: Pipeline;
}

interface Kit {
  readonly project: Project;
  readonly alone: readonly Project[];
  /** One that holds the bytes of all of them, and has made nothing yet. */
  readonly newPipeline: () => Pipeline;
}

/**
 * Sculpts of several projects in one, called `part-1`, `part-2` …, each also by itself under the same id.
 * @param names  of the sculpts.
 */
export function kitOf(sculpts: readonly Alone[], names: readonly string[]): Kit {
  const sources = new Map<string, Source>();
  const parts = sculpts.map(({ project, pipeline: own }, i) => {
    const [part] = project.parts;
    const source = own.sourceOf(part.source.hash);
    if (source === undefined) throw new Error(`kitOf: no bytes of ${part.source.fileName}`);
    sources.set(part.source.hash, source);
    return { ...part, id: partId(`part-${i + 1}`), name: names[i] };
  });
  const { project } = sculpts[0];
  return {
    project: { ...project, parts },
    alone: parts.map((part) => ({ ...project, parts: [part] })),
    newPipeline() {
      const pipeline = new Pipeline();
      for (const [hash, source] of sources) pipeline.putSource(hash, source);
      return pipeline;
    },
  };
}
