import type { Finding } from '../../base/finding.ts';
import { ok, type Result } from '../../base/result.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { turnedMesh } from '../../mesh/turned-mesh.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { StackPart } from '../../project/plain-part.ts';
import { makeStack } from '../../steps/stack/make-stack.ts';
import { stackWork } from '../../steps/stack/stack-work.ts';
import { solidOfModel } from '../stack.ts';
import { noSource, type PlainGround } from './plain-ground.ts';

/** A solid in layers of its foams. Fails where its file is not here or cannot be read, and as `makeStack` does. */
export function stackPartWork(part: StackPart, ground: PlainGround): Result<PlainWork> {
  const solid = solidOf(part, ground);
  if (!solid.ok) return solid;
  const sheetsMm = [...new Set(ground.foams.map(({ thicknessMm }) => thicknessMm))];
  const stack = makeStack(solid.value, { ...part.wish, sheetsMm });
  return stack.ok ? ok(stackWork(stack.value, solid.value), [...solid.notes, ...stack.notes]) : stack;
}

function solidOf({ source, turned = [], scale }: StackPart, ground: PlainGround): Result<Mesh> {
  if (source === undefined) return turnedMesh(turned);
  const model = ground.modelOf(source.hash) ?? noSource(source.fileName);
  if (!model.ok) return model;
  const solid = solidOfModel(model.value, scale);
  return solid.ok && scale === undefined ? ok(solid.value, [assumed(source.fileName)]) : solid;
}

const assumed = (fileName: string): Finding => ({
  code: 'size/assumed',
  severity: 'warning',
  text: `${fileName} does not say its unit, so its numbers were taken as millimetres: say its unit or a size if that is not so.`,
  where: {},
});
