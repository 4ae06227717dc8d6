import { handOf4, IN_PLACE, placedPoints4 } from '../geom/matrix4.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import type { SculptPart } from '../project/project.ts';

/** A piece as a thick plate: x y z per vertex of its two skins. */
interface Plate {
  readonly triangles: Uint32Array;
  readonly face: Float64Array | Float32Array;
  readonly back: Float64Array | Float32Array;
}

/** Brings a plate of a sculpt to its place in the assembly. A prop that is one sculpt stands as that was modelled. */
export function inAssembly(sculpts: readonly unknown[], { transform }: Pick<SculptPart, 'transform'>) {
  const stays = sculpts.length < 2 || transform.every((x, i) => x === IN_PLACE[i]);
  return <T extends Plate>(plate: T): T => {
    if (stays) return plate;
    const { triangles, face, back } = plate;
    return {
      ...plate,
      // Seen in a mirror a triangle turns the other way.
      triangles: handOf4(transform) < 0 ? triangles.toReversed() : triangles,
      face: like(face, placedPoints4(transform, face)),
      back: like(back, placedPoints4(transform, back)),
    };
  };
}

/** Share of a sculpt's width that is left free beside it. */
const GAP = 0.15;

const AXES = ['x', 'y', 'z'] as const;

/**
 * Sculpts stood in a row to be looked at, all of them upright as the first one is.
 * @param upAxis of each of them; it looks along the row from the front.
 */
export function inRow<T extends Plate>(
  sculpts: readonly { readonly upAxis: SculptPart['upAxis']; readonly plates: readonly T[] }[],
): readonly T[] {
  if (sculpts.length < 2) return sculpts.flatMap(({ plates }) => plates);
  const [{ upAxis }] = sculpts;
  const up = AXES.indexOf(upAxis);
  // The first axis that lies flat is sideways.
  const along = up === 0 ? 1 : 0;
  let end = 0;
  return sculpts.flatMap((own) => {
    const turn = (up - AXES.indexOf(own.upAxis) + AXES.length) % AXES.length;
    const stood = own.plates.map((plate) => moved(plate, turn, [0, 0, 0]));
    const box = boxOfPoints3(stood.flatMap(({ face, back }) => [...face, ...back]));
    const [low, high] = [Object.values(box.min), Object.values(box.max)];
    const by = low.map((least, k) => (k === along ? end - least : k === up ? -least : -(least + high[k]) / 2));
    end += (1 + GAP) * (high[along] - low[along]);
    return stood.map((plate) => moved(plate, 0, by));
  });
}

/** Axes of the plate changed in turn, x to y to z to x so many times, and then moved. */
function moved<T extends Plate>(plate: T, turn: number, by: readonly number[]): T {
  const skin = <S extends Plate['face']>(points: S): S =>
    points.map((_, i) => {
      const k = i % 3;
      return points[i - k + ((k - turn + 3) % 3)] + by[k];
    }) as S;
  return { ...plate, face: skin(plate.face), back: skin(plate.back) };
}

const like = <S extends Plate['face']>(before: S, points: Float64Array): S =>
  (before instanceof Float32Array ? new Float32Array(points) : points) as S;
