import type { Artwork } from '../../../src/model/artwork.ts';
import type { ArtworkChoice } from '../../../src/model/artwork-choice.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../../../src/pipeline/artwork.ts';
import { expectOk } from '../../support/expect-ok.ts';

/** Artwork of a drawing 200 mm square whose unit is the mm; y runs down in it. */
export const artOf = (inner: string, choice: Partial<ArtworkChoice> = {}): Artwork =>
  expectOk(
    artworkFromSvg(
      `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">${inner}</svg>`,
      { ...USUAL_ARTWORK, ...choice },
    ),
  );
