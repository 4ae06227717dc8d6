/**
 * True where a place of the plane lies inside: a level line from there to the right crosses an odd number of sides. Outer rings and holes count alike,
 * whichever way they run; rings of one region must not lie over each other. A place on a side may fall on either.
 * @param rings packed x, y, without a repeated last point.
 */
export function isInRings(rings: readonly ArrayLike<number>[], x: number, y: number): boolean {
  let isIn = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[j], ring[j + 1], ring[i], ring[i + 1]];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) isIn = !isIn;
    }
  }
  return isIn;
}
