import type { Finding } from '../../base/finding.ts';
import { boxOfPoints, ringArea } from '../../geom/ring.ts';
import { pointAt3 } from '../../geom/vec.ts';
import { vertexCount, type Mesh } from '../../mesh/mesh.ts';
import type { BendStrain } from '../../model/bend-check.ts';
import type { DryFit } from '../../model/dry-fit.ts';
import type { Springing } from '../../model/springing.ts';
import type { BodyFit } from '../../model/body-fit.ts';
import type { EdgeWish, FlattenWishes, HeatShrinkage, Region } from '../../model/flatten-settings.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { FoamPiece, FoamSeam } from '../../model/foam-piece.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { PlainPiece } from '../../model/plain-piece.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import type { PieceKerfs } from '../../model/kerfs.ts';
import type { GluingPlan } from '../../model/gluing.ts';
import type { ModelFacts } from '../../model/model-facts.ts';
import type { PageSet } from '../../model/page.ts';
import type { Patch } from '../../model/patch.ts';
import type { SurfacePoint } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import type { SteepJoin } from '../../model/steep-join.ts';
import type { SheetLayout } from '../../model/sheet.ts';
import type { Template } from '../../model/template.ts';
import { fitReport } from './report-fit.ts';
import { dryFitReport } from './report-dry-fit.ts';
import { cuttingReport, layingReport } from './report-forming.ts';
import { gluingFields } from './report-gluing.ts';
import { pairs, triples } from './report-numbers.ts';
import { pagesReport, piecePaperReport } from './report-paper.ts';
import { findingReport, plainReport } from './report-plain.ts';
import { foamLayoutReport, sheetsReport } from './report-sheets.ts';

export interface ReportInput {
  readonly projectName: string;
  readonly projectRevision: number;
  readonly parts: readonly {
    readonly id: string;
    readonly kind: string;
    readonly source: { readonly fileName: string; readonly hash: string };
    readonly transform: readonly number[];
    readonly copies: number;
    readonly offMm?: number;
    readonly flatten: FlattenWishes;
    readonly regions: readonly Region[];
    readonly edgeWishes: readonly EdgeWish[];
  }[];
  /** In the order of the project. */
  readonly sculpts: readonly ReportSculpt[];
  /** Which of them is worked on; -1 where there is none. */
  readonly atWork: number;
  /** Of all of them, as are seams, templates and all that was measured of them. */
  readonly pieces: readonly FoamPiece[];
  readonly strips: readonly FoamStrip[];
  /** Pieces of parts that no sculpt is parted for. */
  readonly plain: readonly PlainPiece[];
  readonly seams: readonly FoamSeam[];
  /** Of pieces and strips, each its own. */
  readonly templates: readonly Template[];
  readonly sheets: SheetLayout;
  readonly paper: { readonly name: string; readonly set: PageSet };
  readonly dryFit: DryFit;
  readonly springing: Springing;
  /** Null where it was not worked out. */
  readonly gluing: GluingPlan | null;
  readonly findings: readonly Finding[];
}

/** One sculpt and the sheets it is made of. */
export interface ReportSculpt {
  readonly part: string;
  readonly name: string;
  readonly modelHash: string;
  readonly mmPerUnit: number;
  readonly facts: ModelFacts;
  readonly mesh: Mesh;
  /** The sheets of foam, from the back to the face. */
  readonly layers: readonly ReportLayer[];
  /** Null where the maker asked for no measure of body or core. */
  readonly bodyFit: BodyFit | null;
  /** What body and core were held against: the sculpt's mesh or that cut along paths. */
  readonly fitMesh: Mesh;
}

/** One sheet of foam. */
export interface ReportLayer {
  readonly shell: ShellLayer;
  /** What was parted: the sculpt's mesh or one cut finer. */
  readonly mesh: Mesh;
  /** Where the vertices that a path has added lie, from the first of them on; none where there are none. */
  readonly added: readonly SurfacePoint[];
  /** What the layer's foam loses when warmed, where its pieces are cut larger by it; else null. */
  readonly shrinkage: HeatShrinkage | null;
  /** Rules of the shop for the layer's foam. */
  readonly rules: FoamRules;
  readonly patches: readonly Patch[];
  /** One per patch: the surfaces its piece is cut from. */
  readonly shells: readonly ShellLayer[];
  readonly flats: readonly (FlatPiece | null)[];
  /** One per patch: x y z of its triangles' corners where a grooved piece stands on hinges, else null. */
  readonly corners: readonly (Float64Array | null)[];
}

/**
 * The machine-readable account of a project: everything a stranger needs to recompute stretch and lengths from the model and check us.
 * Keys and units are described by shared/report.schema.json. Numbers are written in full, so that they can be checked to rounding.
 * @returns a JSON-ready object; the same input gives the same object.
 */
export function makeReport(input: ReportInput): Record<string, unknown> {
  const { sculpts } = input;
  const atWork = sculptReport(sculpts[input.atWork]);
  return {
    schemaVersion: 1,
    project: { name: input.projectName, revision: input.projectRevision },
    modelHash: atWork.modelHash,
    scaleMmPerUnit: atWork.scaleMmPerUnit,
    parts: input.parts.map((part) => ({
      id: part.id,
      kind: part.kind,
      source: { fileName: part.source.fileName, hash: part.source.hash },
      transform: part.transform,
      copies: part.copies,
      offMm: part.offMm ?? 0,
      flatten: part.flatten,
      regions: part.regions,
      edgeWishes: part.edgeWishes,
    })),
    model: atWork.model,
    layers: atWork.layers,
    ...(sculpts.length < 2
      ? {}
      : { sculpts: sculpts.map((own) => ({ part: own.part, name: own.name, ...sculptReport(own) })) }),
    pieces: input.pieces.map((piece) => pieceReport(piece, input)),
    strips: input.strips,
    ...(input.plain.length === 0 ? {} : { plain: input.plain.map(plainReport) }),
    seams: input.seams.map(seamReport),
    sheets: sheetsReport(input.sheets),
    foamLayout: foamLayoutReport(input.sheets),
    dryFit: dryFitReport(input.dryFit),
    springing: { pieces: input.springing.pieces, seams: input.springing.seams },
    ...('fit' in atWork ? { fit: atWork.fit } : {}),
    ...(input.gluing === null ? {} : { gluing: gluingFields(input.gluing) }),
    findings: input.findings.map((finding) => placedFinding(finding, input)),
    pages: pagesReport(input.paper.name, input.paper.set),
  };
}

/** What was read of a sculpt, its sheets, and how they fit what wears them. */
function sculptReport({ modelHash, mmPerUnit, facts, mesh, layers, bodyFit, fitMesh }: ReportSculpt) {
  const scale2 = mmPerUnit * mmPerUnit;
  return {
    modelHash,
    scaleMmPerUnit: mmPerUnit,
    model: {
      vertices: facts.vertices,
      faces: facts.faces,
      triangles: facts.triangles,
      edges: facts.edges,
      triangleEdges: facts.triangleEdges,
      euler: facts.euler,
      shells: facts.shells,
      openLoops: facts.openLoops,
      areaMm2: facts.area * scale2,
      boxMm: { min: facts.boxMin.map((x) => x * mmPerUnit), size: facts.boxSize.map((x) => x * mmPerUnit) },
    },
    layers: layers.map(({ shell, shrinkage, rules }) => ({
      id: shell.layer,
      foam: shell.foam,
      thicknessMm: shell.thicknessMm,
      neutralFraction: shell.neutralFraction,
      modelIs: shell.modelIs,
      backMm: shell.backMm,
      rules,
      shrinkage,
    })),
    ...(bodyFit === null ? {} : { fit: fitReport(bodyFit, fitMesh, vertexCount(mesh)) }),
  };
}

function pieceReport(piece: FoamPiece, input: ReportInput): Record<string, unknown> {
  const sculpt = input.sculpts.find(({ part }) => part === piece.part);
  const layer = sculpt?.layers.find(({ shell }) => shell.layer === piece.layer);
  if (layer === undefined) throw new Error(`report: piece ${piece.id} of a layer that is not there`);
  const patch = layer.patches[piece.patch];
  const flat = layer.flats[piece.patch];
  const { neutralPositions, neutralFraction } = layer.shells[piece.patch];
  const corners = layer.corners[piece.patch];
  if (flat === null) throw new Error(`report: piece ${piece.id} without a flat`);
  return {
    id: piece.id,
    number: piece.number,
    name: piece.name,
    part: piece.part,
    layer: piece.layer,
    foam: piece.foam,
    ...(piece.twinOf === undefined ? {} : { twinOf: piece.twinOf }),
    ...(piece.twinMove === undefined ? {} : { twinMove: piece.twinMove }),
    ...(piece.hand === undefined ? {} : { hand: piece.hand }),
    ...piecePaperReport(piece, input.paper.set, input.templates),
    tracedSide: piece.tracedSide,
    revision: piece.revision,
    triangles: patch.meshTriangles.length,
    thicknessMm: piece.thicknessMm,
    neutralFraction,
    quantity: piece.quantity,
    areaMm2: piece.areaMm2,
    flatAreaMm2: ringArea(piece.neutralOutline) + piece.neutralHoles.reduce((sum, hole) => sum + ringArea(hole), 0),
    surfaceAreaMm2: piece.surfaceAreaMm2,
    boxMm: sizeOf(piece.outline),
    stretchPct: flat.stretchPct,
    squashPct: flat.squashPct,
    energy: flat.energy,
    flipped: flat.flipped,
    overlaps: flat.overlapCount ?? flat.overlaps.length,
    ...layingReport(piece, flat, layer.mesh),
    bendStyle: piece.bendStyle,
    bendReason: piece.bendReason,
    outlineMm: pairs(piece.outline),
    neutralOutlineMm: pairs(piece.neutralOutline),
    otherOutlineMm: pairs(piece.otherOutline),
    holesMm: piece.holes.map(pairs),
    neutralHolesMm: piece.neutralHoles.map(pairs),
    otherHolesMm: piece.otherHoles.map(pairs),
    ...cuttingReport(piece),
    edges: piece.edges.map((edge) => ({
      seam: edge.seam,
      letter: edge.letter,
      side: edge.side,
      ring: edge.ring,
      from: edge.from,
      to: edge.to,
      reversed: edge.reversed,
      stationMm: [...edge.stationMm],
      bevelDeg: [...edge.bevelDeg],
      faceOffsetMm: [...edge.faceOffsetMm],
      backOffsetMm: [...edge.backOffsetMm],
      allowanceMm: edge.allowanceMm,
    })),
    ...(piece.bend === undefined ? {} : { bend: bendReport(piece.bend) }),
    ...(piece.saw === undefined ? {} : { saw: piece.saw }),
    ...(piece.cornerCuts === undefined
      ? {}
      : {
          cornerCuts: piece.cornerCuts.map(({ vertex, ...cut }) => ({ corner: cornerOf(layer, vertex), ...cut })),
        }),
    folds: piece.folds.map((fold) => ({
      from: [fold.from.x, fold.from.y],
      to: [fold.to.x, fold.to.y],
      angleDeg: fold.angleDeg,
      ...(fold.groove === undefined ? {} : { groove: fold.groove }),
    })),
    ...(piece.kerfs === undefined ? {} : { kerfs: kerfReport(piece.kerfs) }),
    ...(piece.scores === undefined
      ? {}
      : { scores: piece.scores.map(({ points, ...score }) => ({ ...score, pointsMm: pairs(points) })) }),
    ...(piece.tipHoles === undefined
      ? {}
      : { tipHoles: piece.tipHoles.map(({ at, ...hole }) => ({ ...hole, at: [at.x, at.y] })) }),
    marks: piece.marks.map((mark) => ({
      seam: mark.seam,
      letter: mark.letter,
      index: mark.index,
      side: mark.side,
      stationMm: mark.stationMm,
      at: [mark.at.x, mark.at.y],
      outward: [mark.outward.x, mark.outward.y],
    })),
    up: piece.up === null ? null : [piece.up.x, piece.up.y],
    flat: {
      uvMm: pairs(piece.uv),
      neutralMm: [...patch.meshVertices].map((v) => {
        const p = pointAt3(neutralPositions, v);
        return [p.x, p.y, p.z];
      }),
      sourceVertices: [...patch.meshVertices].map((v) => cornerOf(layer, v)),
      ...(patch.meshVertices.some((v) => addedAt(layer, v) !== undefined)
        ? { sourcePoints: [...patch.meshVertices].map((v) => addedAt(layer, v) ?? null) }
        : {}),
      triangles: triples(patch.triangles),
      ...(corners === null ? {} : { cornersMm: triples(corners) }),
    },
  };
}

/** Where an added vertex lies; undefined for one of the sculpt. */
const addedAt = ({ mesh, added }: ReportLayer, v: number): SurfacePoint | undefined =>
  added[v - (vertexCount(mesh) - added.length)];

/** The corner of the file that a vertex is, or -1 for one that a path has added. */
const cornerOf = (layer: ReportLayer, v: number): number =>
  addedAt(layer, v) === undefined ? layer.mesh.fileVertex[v] : -1;

const bendReport = (bend: BendStrain): Record<string, unknown> => ({ ...bend, at: [bend.at.x, bend.at.y] });

function seamReport(seam: FoamSeam): Record<string, unknown> {
  return {
    id: seam.id,
    letter: seam.letter,
    pieces: seam.pieces,
    kind: seam.kind,
    layer: seam.layer,
    allowanceMm: seam.allowanceMm,
    lengthMm: seam.lengthMm,
    tracedLengthMm: seam.tracedLengthMm,
    trueLengthMm: seam.trueLengthMm,
    differenceMm: seam.differenceMm,
    worstMisalignmentMm: seam.worstMisalignmentMm,
    worstSlipMm: seam.worstSlipMm,
    bevelDeg: seam.bevelDeg,
    ...(seam.sideBevelDeg === undefined ? {} : { sideBevelDeg: seam.sideBevelDeg }),
    ...(seam.kind === 'lap' ? { lapSide: seam.lapSide, topSide: seam.topSide ?? seam.lapSide } : {}),
    ...(seam.standSide === undefined ? {} : { standSide: seam.standSide }),
    ...(seam.step === undefined ? {} : { step: seam.step }),
    ...(seam.steep === undefined ? {} : { steep: steepReport(seam.steep) }),
  };
}

/** Without the room it leaves, which the outlines tell. */
function steepReport({ room: _, ...figures }: SteepJoin): Record<string, unknown> {
  return figures;
}

/** Findings speak of file numbers here: a reader of the report has the file, not our mesh. */
function placedFinding(finding: Finding, { sculpts, atWork }: ReportInput): Record<string, unknown> {
  const { where } = finding;
  const { mesh } = sculpts.find(({ part }) => part === where.part) ?? sculpts[atWork];
  const number = (v: number): number => mesh.fileVertex[v];
  return {
    ...findingReport(finding),
    where: {
      part: where.part ?? null,
      piece: where.piece ?? null,
      seam: where.seam ?? null,
      faces: [...new Set(where.triangles?.map((t) => mesh.faceOfTriangle[t]))],
      edges: where.edges?.map(([v, w]) => [number(v), number(w)]) ?? [],
      vertices: where.vertices?.map(number) ?? [],
      point: where.point ?? null,
    },
  };
}

function sizeOf(ring: Float64Array): readonly [number, number] {
  const box = boxOfPoints(ring);
  return [box.maxX - box.minX, box.maxY - box.minY];
}

function kerfReport({ lines, ...sizes }: PieceKerfs): unknown {
  return { ...sizes, linesMm: lines.map(pairs) };
}
