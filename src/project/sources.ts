import { isCoreModel } from '../model/clearance.ts';
import type { Part, SourceRef } from './project.ts';

/** Every file a part is made from: its sculpt first, then its cores, each once. */
export function sourcesOf({ source, core = [] }: Part): readonly SourceRef[] {
  const all = [source, ...core.filter(isCoreModel).map((model) => model.source)];
  return all.filter(({ hash }, i) => all.findIndex((other) => other.hash === hash) === i);
}
