import { diagonalEdges, edgeFolds } from '../mesh/edge-fold.ts';
import { surfaceTreeOf } from '../mesh/surface-tree.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { BenchUpdate, PatchView, PiecesView, SculptView, SeamsView, ShellView } from '../model/bench-view.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import type { CutSculpt, Outcome, SizedSculpt } from '../pipeline/outcome.ts';

/**
 * Turns outcomes into what the screen needs, leaving out every part that the screen has: identity tells, because the pipeline remembers
 * by identity. A screen that did not take the last update (it came too late, or the screen was emptied) is sent everything.
 */
export class BenchUpdater {
  #number = 0;
  #sent: {
    sculpt: unknown;
    shell: unknown;
    seams: unknown;
    pieces: unknown;
    sheets: unknown;
    paper: unknown;
  } | null = null;

  /** @param have number of the last update the screen took; 0 when it shows nothing. */
  next(outcome: Outcome, have: number): BenchUpdate {
    const { sculpt, cut } = outcome;
    const before = have === this.#number ? this.#sent : null;
    const keys = {
      sculpt,
      shell: cut?.shell ?? null,
      seams: cut?.chains ?? null,
      pieces: outcome.templates,
      sheets: outcome.sheets,
      paper: outcome.paper,
    };
    this.#sent = keys;
    this.#number += 1;
    const changed = (key: keyof typeof keys): boolean => before === null || before[key] !== keys[key];
    return {
      number: this.#number,
      ...(changed('sculpt') ? { sculpt: sculpt === null ? null : sculptView(sculpt) } : {}),
      ...(changed('shell') ? { shell: cut === null ? null : shellView(cut) } : {}),
      ...(changed('seams') ? { seams: cut === null || sculpt === null ? null : seamsView(sculpt, cut) } : {}),
      ...(changed('pieces') || changed('seams') ? { pieces: cut === null ? null : piecesView(outcome, cut) } : {}),
      ...(changed('sheets') ? { sheets: outcome.sheets } : {}),
      ...(changed('paper') ? { paper: outcome.paper } : {}),
      findings: outcome.findings,
      stopped: outcome.stopped,
      madeNew: outcome.madeNew,
    };
  }
}

function sculptView({ mesh, model, facts, mmPerUnit }: SizedSculpt): SculptView {
  const topology = topologyOf(mesh);
  return {
    positions: Float32Array.from(mesh.positions),
    triangles: mesh.triangles,
    faceOfTriangle: mesh.faceOfTriangle,
    fileVertex: mesh.fileVertex,
    edgeVertices: topology.edgeVertices,
    edgeFoldRad: Float32Array.from(edgeFolds(mesh)),
    edgeIsDiagonal: diagonalEdges(mesh),
    edgeIsOpen: Uint8Array.from(topology.halfedgeOfEdge, (h) => (topology.twin[h] < 0 ? 1 : 0)),
    colours: model.colours === null ? null : Float32Array.from(model.colours),
    sized: mmPerUnit !== null,
    mmPerUnit,
    facts,
    joined: model.joined,
    bvh: surfaceTreeOf(mesh).serialise(),
  };
}

const shellView = ({ shell }: CutSculpt): ShellView => ({
  facePositions: Float32Array.from(shell.facePositions),
  backPositions: Float32Array.from(shell.backPositions),
  thicknessMm: shell.thicknessMm,
});

function seamsView({ mesh }: SizedSculpt, { chains }: CutSculpt): SeamsView {
  const topology = topologyOf(mesh);
  const chainOfEdge = new Int32Array(topology.edgeCount).fill(-1);
  for (const [index, { vertices }] of chains.entries()) {
    for (let i = 1; i < vertices.length; i += 1)
      chainOfEdge[topology.edgeBetween(vertices[i - 1], vertices[i])] = index;
  }
  return { chainOfEdge, chains };
}

function piecesView(outcome: Outcome, cut: CutSculpt): PiecesView {
  const pieces = outcome.pieces ?? [];
  const pieceOfPatch = new Map(pieces.map((piece, index) => [piece.patch, index]));
  return {
    patchOfTriangle: cut.patchOfTriangle,
    patches: cut.patches.map((patch, i) => {
      const piece = pieceOfPatch.get(i) ?? -1;
      return patchView(patch, outcome.flats?.[i] ?? null, piece, piece < 0 ? null : pieces[piece].uv);
    }),
    pieces,
    seams: outcome.seams ?? [],
    templates: outcome.templates ?? [],
    cutOffers: cut.offers,
  };
}

function patchView(patch: Patch, flat: FlatPiece | null, piece: number, uv: Float64Array | null): PatchView {
  return {
    piece,
    kind: patch.kind,
    meshTriangles: patch.meshTriangles,
    triangles: patch.triangles,
    meshVertices: patch.meshVertices,
    uv: uv === null ? null : Float32Array.from(uv),
    stretchPct: flat === null ? null : Float32Array.from(flat.major, (a) => 100 * Math.max(0, a - 1)),
    squashPct: flat === null ? null : Float32Array.from(flat.minor, (b) => 100 * Math.max(0, 1 - b)),
    majorAngle: flat === null ? null : Float32Array.from(flat.majorAngle),
    stretchSpread: flat?.stretchPct ?? null,
    squashSpread: flat?.squashPct ?? null,
  };
}
