import { foamId } from '../../src/base/ids.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { PatchView, PiecesView, SculptView, SeamsView, ShellView } from '../../src/model/bench-view.ts';
import type { SheetLayout } from '../../src/model/sheet.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { seamChains } from '../../src/steps/cut/seam-chains.ts';
import { boxMesh } from '../support/meshes.ts';
import { squarePiece, templateOf } from './piece-records.ts';
import { sculptView } from './sculpt-views.ts';

export interface BoxViews {
  readonly sculpt: SculptView;
  readonly shell: ShellView;
  readonly seams: SeamsView;
  readonly pieces: PiecesView;
  readonly sheets: SheetLayout;
}

const SIDE = 100;
const THICK = 6;

/** A box of 100 mm in 6 mm foam, parted along all its edges into six squares, two rows of three on a sheet of 400 by 300 mm. */
export function boxViews(): BoxViews {
  const mesh = boxMesh(SIDE);
  const sculpt = sculptView(mesh);
  const topology = topologyOf(mesh);
  const isSeam = sculpt.edgeIsDiagonal.map((diagonal) => 1 - diagonal);
  const set = { isSeam, count: 12 };
  const cut = cutPatches(mesh, set, mesh.positions);
  const chains = seamChains(mesh, set, cut, []);
  const chainOfEdge = new Int32Array(topology.edgeCount).fill(-1);
  chains.forEach(({ vertices }, c) => {
    for (let i = 1; i < vertices.length; i += 1) chainOfEdge[topology.edgeBetween(vertices[i - 1], vertices[i])] = c;
  });
  const flats = cut.patches.map(({ loops, meshVertices }) => {
    // The loop of a square, laid out as a square, is its flat piece.
    const uv = new Float64Array(2 * meshVertices.length);
    const corners = [0, 0, SIDE, 0, SIDE, SIDE, 0, SIDE];
    [...loops[0]].forEach((v, i) => uv.set(corners.slice(2 * i, 2 * i + 2), 2 * v));
    return { uv, outline: corners };
  });
  const pieces = flats.map(({ uv, outline }, i) => squarePiece(`p${i + 1}`, i + 1, outline, THICK, 'face', uv));
  const patches = cut.patches.map((patch, i): PatchView => ({
    piece: i,
    kind: patch.kind,
    meshTriangles: patch.meshTriangles,
    triangles: patch.triangles,
    meshVertices: patch.meshVertices,
    uv: Float32Array.from(flats[i].uv),
    stretchPct: new Float32Array(patch.meshTriangles.length).fill(i),
    squashPct: new Float32Array(patch.meshTriangles.length),
    majorAngle: new Float32Array(patch.meshTriangles.length),
    stretchSpread: null,
    squashSpread: null,
    isFinal: true,
  }));
  return {
    sculpt,
    shell: {
      facePositions: sculpt.positions,
      backPositions: sculpt.positions.map((x) => (x > SIDE / 2 ? x - THICK : x + THICK)),
      thicknessMm: THICK,
      neutralFraction: 0.5,
    },
    seams: { chainOfEdge, chains },
    pieces: {
      patchOfTriangle: cut.patchOfTriangle,
      patches,
      pieces,
      seams: [],
      templates: pieces.map(templateOf),
      isFinal: true,
      benchPatches: patches.length,
      sheet: 1,
      cutOffers: [],
    },
    sheets: {
      sheets: [
        {
          foam: foamId('f'),
          name: { stock: 'buy', nth: 0 },
          fillAlong: 'y',
          filledMm: 0,
          thicknessMm: THICK,
          widthMm: 400,
          heightMm: 300,
          usedShare: 0.5,
          placements: pieces.map(({ id }, i) => ({
            piece: id,
            copy: 0,
            x: 20 + 120 * (i % 3),
            y: 20 + 120 * Math.floor(i / 3),
            turnRad: 0,
          })),
        },
      ],
      tooLarge: [],
    },
  };
}
