import { describe, expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import { rad } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { tidyName } from '../../../src/steps/foam/piece-names.ts';
import { revisionCode } from '../../../src/steps/foam/revision.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';
import { BOX_EDGES, columnEdges, flatOf, foamOf, hingeMesh, hingedFlat, partedAlong, turnedMesh } from './support.ts';

describe('bend style', () => {
  it('is grooved for flat panels with sharp folds, rolled for a smooth tube and a flat plate, each with its reason', () => {
    const octagon = foamOf(partedAlong(tubeMesh(8, 50, 60), columnEdges(8, 0, 1))).pieces[0];
    expect(octagon.bendStyle).toBe('grooved');
    expect(octagon.bendReason).toContain('45°');
    const tube = foamOf(partedAlong(tubeMesh(24, 50, 60), columnEdges(24, 0, 1))).pieces[0];
    expect(tube.bendStyle).toBe('rolled');
    expect(tube.bendReason).toContain('20°');
    const plate = foamOf(partedAlong(boxMesh(100), BOX_EDGES)).pieces[0];
    expect(plate.bendStyle).toBe('rolled');
  });

  it('is rolled where sharp folds lie between curved surfaces', () => {
    // A smooth tube that turns into a steep cone: one crease all round between two curved bands.
    const bell = turnedMesh(36, [
      [50, 0],
      [50, 40],
      [20, 50],
    ]);
    const piece = foamOf(partedAlong(bell, columnEdges(36, 0, 2))).pieces;
    expect(piece[0].bendStyle).toBe('rolled');
    expect(piece[0].folds.length).toBeGreaterThan(0);
  });

  it('follows the maker', () => {
    const parted = partedAlong(tubeMesh(8, 50, 60), columnEdges(8, 0, 1));
    const { pieces } = foamOf(parted, { pieceSettings: [{ face: 3, bendStyle: 'rolled' }] });
    expect(pieces[0]).toMatchObject({ bendStyle: 'rolled', bendReason: 'Rolled, as you asked.' });
  });
});

describe('fold lines', () => {
  it('join what lies in one line and keep their sign', () => {
    const { pieces } = foamOf(partedAlong(tubeMesh(6, 50, 90, 3), columnEdges(6, 0, 3)));
    expect(pieces[0].folds).toHaveLength(5);
    for (const { from, to, angleDeg } of pieces[0].folds) {
      expect(angleDeg).toBeCloseTo(60, 6);
      expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(90, 6);
    }
  });

  it('are negative where the face lies inside the bend', () => {
    const { pieces } = foamOf(partedAlong(hingeMesh(rad(-40)), []));
    expect(pieces[0].folds).toHaveLength(1);
    expect(pieces[0].folds[0].angleDeg).toBeCloseTo(-40, 9);
  });
});

describe('the frame', () => {
  it('turns the sculpt’s up to the top of the page', () => {
    const parted = partedAlong(tubeMesh(24, 50, 60), columnEdges(24, 0, 1));
    const { pieces } = foamOf(parted, { upAxis: 'z' });
    expect(pieces[0].up).toEqual({ x: 0, y: 1 });
    const { mesh, patches } = parted;
    const height = (v: number) => mesh.positions[3 * patches[0].meshVertices[v] + 2];
    const { uv } = pieces[0];
    const [low] = [...patches[0].meshVertices.keys()].filter((v) => height(v) === 0);
    for (const v of patches[0].meshVertices.keys()) expect(uv[2 * v + 1] - uv[2 * low + 1]).toBeCloseTo(height(v), 9);
  });

  it('lays a level piece with its long side along x', () => {
    const parted = partedAlong(boxMesh(40, 120, 30), BOX_EDGES);
    const { pieces } = foamOf(parted, { upAxis: 'z' });
    const level = pieces.filter(({ up }) => up === null);
    expect(level).toHaveLength(2);
    for (const { neutralOutline } of level) {
      const xs = [...neutralOutline].filter((_, i) => i % 2 === 0);
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(110, 9);
    }
  });

  it('is a pure turn: areas keep their sign and size', () => {
    const parted = partedAlong(
      turnedMesh(24, [
        [60, 0],
        [30, 60],
      ]),
      columnEdges(24, 0, 1),
    );
    const flat = hingedFlat(parted.patches[0], parted.layer.neutralPositions);
    const [piece] = foamOf(parted).pieces;
    const ring = Float64Array.from(
      [...parted.patches[0].loops[0]].flatMap((v) => [flat.uv[2 * v], flat.uv[2 * v + 1]]),
    );
    expect(ringArea(piece.neutralOutline)).toBeCloseTo(ringArea(ring), 6);
  });

  it('does not depend on how the piece lay before', () => {
    const parted = partedAlong(
      turnedMesh(24, [
        [60, 0],
        [30, 60],
      ]),
      columnEdges(24, 0, 1),
    );
    const flat = hingedFlat(parted.patches[0], parted.layer.neutralPositions);
    const [c, s] = [Math.cos(1.1), Math.sin(1.1)];
    const turned = flat.uv.map((_, i) =>
      i % 2 === 0 ? c * flat.uv[i] - s * flat.uv[i + 1] : s * flat.uv[i - 1] + c * flat.uv[i],
    );
    const [a] = foamOf(parted).pieces;
    const [b] = foamOf(parted, { flats: [flatOf(parted.patches[0], turned)] }).pieces;
    a.outline.forEach((x, i) => expect(b.outline[i]).toBeCloseTo(x, 9));
  });
});

describe('names and wishes', () => {
  const grouped = (mesh: Mesh, names: readonly string[], groupOfFace: readonly number[]): Mesh => ({
    ...mesh,
    groupNames: names,
    groupOfFace: Int32Array.from(groupOfFace),
  });

  it('tidy what the file calls its groups', () => {
    expect(tidyName('left_cheekGuard-01.003')).toBe('Left cheek guard 01');
    expect(tidyName('Object.001')).toBe('');
    expect(tidyName('default')).toBe('');
    expect(tidyName('')).toBe('');
  });

  it('come from groups, are counted where a group has several pieces, and from the maker before all', () => {
    const mesh = grouped(boxMesh(100), ['lid', 'wall'], [0, 1, 1, 1, 1, -1]);
    const parted = partedAlong(mesh, BOX_EDGES);
    const { pieces } = foamOf(parted, { pieceSettings: [{ face: 2, name: ' Door ' }] });
    expect(pieces.map(({ name }) => name)).toEqual(['Lid', 'Wall 1', 'Door', 'Wall 2', 'Wall 3', 'Piece 6']);
  });

  it('pass over a group that holds everything', () => {
    const { pieces } = foamOf(partedAlong(grouped(boxMesh(100), ['lantern'], [0, 0, 0, 0, 0, 0]), BOX_EDGES));
    expect(pieces.map(({ name }) => name)).toEqual([1, 2, 3, 4, 5, 6].map((n) => `Piece ${n}`));
  });

  it('take quantity and traced side from the wish tied to a polygon of the piece', () => {
    const { pieces } = foamOf(partedAlong(boxMesh(100), BOX_EDGES), {
      copies: 2,
      pieceSettings: [{ face: 4, quantity: 3, tracedSide: 'back' }],
    });
    expect(pieces.map(({ quantity }) => quantity)).toEqual([2, 2, 2, 2, 6, 2]);
    expect(pieces.map(({ tracedSide }) => tracedSide).indexOf('back')).toBe(4);
  });

  it('give ids that survive a seam elsewhere', () => {
    const before = foamOf(
      partedAlong(tubeMesh(24, 40, 60), columnEdges(24, 0, 1).concat(columnEdges(24, 12, 1))),
    ).pieces;
    const after = foamOf(
      partedAlong(
        tubeMesh(24, 40, 60),
        [0, 12, 18].flatMap((i) => columnEdges(24, i, 1)),
      ),
    ).pieces;
    expect(new Set(after.map(({ id }) => id)).size).toBe(3);
    expect(before.map(({ id }) => id).every((id) => after.some((piece) => piece.id === id))).toBe(true);
  });
});

describe('twins', () => {
  /** Two roof panels leaning against each other over the plane x = 0, ridge along z; y is up. */
  const roof = () => {
    const points = [
      [0, 50, 0],
      [0, 50, 100],
      [-40, 0, 0],
      [-40, 0, 120],
      [40, 0, 0],
      [40, 0, 120],
    ] as const;
    return meshOf(points, [
      [0, 2, 3, 1],
      [0, 1, 5, 4],
    ]);
  };

  it('know each other and the wearer’s left from right', () => {
    const { pieces } = foamOf(partedAlong(roof(), [[0, 1]]), { upAxis: 'y' });
    expect(pieces.map(({ twinOf }) => twinOf)).toEqual([pieces[1].id, pieces[0].id]);
    // Up is y and the wearer looks along +z, so +x is on the left.
    expect(pieces.map(({ hand }) => hand)).toEqual(['right', 'left']);
  });

  it('across a mirror that is not between left and right have no hand', () => {
    const turned = meshOf(
      [
        [0, 50, 0],
        [100, 50, 0],
        [0, 0, -40],
        [120, 0, -40],
        [0, 0, 40],
        [120, 0, 40],
      ],
      [
        [0, 1, 3, 2],
        [0, 4, 5, 1],
      ],
    );
    const { pieces } = foamOf(partedAlong(turned, [[0, 1]]), { upAxis: 'y' });
    expect(pieces[0].twinOf).toBe(pieces[1].id);
    expect(pieces[0].hand).toBeUndefined();
  });

  it('are not found where a lap makes one wider', () => {
    const parted = partedAlong(roof(), [[0, 1]], {}, [{ edge: [0, 1], kind: 'lap', allowanceMm: 10, lapFace: 0 }]);
    expect(foamOf(parted, { upAxis: 'y' }).pieces.map(({ twinOf }) => twinOf)).toEqual([undefined, undefined]);
  });

  it('are found though the sculpt stands off the middle, through its own box', () => {
    const mesh = roof();
    const moved = { ...mesh, positions: mesh.positions.map((x, i) => (i % 3 === 0 ? x + 300 : x)) };
    expect(foamOf(partedAlong(moved, [[0, 1]]), { upAxis: 'y' }).pieces.map(({ hand }) => hand)).toEqual([
      'right',
      'left',
    ]);
  });
});

describe('revisions', () => {
  it('are four characters that follow what is printed and nothing else', () => {
    const parted = partedAlong(boxMesh(100), BOX_EDGES);
    const [first] = foamOf(parted).pieces;
    expect(first.revision).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}$/);
    expect(foamOf(parted).pieces[0].revision).toBe(first.revision);
    expect(foamOf(parted, { copies: 2 }).pieces[0].revision).not.toBe(first.revision);
    expect(foamOf(parted, { tracedSide: 'back' }).pieces[0].revision).not.toBe(first.revision);
    expect(foamOf(parted, { limits: { noticePct: 1, tooMuchPct: 2 } }).pieces[0].revision).toBe(first.revision);
  });

  it('change with a tenth of a millimetre and not with a millionth', () => {
    const values = (x: number): unknown[] => [['Piece 1', x], Float64Array.from([x, 2])];
    expect(revisionCode(values(10))).not.toBe(revisionCode(values(10.1)));
    expect(revisionCode(values(10))).toBe(revisionCode(values(10.000001)));
    expect(revisionCode(values(0))).toBe(revisionCode(values(-0)));
  });
});

describe('findings', () => {
  it('hold the stretch of 99 % of the area against the foam’s limits', () => {
    const parted = partedAlong(hingeMesh(0), []);
    const [patch] = parted.patches;
    const { uv } = hingedFlat(patch, parted.layer.neutralPositions);
    const flat = (p99: number) =>
      flatOf(patch, uv, { stretchPct: { max: p99 + 1, p99, mean: 1 }, major: new Float64Array(4).fill(1 + p99 / 100) });
    const of = (p99: number) =>
      foamOf(parted, { flats: [flat(p99)] }).findings.filter(({ code }) => code === 'foam/stretch');
    expect(of(2.9)).toEqual([]);
    expect(of(5)).toMatchObject([
      { severity: 'note', value: 5, limit: 3, unit: '%', where: { triangles: [0, 1, 2, 3] } },
    ]);
    expect(of(9)).toMatchObject([{ severity: 'warning', value: 9, limit: 8 }]);
  });

  it('tell of squash', () => {
    const parted = partedAlong(hingeMesh(0), []);
    const [patch] = parted.patches;
    const { uv } = hingedFlat(patch, parted.layer.neutralPositions);
    const flat = flatOf(patch, uv, { squashPct: { max: 12, p99: 10, mean: 1 }, minor: new Float64Array(4).fill(0.9) });
    expect(foamOf(parted, { flats: [flat] }).findings).toMatchObject([
      { code: 'foam/squash', severity: 'warning', value: 10 },
    ]);
  });

  it('tell of pieces narrower than three thicknesses', () => {
    const parted = partedAlong(hingeMesh(0, 10, 200), [], { thicknessMm: 10 });
    const { findings, pieces } = foamOf(parted);
    expect(findings).toMatchObject([{ code: 'foam/narrow', limit: 30, unit: 'mm', where: { piece: pieces[0].id } }]);
    expect(findings[0].value).toBeCloseTo(20, 0);
    expect(foamOf(partedAlong(hingeMesh(0, 20, 200), [], { thicknessMm: 10 })).findings).toEqual([]);
  });
});

it('the same input gives the same pieces', () => {
  const parted = partedAlong(boxMesh(100), BOX_EDGES);
  expect(JSON.stringify(foamOf(parted))).toBe(JSON.stringify(foamOf(partedAlong(boxMesh(100), BOX_EDGES))));
});
