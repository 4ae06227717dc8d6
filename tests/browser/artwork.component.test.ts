import { SVGLoader } from 'three/addons/loaders/SVGLoader.js';
import { expect, it } from 'vitest';
import { ringArea, ringLength } from '../../src/geom/ring.ts';
import { flatPath, pathArea, pathLength } from '../../src/steps/artwork/segments.ts';
import { readPathData } from '../../src/steps/artwork/path-data.ts';
import { paths } from '../reference/artwork/paths.json';
import { expectOk } from '../support/expect-ok.ts';

const DEVIATION = 0.01;

/** Here three's reader keeps the handle of a line before the close, where SVG 2, 9.3.7 has none: no area but 2200. The browser agrees with ours. */
const NOT_BY_THREE = 'serialization.svg, 3';

/** Area by three's reader, each line closed straight, from many points. Unsigned in the sum of its lines' signs. */
function areaByThree(d: string): number {
  const { paths: read } = new SVGLoader().parse(`<svg xmlns="http://www.w3.org/2000/svg"><path d="${d}"/></svg>`);
  return read
    .flatMap(({ subPaths }) => subPaths)
    .reduce((sum, line) => sum + ringArea(line.getPoints(2000).flatMap(({ x, y }) => [x, y])), 0);
}

it.each(paths)('reads $name as the browser and three do', ({ name, d }) => {
  const element = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  element.setAttribute('d', d);
  const ours = expectOk(readPathData(d));
  const [length, area] = [
    ours.reduce((sum, path) => sum + pathLength(path), 0),
    ours.reduce((sum, path) => sum + pathArea(path), 0),
  ];
  // The browser measures in single precision along its own straight parts.
  expect(Math.abs(length / element.getTotalLength() - 1)).toBeLessThan(2e-4);
  const known = name === NOT_BY_THREE ? 0 : areaByThree(d);
  expect(Math.abs(area - known)).toBeLessThan(1e-6 * length * length);
  const flat = ours.map((path) => flatPath(path, DEVIATION));
  const [flatLength, flatArea] = [
    flat.reduce((sum, ring, i) => sum + ringLength(ring) - (ours[i].isClosed ? 0 : closingOf(ring)), 0),
    flat.reduce((sum, ring) => sum + ringArea(ring), 0),
  ];
  expect(flatLength).toBeLessThanOrEqual(length * (1 + 1e-12));
  expect(flatLength).toBeGreaterThan(length * 0.999);
  expect(Math.abs(flatArea - area)).toBeLessThanOrEqual(DEVIATION * length);
});

/** Straight from the last corner to the first. */
function closingOf(ring: Float64Array): number {
  const n = ring.length;
  return Math.hypot(ring[n - 2] - ring[0], ring[n - 1] - ring[1]);
}
