import type { Finding } from '../../base/finding.ts';
import type { FoamId, PartId, PieceId } from '../../base/ids.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { ringArea } from '../../geom/ring.ts';
import type { Move2 } from '../../geom/turn-and-move.ts';
import { triangleArea } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { MirrorPlane } from '../../mesh/mirror/mirror-plane.ts';
import type { BendLimits } from '../../model/bend-check.ts';
import type { HeatShrinkage } from '../../model/flatten-settings.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { FoamPiece, FoamSeam, TracedSide } from '../../model/foam-piece.ts';
import type { FoamRules, PieceSetting } from '../../model/foam-settings.ts';
import type { StretchLimits } from '../../model/foam-stock.ts';
import type { LeastRatio } from '../../model/forming.ts';
import type { Patch } from '../../model/patch.ts';
import type { OutlineLine, ScoredLine } from '../../model/score.ts';
import type { TipHole } from '../../model/tip-hole.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { acrossSeam } from './across-seam.ts';
import { areAlike } from './alike-shapes.ts';
import { bendStrain } from './bend-check.ts';
import { edgeRuns, type EdgeRun } from './edge-runs.ts';
import { findingsOfPiece } from './findings-of-piece.ts';
import { pieceFolds } from './grooves.ts';
import { isHinged } from './hinge-surface.ts';
import type { HingeShapes } from './hinge-shapes.ts';
import { makeSeams } from './make-seams.ts';
import { twinSteps, type Twin } from './mirror-twins.ts';
import type { PartBends, PatchBend } from './part-bends.ts';
import { pieceKerfs } from './piece-kerfs.ts';
import { doGrainsMirror, grainOf } from './piece-grain.ts';
import {
  areMarksNear,
  hingedStations,
  markedLength,
  markPlaces,
  pieceMarks,
  sideStations,
  trueStations,
} from './piece-marks.ts';
import { pieceSpots } from './piece-spots.ts';
import { pieceIds, pieceNames, settingsOfPatches } from './piece-names.ts';
import { otherLines, shapePiece, tracedLines, type PieceShape } from './piece-shape.ts';
import { printedValues } from './printed-values.ts';
import { revisionCode } from './revision.ts';
import { lostScoreFindings } from './score-findings.ts';
import { findTips, lostTipFindings, pieceTips, type FoundTip } from './tip-holes.ts';
import { findLines, pieceOutlines, pieceScores, type FoundLines } from './scores.ts';
import { sawSettings } from './saw-settings.ts';
import { seamCuts, type SeamCut } from './seam-cuts.ts';
import type { MarkPlace, WalkedSide } from './seam-walk.ts';
import { mirroredPlaces } from './twin-marks.ts';
import { twinMoves } from './twin-moves.ts';

/** What is known of a foam beyond its size. */
export interface FoamFacts {
  readonly limits: StretchLimits;
  /** Left out where `BEND_LIMITS` hold. */
  readonly bendLimits?: BendLimits;
  /** What the foam loses when it is warmed, where the pieces are to be cut larger by it. */
  readonly shrinkage?: HeatShrinkage;
}

/** The layer's foam and what is made of it. */
export interface FoamInput extends FoamFacts {
  readonly part: PartId;
  readonly partName: string;
  /** What stands behind the name of each piece; none if left out. */
  readonly nameSuffix?: string;
  readonly layer: ShellLayer;
  /** One per patch, where pieces are of other foam than the layer; the layer's own if left out. */
  readonly shells?: readonly ShellLayer[];
  readonly mesh: Mesh;
  readonly patches: readonly Patch[];
  /** One per patch, laid flat from its shell's neutral surface; null where it cannot be: such a patch gives no piece. */
  readonly flats: readonly (FlatPiece | null)[];
  /** One per patch, where grooved pieces were laid flat on panels that end elsewhere than the surface; none if left out. */
  readonly hinges?: readonly (HingeShapes | null)[];
  readonly chains: readonly SeamChain[];
  readonly bends: PartBends;
  readonly pieceSettings: readonly PieceSetting[];
  /** Slits in the face of this sheet; none if left out. */
  readonly scores?: readonly ScoredLine[];
  /** Where sheets are laid on its face; none if left out. */
  readonly outlines?: readonly OutlineLine[];
  /** Round holes at the ends of darts; none if left out. */
  readonly tipHoles?: readonly TipHole[];
  readonly tracedSide: TracedSide;
  /** A plane the sculpt mirrors itself in; left out: none is known. */
  readonly mirror?: MirrorPlane;
  readonly upAxis: 'x' | 'y' | 'z';
  /** What is known of foams other than the layer's, where pieces are of them; the layer's own if left out. */
  readonly otherFoams?: ReadonlyMap<FoamId, FoamFacts>;
  readonly rules: FoamRules;
  /** How many of the whole part are built, at least 1. */
  readonly copies: number;
  /** Number of the first piece. */
  readonly firstNumber: number;
}

export interface FoamOutcome {
  readonly pieces: readonly FoamPiece[];
  readonly seams: readonly FoamSeam[];
  /** All findings, those of pieces (which carry them too) before those of seams. */
  readonly findings: readonly Finding[];
}

/** What a patch's piece is called and how it is wanted. */
export interface PieceCall {
  readonly id: PieceId;
  readonly number: number;
  readonly name: string;
  readonly quantity: number;
  readonly traced: TracedSide;
}

/** From flat pieces to what is cut from foam: edges, bevels, folds, marks, names, and what the maker must know. */
export const makeFoamPieces = (input: FoamInput): FoamOutcome => runAtOnce(foamPieceSteps(input));

/** The same in stretches. */
export function* foamPieceSteps(input: FoamInput): Stepwise<FoamOutcome> {
  const { mesh, patches, flats, chains, rules } = input;
  const wishes = settingsOfPatches(mesh, patches, input.pieceSettings);
  const { patches: bends, bevels } = input.bends;
  const shells = patches.map((_, i) => shellOf(input, i));
  const cuts = seamCuts(chains, bevels, shells, rules.bevelLimitDeg);
  const runs = edgeRuns(patches, chains);
  const calls = callPieces(input, wishes);
  const shapes: (PieceShape | null)[] = [];
  for (const [i, patch] of patches.entries()) {
    yield;
    const flat = flats[i];
    shapes.push(flat && shapePiece(patch, flat, runs[i], chains, cuts, shells[i], input.upAxis, bends[i].corners));
  }
  const walked = runs.map((list, i) => {
    const shape = shapes[i];
    return shape === null ? [] : list.map((run) => walkedSide(input, i, shape, run));
  });
  const sides: WalkedSide[][] = chains.map(() => []);
  walked.forEach((list, i) => list.forEach((side, r) => sides[runs[i][r].chain].push(side)));
  yield;
  const twins = yield* twinSteps(
    mesh,
    patches,
    input.upAxis,
    (a, b) =>
      doGrainsMirror(wishes[a].grain, wishes[b].grain) && areAlike(shapes[a], shapes[b], runs[a], runs[b], chains),
    input.mirror ?? null,
  );
  const places = mirroredPlaces(
    chains,
    twins,
    chains.map((chain, i) => {
      const across = acrossChain(input, chain);
      return {
        across,
        lengthMm: markedLength(sides[i]),
        own: (longestMm) => markPlaces(chain, sides[i], rules, across, longestMm),
        isNear: (marks) => areMarksNear(sides[i], marks, rules),
      };
    }),
  );
  const moves = twinMoves(patches, shapes, twins);
  const scores = findLines(mesh, patches, input.scores ?? []);
  const outlines = findLines(mesh, patches, input.outlines ?? []);
  const tips = findTips(mesh, patches, input.tipHoles ?? []);
  const pieces: FoamPiece[] = [];
  for (const i of patches.keys()) {
    yield;
    const [flat, shape] = [flats[i], shapes[i]];
    if (flat === null || shape === null) continue;
    pieces.push(
      yield* makePiece({
        input,
        i,
        flat,
        shape,
        bend: bends[i],
        runs: runs[i],
        places,
        twin: twins[i],
        twinMove: moves[i],
        calls,
        cuts,
        wish: wishes[i],
        scores: scores.runs[i],
        outlines: outlines.runs[i],
        tips: tips[i],
      }),
    );
  }
  yield;
  const { seams, findings } = makeSeams(input, { shapes, calls, cuts, runs, walked, places });
  const lost = [
    ...lostScoreFindings(input.part, mesh, input.scores ?? [], scores.inside),
    ...lostTipFindings(input.part, mesh, input.tipHoles ?? [], tips),
  ];
  return { pieces, seams, findings: [...pieces.flatMap((piece) => piece.findings), ...findings, ...lost] };
}

/** The surfaces of the sheet a patch is cut from. */
const shellOf = ({ layer, shells }: FoamInput, patch: number): ShellLayer => shells?.[patch] ?? layer;

/** What is known of the foam of a patch's piece. */
const factsOf = (input: FoamInput, patch: number): FoamFacts =>
  input.otherFoams?.get(shellOf(input, patch).foam) ?? input;

function walkedSide(input: FoamInput, patch: number, shape: PieceShape, run: EdgeRun): WalkedSide {
  const chain = input.chains[run.chain];
  const shapes = input.hinges?.[patch] ?? null;
  const own =
    shapes === null
      ? trueStations(chain, shellOf(input, patch).neutralPositions)
      : hingedStations(input.bends.patches[patch], shapes, chain.sides[run.side], run.side);
  return { flat: sideStations(shape, run), own };
}

/** Which places of a seam's two sides come together. */
const acrossChain = (input: FoamInput, chain: SeamChain): ReturnType<typeof acrossSeam> =>
  acrossSeam(
    input.mesh,
    chain,
    chain.sides.map(({ patch }) => ({
      bend: input.bends.patches[patch],
      hinges: input.hinges?.[patch] ?? null,
      shell: shellOf(input, patch),
    })),
  );

function callPieces(input: FoamInput, wishes: readonly Partial<PieceSetting>[]): readonly PieceCall[] {
  const { mesh, patches, flats } = input;
  const ids = pieceIds(input.part, input.layer.layer, mesh, patches);
  let next = input.firstNumber;
  const numbers = flats.map((flat) => (flat === null ? 0 : next++));
  const names = pieceNames(mesh, patches, wishes, numbers, input.partName, input.nameSuffix);
  return patches.map((_, i) => ({
    id: ids[i],
    number: numbers[i],
    name: names[i],
    quantity: input.copies * (wishes[i].quantity ?? 1),
    traced: wishes[i].tracedSide ?? input.tracedSide,
  }));
}

interface PieceMaking {
  readonly input: FoamInput;
  readonly i: number;
  readonly flat: FlatPiece;
  readonly shape: PieceShape;
  readonly bend: PatchBend;
  readonly runs: readonly EdgeRun[];
  readonly places: readonly (readonly MarkPlace[])[];
  readonly twin: Twin | null;
  readonly twinMove: Move2 | null;
  readonly calls: readonly PieceCall[];
  readonly cuts: readonly SeamCut[];
  readonly wish: Partial<PieceSetting>;
  readonly scores: FoundLines<ScoredLine>['runs'][number];
  readonly outlines: FoundLines<OutlineLine>['runs'][number];
  readonly tips: readonly FoundTip[];
}

function* makePiece(making: PieceMaking): Stepwise<FoamPiece> {
  const { input, i, flat, shape, bend, runs, places, twin, calls, cuts, wish } = making;
  const { chains, rules } = input;
  const layer = shellOf(input, i);
  const facts = factsOf(input, i);
  const patch = input.patches[i];
  const { id, number, name, quantity, traced } = calls[i];
  const lines = tracedLines(shape, traced);
  const other = otherLines(shape, traced);
  const areaMm2 = [lines.outline, ...lines.holes].reduce((sum, ring) => sum + ringArea(ring), 0);
  const surfaceAreaMm2 = patch.meshTriangles.reduce(
    (sum, t) => sum + triangleArea(layer.neutralPositions, input.mesh.triangles, t),
    0,
  );
  yield;
  const spots = pieceSpots(flat, shape, surfaceAreaMm2);
  const strain = bendStrain(bend, layer, shape.uv);
  const scores = pieceScores(making.scores, shape.uv);
  const outlines = pieceOutlines(making.outlines, shape.uv);
  const tipHoles = pieceTips(making.tips, shape.uv);
  const folds = pieceFolds(bend, shape.uv, layer.thicknessMm, rules);
  const kerfs =
    bend.kerf !== undefined && isHinged(bend, layer, rules.hingeMm)
      ? pieceKerfs(bend.kerf, { ...shape, triangles: patch.triangles }, rules)
      : undefined;
  yield;
  const made = {
    id,
    number,
    name,
    part: input.part,
    layer: layer.layer,
    foam: layer.foam,
    thicknessMm: layer.thicknessMm,
    quantity,
    bendStyle: bend.choice.style,
    bendReason: bend.choice.reason,
    tracedSide: traced,
    ...(twin === null ? {} : { twinOf: calls[twin.patch].id }),
    ...(making.twinMove === null ? {} : { twinMove: making.twinMove }),
    ...(twin?.hand === undefined ? {} : { hand: twin.hand }),
    patch: i,
    uv: shape.uv,
    neutralOutline: shape.neutral[0],
    neutralHoles: shape.neutral.slice(1),
    outline: lines.outline,
    holes: lines.holes,
    otherOutline: other.outline,
    otherHoles: other.holes,
    edges: shape.edges,
    saw: sawSettings(shape.edges, rules.bevelLimitDeg),
    folds,
    marks: pieceMarks(shape, runs, chains, places, traced),
    ...(kerfs === undefined ? {} : { kerfs }),
    ...(scores.length === 0 ? {} : { scores }),
    ...(outlines.length === 0 ? {} : { outlines }),
    ...(tipHoles.length === 0 ? {} : { tipHoles }),
    up: shape.up,
    ...grainOf(wish.grain, shape.up, facts.shrinkage),
    areaMm2,
    surfaceAreaMm2,
    ...(flat.spots === undefined ? {} : { spots }),
    ...(flat.leastRatio === undefined ? {} : { leastRatio: leastOnMesh(patch, flat.leastRatio) }),
    ...(strain === undefined ? {} : { bend: strain }),
    findings: findingsOfPiece(
      input,
      { id, part: input.part, name },
      { patch, flat, spots, limits: facts.limits },
      shape,
      { folds, scores, strain, kerfs, choice: bend.choice },
      facts.bendLimits,
    ),
  };
  return { ...made, revision: revisionCode(printedValues(made, runs, chains, cuts, calls, twin)) };
}

const leastOnMesh = (patch: Patch, least: LeastRatio): LeastRatio =>
  least.centreVertex < 0 ? least : { ...least, centreVertex: patch.meshVertices[least.centreVertex] };
