/**
 * The shade of a pixel, 0 black to 1 white, of a figure that is dark on white: the share of it that the figure covers, by `fine` x `fine` samples.
 * @param isInside  whether a place of the picture, px, y down, lies in the figure.
 */
export function coverageShade(
  isInside: (x: number, y: number) => boolean,
  fine: number,
): (x: number, y: number) => number {
  return (x, y) => {
    let count = 0;
    for (let i = 0; i < fine; i += 1)
      for (let j = 0; j < fine; j += 1) if (isInside(x + (i + 0.5) / fine, y + (j + 0.5) / fine)) count += 1;
    return 1 - count / (fine * fine);
  };
}

/**
 * The same of closed lines, insides by turns: exact along rows, which are looked at `fine` times in each pixel.
 * @param rings  packed x y, px, y down.
 */
export function ringShade(
  rings: readonly Float64Array[],
  widthPx: number,
  heightPx: number,
  fine = 16,
): (x: number, y: number) => number {
  const cover = new Float64Array(widthPx * heightPx);
  for (let row = 0; row < heightPx * fine; row += 1) {
    const y = (row + 0.5) / fine;
    const crossings: number[] = [];
    for (const ring of rings)
      for (let i = 0; i < ring.length; i += 2) {
        const j = (i + 2) % ring.length;
        const [y0, y1] = [ring[i + 1], ring[j + 1]];
        if (y0 <= y !== y1 <= y) crossings.push(ring[i] + ((y - y0) / (y1 - y0)) * (ring[j] - ring[i]));
      }
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const [from, to] = [Math.max(0, crossings[k]), Math.min(widthPx, crossings[k + 1])];
      for (let x = Math.floor(from); x < to; x += 1)
        cover[Math.floor(row / fine) * widthPx + x] += (Math.min(to, x + 1) - Math.max(from, x)) / fine;
    }
  }
  return (x, y) => 1 - Math.min(1, cover[y * widthPx + x]);
}
