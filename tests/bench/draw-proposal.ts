// Pictures of proposals, to judge them as a maker would:
//   node scripts/run-ts.mjs tests/bench/draw-proposal.ts REPORT.json… [--up z] [--out DIR]
// Each report of `seams` becomes one SVG (and a PNG where a Chromium is found): the shape from four sides with its seams, and the
// pieces as they lie flat. Painter's algorithm: the farthest triangle first; a seam is drawn with the triangles beside it.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { CHROMIUM_FLAGS, findChromium } from '../../scripts/lib/chromium.mjs';
import type { ProposalReport, ReportedPiece } from '../../src/pipeline/proposal-files.ts';

/** Side of one view, px. */
const VIEW = 360;
const GAP = 16;
const HEAD = 26;

/** Views by turn round the upright axis and tilt, degrees. */
const VIEWS = [
  { name: 'front', turn: 20, tilt: 15 },
  { name: 'right', turn: 110, tilt: 15 },
  { name: 'back', turn: 200, tilt: 15 },
  { name: 'left', turn: 290, tilt: 15 },
] as const;

/** Pale colours told apart side by side, one for each piece in turn. */
const COLOURS = ['#cfe3d4', '#f3d9b1', '#c9d8ef', '#efc9c9', '#dcd0ea', '#e8e6b0', '#bfe3e6', '#e4d2c4'];

const WIDTH = VIEWS.length * (VIEW + GAP) + GAP;
const HEIGHT = HEAD + 3 * VIEW + 2 * GAP;

type Vec = readonly [number, number, number];

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { out: { type: 'string', default: '/tmp/proposals' }, up: { type: 'string', default: 'y' } },
});
mkdirSync(values.out, { recursive: true });
for (const path of positionals) {
  const report = JSON.parse(readFileSync(path, 'utf8')) as ProposalReport;
  const svg = join(values.out, `${basename(path).replace(/(\.report)?\.json$/, '')}.svg`);
  writeFileSync(svg, drawing(report));
  process.stdout.write(`${photograph(svg)}\n`);
}

/** @returns the picture's path, or the drawing's where no browser is found. */
function photograph(svg: string): string {
  const chromium = findChromium();
  const png = svg.replace(/svg$/, 'png');
  if (chromium === undefined) return svg;
  const flags = [...CHROMIUM_FLAGS, '--headless', '--hide-scrollbars', `--window-size=${WIDTH},${HEIGHT}`];
  return spawnSync(chromium, [...flags, `--screenshot=${png}`, `file://${svg}`]).status === 0 ? png : svg;
}

function drawing(report: ProposalReport): string {
  const { pieceCount, dartCount, seamLengthMm, lengthOverRootArea, feasible } = report;
  const title = `${report.file}: ${pieceCount} pieces, ${dartCount} darts, ${seamLengthMm.toFixed(0)} mm of seam (${lengthOverRootArea.toFixed(2)})${feasible ? '' : ', beyond a limit'}`;
  const views = VIEWS.map(({ turn, tilt }, i) => view(report, GAP + i * (VIEW + GAP), HEAD, turn, tilt));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="white"/>`,
    `<text x="${GAP}" y="18" font-family="sans-serif" font-size="15">${title}</text>`,
    ...views,
    flatPieces(report, GAP, HEAD + VIEW + GAP, WIDTH - 2 * GAP, 2 * VIEW),
    '</svg>',
    '',
  ].join('\n');
}

interface Shown {
  readonly depth: number;
  readonly svg: string;
}

function view(report: ProposalReport, left: number, top: number, turn: number, tilt: number): string {
  const inView = ({ surfaceMm }: ReportedPiece): Vec[] => surfaceMm.map((p) => turned(upright(p), turn, tilt));
  const seams = seamSides(report);
  const points = report.pieces.flatMap(inView);
  const [x, y] = [0, 1].map((k) => extent(points.map((p) => p[k])));
  const scale = (VIEW - 8) / Math.max(x.size, y.size, 1e-9);
  const place = (p: Vec): Vec => [
    left + VIEW / 2 + (p[0] - x.middle) * scale,
    top + VIEW / 2 - (p[1] - y.middle) * scale,
    p[2],
  ];
  const shown = report.pieces.flatMap((piece, i) => trianglesOf(piece, i, inView(piece).map(place), seams));
  shown.sort((a, b) => a.depth - b.depth);
  return shown.map(({ svg }) => svg).join('');
}

function trianglesOf(piece: ReportedPiece, index: number, points: readonly Vec[], seams: ReadonlySet<string>): Shown[] {
  const borders = borderSides(piece);
  return piece.triangles.map((corners) => {
    const [a, b, c] = corners.map((v) => points[v]);
    const facing = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) < 0;
    const size = Math.hypot(...cross(a, b, c)) || 1;
    const light = 0.72 + 0.28 * (Math.abs(cross(a, b, c)[2]) / size);
    const colour = shade(COLOURS[index % COLOURS.length], facing ? light : 0.55 * light);
    const path = [a, b, c].map((p) => `${p[0].toFixed(1)},${p[1].toFixed(1)}`).join(' ');
    const lines = corners.map((v, k) => {
      const w = corners[(k + 1) % 3];
      if (!borders.has(`${v} ${w}`)) return '';
      const [p, q] = [points[v], points[w]];
      const isSeam = seams.has(`${piece.sourceVertices[w]} ${piece.sourceVertices[v]}`);
      const [colour, wide] = isSeam ? ['#b3261e', 2.4] : ['#333', 1];
      return `<path d="M${p[0].toFixed(1)} ${p[1].toFixed(1)}L${q[0].toFixed(1)} ${q[1].toFixed(1)}" stroke="${colour}" stroke-width="${facing ? wide : wide / 2}" stroke-linecap="round"/>`;
    });
    return {
      depth: (a[2] + b[2] + c[2]) / 3,
      svg: `<polygon points="${path}" fill="${colour}" stroke="${colour}" stroke-width="0.6"/>${lines.join('')}`,
    };
  });
}

/** Sides of all triangles, by corners of the file: a border side that runs back along another one is a seam, else an edge of the prop. */
function seamSides({ pieces }: ProposalReport): Set<string> {
  return new Set(
    pieces.flatMap(({ triangles, sourceVertices }) =>
      triangles.flatMap((corners) =>
        corners.map((v, k) => `${sourceVertices[v]} ${sourceVertices[corners[(k + 1) % 3]]}`),
      ),
    ),
  );
}

/** Sides of a piece that no other of its triangles shares: seams, and edges of the prop. */
function borderSides({ triangles }: ReportedPiece): Set<string> {
  const sides = new Set(triangles.flatMap((corners) => corners.map((v, k) => `${v} ${corners[(k + 1) % 3]}`)));
  return new Set([...sides].filter((side) => !sides.has(side.split(' ').reverse().join(' '))));
}

/** Pieces in rows, all to one scale, the largest first. */
function flatPieces({ pieces }: ProposalReport, left: number, top: number, width: number, height: number): string {
  const flats = pieces
    .map((piece, i) => ({ piece, i, uv: piece.uvMm }))
    .flatMap(({ piece, i, uv }) => (uv === null ? [] : [{ piece, i, uv }]))
    .map((each) => ({ ...each, x: extent(each.uv.map((p) => p[0])), y: extent(each.uv.map((p) => p[1])) }))
    .sort((a, b) => b.y.size - a.y.size);
  for (let scale = 40; ; scale *= 0.93) {
    let [x, y, row] = [0, 0, 0];
    const places = flats.map((flat) => {
      const [w, h] = [flat.x.size * scale, flat.y.size * scale];
      if (x + w > width && x > 0) [x, y, row] = [0, y + row + 6, 0];
      const at = { ...flat, left: left + x, top: top + y, scale, fits: x + w <= width };
      [x, row] = [x + w + 6, Math.max(row, h)];
      return at;
    });
    if (places.every(({ fits }) => fits) && y + row <= height) return places.map(flatPiece).join('');
  }
}

interface PlacedPiece {
  readonly piece: ReportedPiece;
  readonly i: number;
  readonly uv: readonly (readonly number[])[];
  readonly x: Extent;
  readonly y: Extent;
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

function flatPiece({ piece, i, uv, x, y, left, top, scale }: PlacedPiece): string {
  const place = (v: number): string =>
    `${(left + (uv[v][0] - x.least) * scale).toFixed(1)} ${(top + (y.least + y.size - uv[v][1]) * scale).toFixed(1)}`;
  const colour = COLOURS[i % COLOURS.length];
  const inside = piece.triangles.map(([a, b, c]) => `M${place(a)}L${place(b)}L${place(c)}Z`).join('');
  const border = [...borderSides(piece)].map((side) => {
    const [v, w] = side.split(' ').map(Number);
    return `M${place(v)}L${place(w)}`;
  });
  return (
    `<path d="${inside}" fill="${colour}" stroke="#00000018" stroke-width="0.5"/>` +
    `<path d="${border.join('')}" fill="none" stroke="#333" stroke-width="1.4" stroke-linecap="round"/>`
  );
}

interface Extent {
  readonly least: number;
  readonly size: number;
  readonly middle: number;
}

function extent(list: readonly number[]): Extent {
  const least = list.reduce((low, value) => Math.min(low, value), Infinity);
  const most = list.reduce((high, value) => Math.max(high, value), -Infinity);
  return { least, size: most - least, middle: (least + most) / 2 };
}

/** With y up. */
function upright([x, y, z]: readonly number[]): Vec {
  return values.up === 'z' ? [x, z, -y] : [x, y, z];
}

/** About the upright y axis, then forward; z towards the eye. */
function turned([x, y, z]: Vec, turnDeg: number, tiltDeg: number): Vec {
  const [t, u] = [(turnDeg * Math.PI) / 180, (tiltDeg * Math.PI) / 180];
  const [px, pz] = [x * Math.cos(t) - z * Math.sin(t), x * Math.sin(t) + z * Math.cos(t)];
  return [px, y * Math.cos(u) - pz * Math.sin(u), y * Math.sin(u) + pz * Math.cos(u)];
}

function cross(a: Vec, b: Vec, c: Vec): Vec {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

function shade(colour: string, light: number): string {
  const parts = [1, 3, 5].map((at) => Math.round(light * Number.parseInt(colour.slice(at, at + 2), 16)));
  return `rgb(${parts.join(',')})`;
}
