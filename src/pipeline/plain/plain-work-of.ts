import type { Result } from '../../base/result.ts';
import type { PlainPart } from '../../project/plain-part.ts';
import { checkMatrix } from '../../steps/assembly/placing.ts';
import { artworkPartWork } from './artwork-part.ts';
import { buildUpPartWork } from './build-up-part.ts';
import { coversPartWork } from './covers-part.ts';
import { engravingPartWork } from './engraving-part.ts';
import { insertPartWork } from './insert-part.ts';
import type { PlainGround } from './plain-ground.ts';
import type { PlainMade } from './plain-outcome.ts';
import { shapePartWork } from './shape-part.ts';
import { stackPartWork } from './stack-part.ts';
import { strapPartWork } from './strap-part.ts';
import { trimPartWork } from './trim-part.ts';

/** What a part comes to; fails as its kind does, and where its place would change its size. */
export function plainWorkOf(part: PlainPart, ground: PlainGround): Result<PlainMade> {
  const place = checkMatrix(part.transform);
  if (!place.ok) return place;
  const [foam] = ground.foams;
  switch (part.kind) {
    case 'shape':
      return shapePartWork(part, foam);
    case 'stack':
      return stackPartWork(part, ground);
    case 'artwork':
      return artworkPartWork(part, ground);
    case 'build-up':
      return buildUpPartWork(part, ground);
    case 'trim':
      return trimPartWork(part, foam, ground.on);
    case 'covers':
      return coversPartWork(part, foam, ground.on);
    case 'strap':
      return strapPartWork(part, foam);
    case 'engraving':
      return engravingPartWork(part, ground);
    case 'insert':
      return insertPartWork(part, ground.foams, ground.wallMm);
  }
}
