import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { FoamId, LayerId } from '../../base/ids.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { ModelIs, ShellCorner, ShellLayer } from '../../model/shell-layer.ts';
import { foldSteps } from './fold-findings.ts';
import { offsetsOf } from './mesh-offsets.ts';
import type { VertexOffsets } from '../../mesh/vertex-offset.ts';

export interface ShellChoice {
  readonly layer: LayerId;
  readonly foam: FoamId;
  /** mm, > 0, else RangeError. */
  readonly thicknessMm: number;
  /** k, 0 (back) to 1 (face), else RangeError. */
  readonly neutralFraction: number;
  readonly modelIs: ModelIs;
  /**
   * Where the back of the sheet lies, counted outward from the sculpt, mm; left out where the sheet is the whole wall: `-s t`, with the sculpt
   * at `s` from the back.
   */
  readonly backMm?: number;
  /** How far a sheet that is the whole wall is moved outward from there, mm; 0 if left out. */
  readonly offMm?: number;
}

/** Place of the sculpt in the wall, counted from the back (foam model 1). */
export const PLACE_IN_WALL: Readonly<Record<ModelIs, number>> = { back: 0, middle: 0.5, face: 1 };

/**
 * Moves the sculpt to the face, the neutral and the back surface of one sheet of foam:
 * with its back at `b` from the sculpt, back `S(b)`, neutral `S(b + k t)`, face `S(b + t)`.
 */
export const makeShellLayer = (mesh: Mesh, choice: ShellChoice): ShellLayer => runAtOnce(shellLayerSteps(mesh, choice));

/** The same in stretches. */
export function* shellLayerSteps(mesh: Mesh, choice: ShellChoice): Stepwise<ShellLayer> {
  const { thicknessMm: t, neutralFraction: k } = choice;
  if (!(t > 0)) throw new RangeError(`thickness ${t} mm`);
  if (!(k >= 0 && k <= 1)) throw new RangeError(`neutral fraction ${k}`);
  const { offMm = 0 } = choice;
  const backMm = choice.backMm ?? offMm - PLACE_IN_WALL[choice.modelIs] * t;
  if (!Number.isFinite(backMm)) throw new RangeError(`back at ${backMm} mm`);
  const offsets = yield* offsetsOf(mesh);
  yield;
  // What lies on the sculpt comes out as 0 and not as what rounding leaves of it.
  const [faceMm, neutralMm] = choice.backMm === undefined ? ownPlaces(choice) : [backMm + t, backMm + k * t];
  const findings = [
    ...(yield* foldSteps(mesh, { thicknessMm: t, backMm, faceMm, place: PLACE_IN_WALL[choice.modelIs] })),
    ...spikeFindings(offsets),
  ];
  yield;
  return {
    ...choice,
    backMm,
    facePositions: moved(mesh, offsets, faceMm),
    neutralPositions: moved(mesh, offsets, neutralMm),
    backPositions: moved(mesh, offsets, backMm),
    corners: cornersOf(offsets, Math.max(-backMm, faceMm)),
    findings,
  };
}

/** Places of face and neutral surface where the sheet is the whole wall, mm. */
function ownPlaces({ thicknessMm: t, neutralFraction: k, modelIs, offMm = 0 }: ShellChoice): readonly [number, number] {
  const s = PLACE_IN_WALL[modelIs];
  return [offMm + (1 - s) * t, offMm + (k - s) * t];
}

/** The sculpt's surface at distance `d` outward, mm. At 0 it is the sculpt itself, to the last bit. */
function moved(mesh: Mesh, offsets: VertexOffsets, d: number): Float64Array {
  if (d === 0) return mesh.positions;
  return mesh.positions.map((x, i) => x + d * offsets.directions[i]);
}

function spikeFindings({ bounded }: VertexOffsets): Finding[] {
  if (bounded.length === 0) return [];
  const isOne = bounded.length === 1;
  return [
    {
      code: 'shell/spike',
      severity: 'warning',
      text: `${bounded.length} ${isOne ? 'spike is' : 'spikes are'} too sharp for foam of this thickness and ${isOne ? 'was' : 'were'} blunted on the far side: part the foam there, or round the sculpt.`,
      value: bounded.length,
      where: { vertices: clipPlaces(bounded) },
    },
  ];
}

/** A corner that misses by less than this on the inside closes under glue, mm (common practice). */
const CORNER_MISS_MM = 0.5;

/** @param reach  greatest distance of a surface of the sheet from the sculpt, mm. */
const cornersOf = ({ unkept }: VertexOffsets, reach: number): readonly ShellCorner[] =>
  unkept.map(({ vertex, miss }) => ({ vertex, missMm: miss * reach })).filter(({ missMm }) => missMm > CORNER_MISS_MM);
