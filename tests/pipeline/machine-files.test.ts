import { decode } from 'fast-png';
import { beforeAll, describe, expect, it } from 'vitest';
import { cutterOf, machineCautions, machineFiles } from '../../src/pipeline/machine-files.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import type { Project } from '../../src/project/project.ts';
import { expectOk } from '../support/expect-ok.ts';
import { IS_LONG } from '../support/long.ts';
import { readDxf, type DxfThing } from '../support/read-dxf.ts';
import { readSvg } from '../support/read-svg.ts';
import { runSample, SAMPLE_NAMES, testFont } from '../support/run-sample.ts';

type Ring = readonly (readonly [number, number])[];

interface ReportPiece {
  readonly id: string;
  readonly number: number;
  readonly tracedSide: 'face' | 'back';
  readonly outlineMm: Ring;
  readonly otherOutlineMm: Ring;
  readonly holesMm: readonly Ring[];
  readonly otherHolesMm: readonly Ring[];
  readonly marks: readonly { readonly at: readonly [number, number] }[];
}

interface Report {
  readonly pieces: readonly ReportPiece[];
  readonly sheets: readonly {
    readonly placements: readonly { piece: string; copy: number; x: number; y: number; turnRad: number }[];
  }[];
}

/** A ring of the report where it lies on its sheet, worked out from the report alone. */
function onSheet(ring: Ring, { tracedSide }: ReportPiece, place: { x: number; y: number; turnRad: number }): Ring {
  const [c, s] = [Math.cos(place.turnRad), Math.sin(place.turnRad)];
  return ring.map(([x, y]) => {
    const seen = tracedSide === 'back' ? -x : x;
    return [place.x + c * seen - s * y, place.y + s * seen + c * y];
  });
}

const edgesOf = (ring: Ring): readonly (readonly [number, number, number, number])[] =>
  ring.map(([x, y], i) => [x, y, ...ring[(i + 1) % ring.length]]);

function awayFrom(x: number, y: number, edges: readonly (readonly [number, number, number, number])[]): number {
  let least = Infinity;
  for (const [ax, ay, bx, by] of edges) {
    const [dx, dy] = [bx - ax, by - ay];
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared));
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  }
  return least;
}

const pairsOf = ({ points }: Pick<DxfThing, 'points'>): Ring =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]]);

/** Edges of lines, closed or not. */
const linesOf = (things: readonly Pick<DxfThing, 'points' | 'closed'>[]) =>
  things.flatMap((thing) => {
    const edges = edgesOf(pairsOf(thing));
    return thing.closed ? edges : edges.slice(0, -1);
  });

/** Share of a square dot that a line 0.35 mm wide covers; its middle lies `dx`, `dy` from the line, across which `nx`, `ny` points. */
function coveredShare(dx: number, dy: number, nx: number, ny: number, side: number): number {
  const half = side / 2;
  let corners: Ring = [
    [dx - half, dy - half],
    [dx + half, dy - half],
    [dx + half, dy + half],
    [dx - half, dy + half],
  ];
  for (const sign of [1, -1]) {
    const inside = ([x, y]: readonly [number, number]): number => 0.175 - sign * (x * nx + y * ny);
    corners = corners.flatMap((p, i): Ring => {
      const q = corners[(i + 1) % corners.length];
      const [s, t] = [inside(p), inside(q)];
      const kept: Ring = s >= 0 ? [p] : [];
      if (s >= 0 === t >= 0) return kept;
      const share = s / (s - t);
      return [...kept, [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]];
    });
  }
  const twice = corners.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length];
    return sum + x * nextY - nextX * y;
  }, 0);
  return twice / 2 / (side * side);
}

interface Lines {
  readonly cuts: readonly Pick<DxfThing, 'points' | 'closed'>[];
  readonly knife: readonly Pick<DxfThing, 'points' | 'closed'>[];
}

/** Holds the lines of every piece on a sheet against the report; @returns how many pieces were held. */
function holdAgainst(report: Report, sheet: number, linesFor: (piece: ReportPiece, copy: number) => Lines): number {
  let seen = 0;
  for (const place of report.sheets[sheet].placements) {
    const piece = report.pieces.find(({ id }) => id === place.piece);
    if (piece === undefined) continue; // a strip
    const found = linesFor(piece, place.copy);
    const [cuts, knife] = [linesOf(found.cuts), linesOf(found.knife)];
    const traced = [piece.outlineMm, ...piece.holesMm].map((ring) => onSheet(ring, piece, place));
    const other = [piece.otherOutlineMm, ...piece.otherHolesMm].map((ring) => onSheet(ring, piece, place));
    const edges = [...traced, ...other].flatMap(edgesOf);
    for (const [x, y] of traced.flat()) expect(awayFrom(x, y, [...cuts, ...knife])).toBeLessThan(0.01);
    for (const [x, y] of cuts) expect(awayFrom(x, y, edges)).toBeLessThan(0.01);
    seen += 1;
  }
  return seen;
}

const onItsBack = (project: Project): Project => ({
  ...project,
  parts: [{ ...project.parts[0], tracedSide: 'back' }],
});

const CASES: readonly (readonly [label: string, run: () => Promise<Outcome>])[] = [
  ...SAMPLE_NAMES.map((name) => [name, () => runSample(name)] as const),
  ['bracer, traced on its back', () => runSample('bracer', onItsBack)],
];

describe.each(CASES)('%s for machines', (label, run) => {
  let outcome: Outcome;
  let report: Report;
  let files: ReadonlyMap<string, Uint8Array | string>;
  beforeAll(async () => {
    outcome = await run();
    report = JSON.parse(reportOf(outcome)) as Report;
    files = expectOk(machineFiles(outcome, { dxf: true, sheetSvg: true, cutter: cutterOf('laser', 0) }, testFont()));
  });

  it('has every outline of the report in its DXF within 0.01 mm, read by another program', () => {
    let seen = 0;
    for (let i = 0; i < report.sheets.length; i += 1) {
      const { header, things } = readDxf(files.get(`sheet-${i + 1}.dxf`) as string);
      expect(header.$INSUNITS).toBe(4);
      seen += holdAgainst(report, i, ({ number }, copy) => {
        const end = copy === 0 ? '' : `-COPY-${copy + 1}`;
        const own = things.filter(
          ({ block, kind }) => kind === 'line' && block.startsWith(`P${number}-`) && block.endsWith(end),
        );
        return {
          cuts: own.filter(({ layer }) => layer === '1' || layer === '11'),
          knife: own.filter(({ layer }) => layer === 'BEVEL'),
        };
      });
    }
    expect(seen).toBeGreaterThanOrEqual(report.pieces.length);
  });

  it('has the same in its SVG, in mm, y up', () => {
    let seen = 0;
    for (let i = 0; i < report.sheets.length; i += 1) {
      const { unitMm, paths } = readSvg(files.get(`sheet-${i + 1}.svg`) as string);
      expect(unitMm).toBe(1);
      const upright = paths.map((path) => ({ ...path, points: path.points.map((v, k) => (k % 2 === 0 ? v : -v)) }));
      seen += holdAgainst(report, i, ({ number }, copy) => {
        const own = upright.filter(
          ({ groups: [piece] }) =>
            piece.startsWith(`piece-${number}-`) && piece.endsWith(copy === 0 ? '' : `-copy-${copy + 1}`),
        );
        const inGroup = (end: string) => own.filter(({ groups }) => groups.at(-1)?.endsWith(end) === true);
        return { cuts: [...inGroup('-cut-outside'), ...inGroup('-cut-inside')], knife: inGroup('-bevel') };
      });
    }
    expect(seen).toBeGreaterThanOrEqual(report.pieces.length);
  });

  it.runIf(IS_LONG || label.startsWith('bracer'))('has them in its PNG, dot for dot', () => {
    // No pages, and no more of a sheet than is used: pictures take time.
    const heightMm = 1000;
    const { sheets = [], tooLarge = [] } = outcome.sheets ?? {};
    const bare: Outcome = {
      ...outcome,
      paper: outcome.paper === null ? null : { ...outcome.paper, pages: [] },
      sheets: { sheets: sheets.map((sheet) => ({ ...sheet, heightMm })), tooLarge },
    };
    const pictures = expectOk(machineFiles(bare, { pngDpi: 100, cutter: cutterOf('unknown', 0) }, testFont()));
    let seen = 0;
    report.sheets.forEach(({ placements }, i) => {
      const { data, width, resolution } = decode(pictures.get(`sheet-${i + 1}.png`) as Uint8Array);
      const perMm = (resolution?.x ?? NaN) / 1000;
      for (const place of placements) {
        const piece = report.pieces.find(({ id }) => id === place.piece);
        if (piece === undefined) continue; // a strip
        const edges = edgesOf(onSheet(piece.outlineMm, piece, place));
        const other = edgesOf(onSheet(piece.otherOutlineMm, piece, place));
        for (const [ax, ay, bx, by] of edges) {
          const length = Math.hypot(bx - ax, by - ay);
          const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
          // Only where no other line is near, of this bevel or of a mark.
          const marks = piece.marks.map(({ at }) => onSheet([at], piece, place)[0]);
          if (length < 12 || marks.some(([mx, my]) => Math.hypot(mx - x, my - y) < 9)) continue;
          const ends = [-5, 0, 5].map((k) => [x + (k / length) * (bx - ax), y + (k / length) * (by - ay)] as const);
          const bevel = ends.map(([ex, ey]) => awayFrom(ex, ey, other));
          if (!bevel.every((mm) => mm < 1e-6) && bevel.some((mm) => mm < 2)) continue;
          const [nx, ny] = [(by - ay) / length, (ax - bx) / length];
          // How far the dots would have to be moved to fit the line best (Gauss and Newton's step from the line itself).
          let [ink, shift, weight] = [0, 0, 0];
          for (let row = -20; row <= 20; row += 1) {
            for (let column = -20; column <= 20; column += 1) {
              const dot = [Math.floor(x * perMm) + column, Math.floor((heightMm - y) * perMm) + row];
              const [dx, dy] = [(dot[0] + 0.5) / perMm - x, heightMm - (dot[1] + 0.5) / perMm - y];
              if (Math.abs(dx * ny - dy * nx) > 4 || Math.abs(dx * nx + dy * ny) > 0.8) continue;
              const covered = (moved: number): number =>
                coveredShare(dx - moved * nx, dy - moved * ny, nx, ny, 1 / perMm);
              const slope = (covered(0.02) - covered(-0.02)) / 0.04;
              const share = 1 - data[dot[1] * width + dot[0]] / 255;
              ink += share - covered(0);
              shift += (share - covered(0)) * slope;
              weight += slope * slope;
            }
          }
          // Words and leaders beside the line are none of it.
          if (Math.abs(ink / perMm / perMm / 2.8) > 0.003) continue;
          expect(Math.abs(shift / weight)).toBeLessThan(0.01);
          seen += 1;
        }
      }
    });
    expect(seen).toBeGreaterThan(20);
  });

  it('keeps words off the layers that are cut', () => {
    for (const [file, content] of files) {
      if (!file.endsWith('.dxf')) continue;
      const layers = readDxf(content as string)
        .things.filter(({ kind }) => kind === 'text')
        .map(({ layer }) => layer);
      expect(new Set(layers)).toEqual(new Set(['15', 'TEST-SQUARE']));
    }
  });
});

it('says what a laser must never cut before there is a file for it, and nothing for a blade', () => {
  expect(machineCautions({ dxf: true, cutter: cutterOf('laser', undefined) }).join(' ')).toContain('hydrogen chloride');
  expect(machineCautions({ dxf: true, cutter: cutterOf('unknown', undefined) }).join(' ')).toContain(
    'hydrogen chloride',
  );
  expect(machineCautions({ dxf: true, cutter: cutterOf('blade', undefined) })).toEqual([]);
  expect(machineCautions({ cutter: cutterOf('laser', undefined) })).toEqual([]);
});
