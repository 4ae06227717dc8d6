import type { Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { PlainPart } from '../../project/plain-part.ts';
import { checkMatrix } from '../../steps/assembly/placing.ts';
import { shapePartWork } from './shape-part.ts';

/** What a part comes to; fails as its kind does, and where its place would change its size. @param foams its own, the usual one first. */
export function plainWorkOf(part: PlainPart, foams: readonly FoamSheet[]): Result<PlainWork> {
  const place = checkMatrix(part.transform);
  if (!place.ok) return place;
  switch (part.kind) {
    case 'shape':
      return shapePartWork(part, foams[0]);
  }
}
