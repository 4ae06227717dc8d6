import { foamId, layerId, partId, pieceId, seamId } from '../../../src/base/ids.ts';
import type { FoamPiece, MatchMark, PieceEdge } from '../../../src/model/foam-piece.ts';
import type { Patch } from '../../../src/model/patch.ts';
import type { FitSide } from '../../../src/steps/dryfit/fit-side.ts';

const SIDE_MM = 100;

/** A square ring of this side, its lower left corner moved out by `o` both ways. */
const square = (o: number): Float64Array =>
  Float64Array.from([-o, -o, SIDE_MM + o, -o, SIDE_MM + o, SIDE_MM + o, -o, SIDE_MM + o]);

export interface SquareChoice {
  readonly faceOutMm?: number;
  readonly backOutMm?: number;
  /** Length of the bottom edge as it is in space, mm; flat it is 100. */
  readonly spaceMm?: number;
  /** Match marks on the bottom edge, mm along it. */
  readonly marksMm?: readonly number[];
}

/** The bottom edge of a square plate of 10 mm, 100 mm a side, that lies flat face up: side 0 of a seam that runs to +x. */
export function squareSide({ faceOutMm = 0, backOutMm = 0, spaceMm = SIDE_MM, marksMm = [] }: SquareChoice): FitSide {
  const seam = seamId('part-1.A');
  const patch: Patch = {
    meshTriangles: Uint32Array.from([0, 1]),
    triangles: Uint32Array.from([0, 1, 2, 0, 2, 3]),
    meshVertices: Uint32Array.from([0, 1, 2, 3]),
    loops: [Uint32Array.from([0, 1, 2, 3])],
    euler: 1,
    kind: 'disc',
    findings: [],
  };
  const edge: PieceEdge = {
    seam,
    letter: 'A',
    side: 0,
    ring: 0,
    from: 0,
    to: 1,
    reversed: false,
    stationMm: Float64Array.from([0, SIDE_MM]),
    bevelDeg: new Float64Array(2),
    faceOffsetMm: new Float64Array(2),
    backOffsetMm: new Float64Array(2),
    allowanceMm: 0,
  };
  const marks = marksMm.map((stationMm, i): MatchMark => ({
    seam,
    letter: 'A',
    index: i + 1,
    side: 0,
    stationMm,
    at: { x: stationMm, y: 0 },
    outward: { x: 0, y: -1 },
  }));
  const piece: FoamPiece = {
    id: pieceId('plate'),
    number: 1,
    name: 'Plate',
    part: partId('part-1'),
    layer: layerId('layer-1'),
    foam: foamId('foam'),
    thicknessMm: 10,
    quantity: 1,
    bendStyle: 'rolled',
    bendReason: '',
    tracedSide: 'face',
    revision: '',
    patch: 0,
    uv: square(0),
    neutralOutline: square(0),
    neutralHoles: [],
    outline: square(faceOutMm),
    holes: [],
    otherOutline: square(backOutMm),
    otherHoles: [],
    edges: [edge],
    folds: [],
    marks,
    up: null,
    areaMm2: SIDE_MM * SIDE_MM,
    surfaceAreaMm2: SIDE_MM * SIDE_MM,
    findings: [],
  };
  const neutralPositions = Float64Array.from([0, 0, 0, spaceMm, 0, 0, spaceMm, SIDE_MM, 0, 0, SIDE_MM, 0]);
  return {
    piece,
    patch,
    edge,
    neutralPositions,
    neutralFraction: 0.5,
    hingedEnds: null,
    tiltRad: null,
    panelBeside: Int32Array.of(0),
  };
}
