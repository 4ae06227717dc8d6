import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { FoamId, LayerId } from '../../base/ids.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { pointAt3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { ModelIs, ShellLayer } from '../../model/shell-layer.ts';
import { roomSteps } from './fold-over.ts';
import { vertexOffsetSteps, type VertexOffsets } from './vertex-offset.ts';

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
  const backMm = choice.backMm ?? 0 - PLACE_IN_WALL[choice.modelIs] * t;
  if (!Number.isFinite(backMm)) throw new RangeError(`back at ${backMm} mm`);
  const offsets = yield* offsetsOf(mesh);
  yield;
  // What lies on the sculpt comes out as 0 and not as what rounding leaves of it.
  const [faceMm, neutralMm] = choice.backMm === undefined ? ownPlaces(choice) : [backMm + t, backMm + k * t];
  const findings = [
    ...(yield* roomFindings(mesh, offsets, t, { back: -backMm, face: faceMm })),
    ...cornerFindings(offsets, Math.max(-backMm, faceMm)),
  ];
  yield;
  return {
    ...choice,
    backMm,
    facePositions: moved(mesh, offsets, faceMm),
    neutralPositions: moved(mesh, offsets, neutralMm),
    backPositions: moved(mesh, offsets, backMm),
    findings,
  };
}

/** Places of face and neutral surface where the sheet is the whole wall, mm. */
function ownPlaces({ thicknessMm: t, neutralFraction: k, modelIs }: ShellChoice): readonly [number, number] {
  const s = PLACE_IN_WALL[modelIs];
  return [(1 - s) * t, (k - s) * t];
}

/** Moves for a distance of 1, by sculpt: another thickness or surface asks for the same. */
const OFFSETS = new WeakMap<Mesh, VertexOffsets>();

function* offsetsOf(mesh: Mesh): Stepwise<VertexOffsets> {
  const known = OFFSETS.get(mesh);
  if (known !== undefined) return known;
  const offsets = yield* vertexOffsetSteps(mesh.positions, mesh.triangles);
  OFFSETS.set(mesh, offsets);
  return offsets;
}

/** The sculpt's surface at distance `d` outward, mm. At 0 it is the sculpt itself, to the last bit. */
function moved(mesh: Mesh, offsets: VertexOffsets, d: number): Float64Array {
  if (d === 0) return mesh.positions;
  return mesh.positions.map((x, i) => x + d * offsets.directions[i]);
}

/** @param reach  how far the back lies inward of the sculpt and the face outward, mm; what is not over 0 cannot fold. */
function* roomFindings(
  mesh: Mesh,
  offsets: VertexOffsets,
  t: number,
  reach: { readonly back: number; readonly face: number },
): Stepwise<Finding[]> {
  const findings: Finding[] = [];
  for (const [side, outward] of [
    ['back', -1],
    ['face', 1],
  ] as const) {
    const far = reach[side];
    if (!(far > 0)) continue;
    const rooms = yield* roomSteps(mesh.positions, mesh.triangles, offsets.directions, outward);
    const tight: number[] = [];
    let least = Infinity;
    for (let i = 0; i < rooms.length; i += 1) {
      if (rooms[i] >= far) continue;
      tight.push(i);
      least = Math.min(least, rooms[i]);
    }
    if (tight.length === 0) continue;
    tight.sort((a, b) => rooms[a] - rooms[b] || a - b);
    // Of several sheets the one told of grows and shrinks with the whole wall.
    const works = Math.floor(((least * t) / far) * 10) / 10;
    findings.push({
      code: 'shell/folds-over',
      severity: 'warning',
      text: `The ${side} of ${format(t)} mm foam folds over itself at ${tight.length} ${tight.length === 1 ? 'place' : 'places'} where the sculpt is tighter than the foam is thick: use ${works > 0 ? `at most ${format(works)} mm there` : 'thinner foam there'}, or smooth the sculpt.`,
      value: t,
      limit: works,
      unit: 'mm',
      where: { triangles: clipPlaces(tight), point: centre(mesh, tight[0]) },
    });
  }
  return findings;
}

/** @param reach  greatest distance of a surface of the sheet from the sculpt, mm. */
function cornerFindings(offsets: VertexOffsets, reach: number): Finding[] {
  const findings: Finding[] = [];
  if (offsets.bounded.length > 0) {
    findings.push({
      code: 'shell/spike',
      severity: 'warning',
      text: `${offsets.bounded.length} ${offsets.bounded.length === 1 ? 'spike is' : 'spikes are'} too sharp for foam of this thickness and ${offsets.bounded.length === 1 ? 'was' : 'were'} blunted on the far side: part the foam there, or round the sculpt.`,
      value: offsets.bounded.length,
      where: { vertices: clipPlaces(offsets.bounded) },
    });
  }
  const worst = offsets.unkept.reduce((most, { miss }) => Math.max(most, miss), 0) * reach;
  const worthSaying = offsets.unkept.filter(({ miss }) => miss * reach > CORNER_MISS_MM);
  if (worthSaying.length > 0) {
    findings.push({
      code: 'shell/corner-of-many-planes',
      severity: 'note',
      text: `At ${worthSaying.length} ${worthSaying.length === 1 ? 'corner' : 'corners'} more than three panels meet that no single inner point suits: expect to trim up to ${format(worst)} mm on the inside there.`,
      value: worst,
      limit: CORNER_MISS_MM,
      unit: 'mm',
      where: { vertices: clipPlaces(worthSaying.map(({ vertex }) => vertex)) },
    });
  }
  return findings;
}

/** A corner that misses by less than this on the inside closes under glue, mm (common practice). */
const CORNER_MISS_MM = 0.5;

function centre(mesh: Mesh, t: number): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < 3; k += 1) {
    const p = pointAt3(mesh.positions, mesh.triangles[3 * t + k]);
    sum[0] += p.x / 3;
    sum[1] += p.y / 3;
    sum[2] += p.z / 3;
  }
  return sum;
}

const format = (mm: number): string => String(Math.round(mm * 10) / 10);
