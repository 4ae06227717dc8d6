import DxfParser, { type IBlock, type ICircleEntity, type IEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { chainLength, chainSweep } from '../../../src/geom/outline.ts';
import type { PlainDraft } from '../../../src/model/plain-piece.ts';
import { outlineFiles, shapeFiles } from '../../../src/pipeline/shape-files.ts';
import { ALL_SHAPES, shapeFrom } from '../../../src/pipeline/shapes.ts';
import { shapeWork } from '../../../src/steps/shapes/shape-work.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { readSvg } from '../../support/read-svg.ts';

interface Around {
  readonly length: number;
  readonly area: number;
}

interface Step {
  readonly x: number;
  readonly y: number;
  /** Angle the way to the next corner turns, radians, counter-clockwise > 0. */
  readonly turn: number;
}

/** Length and area of a closed way of straight lines and arcs: of each arc the segment beside its chord is r² (turn - sin turn) / 2. */
function around(steps: readonly Step[]): Around {
  let [length, area] = [0, 0];
  steps.forEach(({ x, y, turn }, i) => {
    const next = steps[(i + 1) % steps.length];
    const chord = Math.hypot(next.x - x, next.y - y);
    area += (x * next.y - next.x * y) / 2;
    if (turn === 0) length += chord;
    else {
      const r = chord / 2 / Math.sin(Math.abs(turn) / 2);
      length += r * Math.abs(turn);
      area += (r * r * (turn - Math.sin(turn))) / 2;
    }
  });
  return { length, area };
}

type Vertices = IEntity & { vertices: { x: number; y: number; bulge?: number }[]; shape?: boolean };

function readDxfPieces(text: string) {
  const dxf = new DxfParser().parseSync(text);
  if (dxf === null) throw new Error('the DXF file could not be read');
  const inserts = dxf.entities.map((entity) => (entity as IEntity & { name: string }).name);
  const aroundOf = (entity: IEntity): Around => {
    if (entity.type === 'CIRCLE') {
      const { radius } = entity as ICircleEntity;
      return { length: 2 * Math.PI * radius, area: Math.PI * radius ** 2 };
    }
    const { vertices, shape } = entity as Vertices;
    expect(shape).toBe(true);
    return around(vertices.map(({ x, y, bulge = 0 }) => ({ x, y, turn: 4 * Math.atan(bulge) })));
  };
  const blocks: readonly IBlock[] = inserts.map((name) => dxf.blocks[name]);
  return {
    units: dxf.header.$INSUNITS,
    pieces: blocks.map(({ entities }) => ({
      outside: entities.filter(({ layer }) => layer === '1').map(aroundOf),
      inside: entities.filter(({ layer }) => layer === '11').map(aroundOf),
      arcs: entities
        .flatMap((one) => (one.type === 'POLYLINE' ? (one as Vertices).vertices : []))
        .filter(({ bulge = 0 }) => bulge !== 0).length,
      circles: entities.filter(({ type }) => type === 'CIRCLE').length,
      folds: entities.filter(({ layer }) => layer === '6').length,
    })),
  };
}

function readSvgPieces(text: string) {
  expect(readSvg(text).unitMm).toBeCloseTo(1, 12);
  return text
    .split('<g id="')
    .slice(1)
    .map((part) => ({
      outside: pathsIn(part, 'cut-outside').map(svgAround),
      inside: pathsIn(part, 'cut-inside').map(svgAround),
    }));
}

const pathsIn = (part: string, group: string): string[] => {
  const own = part.split(`<g class="${group}">`)[1]?.split('</g>')[0] ?? '';
  return [...own.matchAll(/ d="([^"]+)"/g)].map(([, d]) => d);
};

function svgAround(d: string): Around {
  const steps: Step[] = [];
  for (const [, command, rest] of d.matchAll(/([MLA])([^MLAZ]*)/g)) {
    const n = rest.trim().split(/\s+/).map(Number);
    const [x, y] = [n[n.length - 2], -n[n.length - 1]];
    if (command === 'A') {
      const last = steps[steps.length - 1];
      const [r, sweep] = [n[0], n[4]];
      const half = Math.asin(Math.min(1, Math.hypot(x - last.x, y - last.y) / 2 / r));
      steps[steps.length - 1] = { ...last, turn: (sweep === 0 ? 2 : -2) * half };
    }
    steps.push({ x, y, turn: 0 });
  }
  return around(steps);
}

const draftsOf = (name: string, ...sizes: [string, string][]): readonly PlainDraft[] =>
  shapeWork(expectOk(shapeFrom(name, sizes)), { thicknessMm: 6, neutralFraction: 0.5 }).pieces;

function expectSame(read: Around, ring: PlainDraft['outline'], isFine: boolean): void {
  const chain = ring.flatMap(({ segments }) => segments);
  const [length, area] = [chainLength(chain), Math.abs(chainSweep(chain))];
  // Curves are chords within a hundredth of a mm; lines and arcs are exact to what the file writes.
  const off = isFine ? 1e-3 : 0.011;
  expect(Math.abs(read.length - length)).toBeLessThan(isFine ? 5e-3 : 0.01 + 1e-4 * length);
  expect(Math.abs(Math.abs(read.area) - area)).toBeLessThan(off * length + 1e-3);
}

describe('outlines as files', () => {
  it('of every shape are read back with their lengths and areas, from both kinds', () => {
    for (const { name } of ALL_SHAPES) {
      const made = shapeFrom(name, []);
      if (!made.ok || made.value.pieces.length === 0) continue;
      const drafts = shapeWork(made.value, { thicknessMm: 6, neutralFraction: 0.5 }).pieces;
      const files = outlineFiles(drafts, name);
      expect([...files.keys()]).toEqual([`${name}.svg`, `${name}.dxf`]);
      const [svg, dxf] = [readSvgPieces(files.get(`${name}.svg`) ?? ''), readDxfPieces(files.get(`${name}.dxf`) ?? '')];
      expect(dxf.units).toBe(4);
      for (const pieces of [svg, dxf.pieces]) {
        expect(pieces, name).toHaveLength(drafts.length);
        drafts.forEach(({ outline, holes }, i) => {
          const hasCurves = [outline, ...holes]
            .flat()
            .some(({ segments }) => segments.some(({ kind }) => kind === 'curve'));
          expect(pieces[i].outside).toHaveLength(1);
          expect(pieces[i].inside).toHaveLength(holes.length);
          expectSame(pieces[i].outside[0], outline, !hasCurves);
          holes.forEach((hole, k) => expectSame(pieces[i].inside[k], hole, !hasCurves));
        });
      }
    }
  });

  it('keep arcs as arcs and circles as circles', () => {
    const [frustum] = readDxfPieces(outlineFiles(draftsOf('frustum'), 'f').get('f.dxf') ?? '').pieces;
    expect(frustum.arcs).toBe(2);
    const [ring] = readDxfPieces(outlineFiles(draftsOf('ring', ['segments', '1']), 'r').get('r.dxf') ?? '').pieces;
    expect([ring.circles, ring.arcs]).toEqual([2, 0]);
    // A flat disc less a small wedge turns by more than a half: both its halves are arcs.
    const [disc] = readDxfPieces(outlineFiles(draftsOf('cone_from_disc'), 'd').get('d.dxf') ?? '').pieces;
    expect(disc.arcs).toBe(2);
    const svg = outlineFiles(draftsOf('ring', ['segments', '1']), 'r').get('r.svg') ?? '';
    expect(svg.match(/A100 100 0 0 0 /g)).toHaveLength(4);
    expect(svg.match(/A60 60 0 0 1 /g)).toHaveLength(4);
  });

  it('have folds on their layer', () => {
    const [net] = readDxfPieces(outlineFiles(draftsOf('prism', ['as', 'net']), 'n').get('n.dxf') ?? '').pieces;
    expect(net.folds).toBe(7);
  });

  it('are the same bytes each time, and none of a table of figures', () => {
    const made = expectOk(shapeFrom('elbow', []));
    expect(expectOk(shapeFiles(made))).toEqual(expectOk(shapeFiles(made)));
    const table = shapeFiles(expectOk(shapeFrom('page_units', [])));
    expect(table.ok ? '' : table.problem.code).toBe('shape/no-pieces');
  });
});
