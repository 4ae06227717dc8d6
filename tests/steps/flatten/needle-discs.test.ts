import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { lay, WISHES } from './flat-outline.ts';
import { needleDisc } from './needle-disc.ts';

/** Others than the benchmark's, which takes 1 to 500. */
const SEEDS = Array.from({ length: 30 }, (_, i) => 2001 + i);

it.each(WISHES.slice(0, 2))(
  'thirty random discs full of needles lie without a flip and settle, %s',
  async (_, wish) => {
    for (const seed of SEEDS) {
      const { piece } = await lay(needleDisc(seededRandom(seed)), wish);
      expect(piece.flipped, `seed ${seed}`).toBe(0);
      expect(piece.solve.converged, `seed ${seed}`).toBe(true);
    }
  },
);
