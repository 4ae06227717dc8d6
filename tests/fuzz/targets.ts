import { ARTWORK_TARGETS } from './artwork-targets.ts';
import { JSON_TARGETS } from './json-targets.ts';
import { MODEL_TARGETS } from './model-targets.ts';
import { PICTURE_TARGETS } from './picture-targets.ts';
import { PROJECT_TARGETS } from './project-targets.ts';
import type { Target } from './target.ts';
import { TEXT_TARGETS } from './text-targets.ts';

/** Every reader that bytes from outside come to. */
export const TARGETS: readonly Target[] = [
  ...MODEL_TARGETS,
  ...ARTWORK_TARGETS,
  ...PICTURE_TARGETS,
  ...JSON_TARGETS,
  ...PROJECT_TARGETS,
  ...TEXT_TARGETS,
];

/** @throws where there is none of that name. */
export function targetNamed(name: string): Target {
  const found = TARGETS.find((target) => target.name === name);
  if (found === undefined)
    throw new Error(`no target ${name}: there are ${TARGETS.map((target) => target.name).join(', ')}`);
  return found;
}
