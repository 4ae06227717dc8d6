/** A patch to bend: packed xyz of the finished shape, packed xy of the flat piece, and its triangles. */
export interface RollShape {
  readonly triangles: Uint32Array;
  readonly shape: Float32Array;
  readonly flat: Float32Array;
}

/** A grid of `m` by `n` cells over [0, 1] x [0, 1], laid out by two maps. Counter-clockwise where the maps keep the hand. */
export function gridShape(
  m: number,
  n: number,
  shape: (u: number, v: number) => readonly [number, number, number],
  flat: (u: number, v: number) => readonly [number, number],
): RollShape {
  const xyz: number[] = [];
  const xy: number[] = [];
  for (let j = 0; j <= n; j += 1) {
    for (let i = 0; i <= m; i += 1) {
      xyz.push(...shape(i / m, j / n));
      xy.push(...flat(i / m, j / n));
    }
  }
  const triangles: number[] = [];
  const at = (i: number, j: number): number => j * (m + 1) + i;
  for (let j = 0; j < n; j += 1) {
    for (let i = 0; i < m; i += 1) {
      triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
    }
  }
  return { triangles: Uint32Array.from(triangles), shape: Float32Array.from(xyz), flat: Float32Array.from(xy) };
}

/** A strip wound `turnRad` round a pipe of radius `r`, outside up: chords of the pipe, so exactly developable. */
export function pipeShape(turnRad: number, r: number, height: number, m: number, n: number): RollShape {
  const chord = 2 * r * Math.sin(turnRad / m / 2);
  return gridShape(
    m,
    n,
    (u, v) => [r * Math.sin(turnRad * (u - 0.5)), height * v, r * Math.cos(turnRad * (u - 0.5))],
    (u, v) => [chord * m * u, height * v],
  );
}

/** A wrapped cone: half angle from the axis such that the flat piece is a sector of `sectorRad`. */
export function coneShape(
  sectorRad: number,
  turnRad: number,
  near: number,
  far: number,
  m: number,
  n: number,
): RollShape {
  const sine = sectorRad / turnRad;
  return gridShape(
    m,
    n,
    (u, v) => {
      const s = near + (far - near) * v;
      const a = turnRad * (u - 0.5);
      return [s * sine * Math.sin(a), s * Math.sqrt(1 - sine * sine), s * sine * Math.cos(a)];
    },
    (u, v) => {
      const s = near + (far - near) * v;
      const a = sectorRad * (u - 0.5);
      return [s * Math.sin(a), s * Math.cos(a)];
    },
  );
}

/** A quarter of a ball from a square of cells, flat by its azimuth: cannot open all folds alike. */
export function domeShape(r: number, halfRad: number, n: number): RollShape {
  const polar = (u: number, v: number): readonly [number, number] => {
    const [x, y] = [2 * u - 1, 2 * v - 1];
    const away = Math.max(Math.abs(x), Math.abs(y)) * halfRad;
    return [away, Math.atan2(y, x)];
  };
  return gridShape(
    n,
    n,
    (u, v) => {
      const [away, around] = polar(u, v);
      return [r * Math.sin(away) * Math.cos(around), r * Math.sin(away) * Math.sin(around), r * Math.cos(away)];
    },
    (u, v) => {
      const [away, around] = polar(u, v);
      return [r * away * Math.cos(around), r * away * Math.sin(around)];
    },
  );
}
