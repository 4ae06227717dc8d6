import { ok, type Result } from '../base/result.ts';
import type { ModelFormat } from '../model/source-model.ts';
import { sniffFormat } from '../steps/read/sniff-format.ts';

/** Whether a model file is OBJ or STL, told by its content; fails with a sentence when it is neither. */
export function sourceFormat(bytes: Uint8Array, fileName: string): Result<ModelFormat> {
  const found = sniffFormat(bytes, fileName);
  return found.ok ? ok(found.as === 'obj' ? 'obj' : 'stl') : found;
}
