import type { LayerId } from '../base/ids.ts';
import type { Finding } from '../base/finding.ts';
import { turnBetween } from '../geom/turn-between.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { surfaceTreeOf } from '../mesh/surface-tree.ts';
import { topologyOf } from '../mesh/topology.ts';
import type {
  BenchUpdate,
  EarlyUpdate,
  MirrorView,
  PatchView,
  PiecesView,
  SculptView,
  SeamsView,
  ShellView,
} from '../model/bench-view.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { Template } from '../model/template.ts';
import { barePieces, type DrawnPieces } from '../pipeline/bare-pieces.ts';
import type { DrawnSurface } from '../pipeline/drawn-lines.ts';
import { atWorkIn, type CutSculpt, type EarlyOutcome, type Outcome, type SizedSculpt } from '../pipeline/outcome.ts';
import { marksOfOffer } from '../pipeline/offer-marks.ts';
import { withAdded } from '../pipeline/shell-on-lines.ts';
import { edgeNames } from './edge-names.ts';
import { FIRST_LOOK } from './first-look.ts';
import { placeOnBench, plainPartViews, SculptsBeside } from './plain-part-views.ts';
import { plateSkins } from '../steps/foam/plate-skins.ts';
import { isSameSculpt, sculptView } from './sculpt-view.ts';

/** What an update was made of. */
interface Made {
  readonly sculpt: unknown;
  readonly shell: unknown;
  readonly seams: unknown;
  readonly pieces: unknown;
  /** Which sculpt it is about. */
  readonly atWork: unknown;
  /** Cuts that are offered: a sheet too small for a piece adds one while all pieces stay. */
  readonly offers: unknown;
  readonly plain: unknown;
  /** Where the sculpt on the bench stands in the prop: other parts stand about it. */
  readonly place: unknown;
  readonly sculptsBeside: unknown;
  readonly sheets: unknown;
  readonly paper: unknown;
  readonly bodyFit: unknown;
  readonly dryFit: unknown;
  readonly springing: unknown;
  readonly mirror: unknown;
}

/** What of an update tells of the sculpt. */
type SentSculpt = Pick<BenchUpdate, 'sculpt' | 'tree'>;

/** Updates remembered: a screen is at most a few behind. */
const MOST_REMEMBERED = 8;

/**
 * Turns outcomes into what the screen needs, leaving out every part that the screen has: identity tells, because the pipeline remembers
 * by identity. A screen whose last update is forgotten here, or that was emptied, is sent everything.
 */
export class BenchUpdater {
  #number = 0;
  readonly #sent = new Map<number, Made>();
  /** The sculpt on the meshes of sheets that have one of their own. */
  readonly #onMesh = new WeakMap<Mesh, SizedSculpt>();
  readonly #sculptsBeside = new SculptsBeside();
  /** What the screen saw before anything was worked out. */
  #firstLook: SculptView | null = null;

  /** @param view  the sculpt that the screen has as its update {@link FIRST_LOOK}. */
  seen(view: SculptView): void {
    this.#firstLook = view;
  }

  /**
   * @param have   number of the last update the screen took; 0 when it shows nothing.
   * @param sheet  which sheet of the wall lies on the bench, 1 the outermost; where there is no such sheet it is the outermost.
   */
  next(outcome: Outcome, have: number, sheet = 1): BenchUpdate {
    const shown = outcome.layers.at(sheet - 1)?.cut == null ? 0 : sheet - 1;
    const cut = outcome.layers.at(shown)?.cut ?? outcome.cut;
    const sculpt = this.#sculptUnder(outcome.sculpt, outcome.drawn, cut);
    const sculptsBeside = this.#sculptsBeside.of(outcome);
    const place = placeOnBench(outcome);
    const made = {
      sculpt,
      shell: cut?.shell ?? null,
      seams: cut?.chains ?? null,
      pieces: outcome.templates,
      atWork: outcome.part?.id ?? null,
      offers: cut?.offers ?? null,
      plain: outcome.plain,
      place,
      sculptsBeside,
      sheets: outcome.sheets,
      paper: outcome.paper,
      bodyFit: outcome.bodyFit,
      dryFit: outcome.dryFit,
      springing: outcome.springing,
      mirror: outcome.mirror,
    };
    const changed = this.#changes(made, have);
    const ofSculpt = changed('sculpt') ? this.#sculptParts(sculpt, outcome, have) : {};
    this.#firstLook = null;
    return {
      number: this.#remember(made),
      ...ofSculpt,
      ...(changed('shell') ? { shell: cut === null ? null : shellView(cut) } : {}),
      ...(changed('seams') ? { seams: cut === null || sculpt === null ? null : seamsView(sculpt, cut) } : {}),
      ...(changed('pieces') || changed('atWork') || changed('offers') || changed('seams') || changed('shell')
        ? { pieces: viewOfPieces(outcome, shown) }
        : {}),
      ...(changed('plain') || changed('place') ? { plain: plainPartViews(outcome.plain, place) } : {}),
      ...(changed('sculptsBeside') ? { sculptsBeside } : {}),
      ...(changed('sheets') ? { sheets: outcome.sheets } : {}),
      ...(changed('paper') ? { paper: outcome.paper } : {}),
      ...(changed('bodyFit') ? { bodyFit: outcome.bodyFit } : {}),
      ...(changed('dryFit') ? { dryFit: outcome.dryFit } : {}),
      ...(changed('springing') ? { springing: outcome.springing } : {}),
      ...(changed('mirror') ? { mirror: mirrorView(outcome) } : {}),
      findings: outcome.findings.map((told) =>
        isOfOther(told, outcome)
          ? withoutPlaces(told)
          : sculpt === outcome.sculpt
            ? told
            : byVertices(told, outcome.sculpt),
      ),
      stopped: outcome.stopped,
      madeNew: outcome.madeNew,
    };
  }

  /**
   * Shapes that are sent ahead; sheets and paper stay as they were, and go with their sculpt.
   * @param before  the last finished outcome, if any: its pieces stay drawn as they were where they are the same.
   */
  early(early: EarlyOutcome, before: Outcome | null, have: number): EarlyUpdate {
    const { cut } = early;
    const sculpt = this.#sculptUnder(early.sculpt, early.drawn, cut) ?? early.sculpt;
    const drawn = barePieces(early, before);
    const sent = this.#sent.get(have);
    // Sheets and paper of another sculpt mean nothing.
    const stays = sent?.sculpt === sculpt ? sent : null;
    const made = {
      sculpt,
      shell: cut.shell,
      seams: cut.chains,
      pieces: drawn.templates,
      atWork: early.part.id,
      offers: cut.offers,
      plain: stays?.plain ?? null,
      place: stays?.place ?? null,
      sculptsBeside: stays?.sculptsBeside ?? null,
      sheets: stays?.sheets ?? null,
      paper: stays?.paper ?? null,
      bodyFit: stays?.bodyFit ?? null,
      dryFit: stays?.dryFit ?? null,
      springing: stays?.springing ?? null,
      mirror: stays?.mirror ?? null,
    };
    const changed = this.#changes(made, have);
    return {
      number: this.#remember(made),
      ...(changed('sculpt') ? this.#sculptParts(sculpt, early, have) : {}),
      ...(changed('shell') ? { shell: shellView(cut) } : {}),
      ...(changed('seams') ? { seams: seamsView(sculpt, cut) } : {}),
      pieces: earlyView(early, drawn, before?.sculpt === early.sculpt ? (atWorkIn(before)?.seams ?? []) : []),
    };
  }

  /**
   * The sculpt as what lies on the bench is numbered. One that was cut along paths has the sculpt's colours; a sheet with seams of its own
   * has a mesh of its own, without colours.
   */
  #sculptUnder(
    sculpt: SizedSculpt | null,
    drawn: DrawnSurface | null,
    cut: Pick<CutSculpt, 'mesh'> | null,
  ): SizedSculpt | null {
    if (sculpt === null || cut === null || cut.mesh === sculpt.mesh) return sculpt;
    const { mesh } = cut;
    const known = this.#onMesh.get(mesh);
    if (known !== undefined) return known;
    const { colours } = sculpt.model;
    const isDrawn = drawn !== null && drawn.mesh === mesh && colours !== null;
    const own = isDrawn ? withAdded(sculpt.mesh, colours, drawn.cut.added) : null;
    const made = { ...sculpt, mesh, model: { ...sculpt.model, mesh, colours: own } };
    this.#onMesh.set(mesh, made);
    return made;
  }

  /** The sculpt, or of one that was looked at already what it lacked then. */
  #sculptParts(sculpt: SizedSculpt | null, of: Pick<Outcome, 'sculpt' | 'drawn'>, have: number): SentSculpt {
    if (sculpt === null) return { sculpt };
    const view = wholeView(sculpt, of);
    const { bvh } = view;
    const isSeen = have === FIRST_LOOK && this.#firstLook !== null && isSameSculpt(this.#firstLook, view);
    return isSeen && bvh !== null ? { tree: bvh } : { sculpt: view };
  }

  #changes(made: Made, have: number): (key: keyof Made) => boolean {
    const before = this.#sent.get(have);
    return (key) => before === undefined || before[key] !== made[key];
  }

  #remember(made: Made): number {
    this.#number += 1;
    this.#sent.set(this.#number, made);
    this.#sent.delete(this.#number - MOST_REMEMBERED);
    return this.#number;
  }
}

/** Whether it speaks of another sculpt than the one on the bench. */
const isOfOther = ({ where }: Finding, { sculpts, part }: Outcome): boolean =>
  where.part !== part?.id && sculpts.some((own) => own.part.id === where.part);

/** Its places are on a sculpt that is not on the bench, and so is its wish. */
function withoutPlaces({ wish: _, where: { part, piece, seam }, ...told }: Finding): Finding {
  return {
    ...told,
    where: {
      ...(part === undefined ? {} : { part }),
      ...(piece === undefined ? {} : { piece }),
      ...(seam === undefined ? {} : { seam }),
    },
  };
}

/** Places on triangles of the sculpt, told by their corners: those keep their numbers where the sculpt was cut finer. */
function byVertices(finding: Finding, sculpt: SizedSculpt | null): Finding {
  const { triangles, ...where } = finding.where;
  if (sculpt === null || triangles === undefined) return finding;
  const corners = triangles.flatMap((t) => [...sculpt.mesh.triangles.subarray(3 * t, 3 * t + 3)]);
  return { ...finding, where: { ...where, vertices: [...new Set([...(where.vertices ?? []), ...corners])] } };
}

const wholeView = (sculpt: SizedSculpt, { sculpt: whole, drawn }: Pick<Outcome, 'sculpt' | 'drawn'>): SculptView =>
  sculptView(sculpt, {
    bvh: surfaceTreeOf(sculpt.mesh).serialise(),
    ...(whole !== null && drawn?.mesh === sculpt.mesh ? edgeNames(whole.mesh, drawn) : {}),
  });

function mirrorView({ sculpt, mirror }: Outcome): MirrorView | null {
  if (sculpt === null || mirror === null) return null;
  const { plane, share, toleranceMm, partners } = mirror;
  const { vertexOfFile, fileVertex } = sculpt.mesh;
  const partnerOfFile = vertexOfFile.map((v) =>
    v < 0 || partners.ofVertex[v] < 0 ? -1 : fileVertex[partners.ofVertex[v]],
  );
  return { ...plane, share, toleranceMm, partnerOfFile };
}

const shellView = ({ shell }: CutSculpt): ShellView => ({
  facePositions: new Float32Array(shell.facePositions),
  backPositions: new Float32Array(shell.backPositions),
  thicknessMm: shell.thicknessMm,
  neutralFraction: shell.neutralFraction,
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

/** Null before there is anything to cut. */
function viewOfPieces(outcome: Outcome, shown: number): PiecesView | null {
  const { cut, layers, templates, strips } = outcome;
  if (layers.at(shown)?.cut != null || cut !== null) return piecesView(outcome, shown);
  if (templates === null) return null;
  return {
    isFinal: true,
    pieces: [],
    templates: templatesInView(outcome),
    patches: [],
    benchPatches: 0,
    sheet: 1,
    seams: [],
    strips,
    plain: outcome.plain.flatMap(({ pieces }) => pieces),
    ...othersOf(outcome),
    patchOfTriangle: new Int32Array(),
    cutOffers: [],
  };
}

/** @param shown  index of the sheet on the bench. */
function piecesView(outcome: Outcome, shown: number): PiecesView {
  const { layers, raised, strips } = outcome;
  const { pieces, seams } = atWorkIn(outcome) ?? { pieces: null, seams: null };
  const inOrder = [layers[shown], ...layers.filter((_, i) => i !== shown), ...raised];
  const drawn: DrawnPieces = { pieces: pieces ?? [], templates: templatesInView(outcome) };
  const uneven = unevenSeams(seams ?? []);
  const patches: PatchView[] = [];
  const firstPatch = new Map<LayerId, number>();
  let benchPatches = 0;
  for (const { cut, flats } of inOrder) {
    if (cut === null) continue;
    firstPatch.set(cut.shell.layer, patches.length);
    patches.push(...patchViews(cut, drawn, flats ?? [], () => true, uneven));
    benchPatches ||= patches.length;
  }
  const { cut } = inOrder[0];
  if (cut === null) throw new Error('piecesView: a sheet that was not parted');
  const counted = drawn.pieces.map((piece) => {
    const first = firstPatch.get(piece.layer) ?? 0;
    return first === 0 ? piece : { ...piece, patch: first + piece.patch };
  });
  const places = placesOf(cut, outcome);
  // Cuts are offered for the sheet that is seen.
  const cutOffers = shown === 0 ? places.cutOffers : [];
  const { templates: drawings } = drawn;
  return {
    isFinal: true,
    pieces: counted,
    templates: drawings,
    patches,
    benchPatches,
    sheet: shown + 1,
    seams: seams ?? [],
    strips,
    plain: outcome.plain.flatMap(({ pieces: own }) => own),
    ...othersOf(outcome),
    ...places,
    cutOffers,
  };
}

/** Pieces of the sculpts that are not on the bench. */
function othersOf({ sculpts, part }: Outcome): Pick<PiecesView, 'others'> {
  const others = sculpts.flatMap((own) => (own.part === part ? [] : (own.pieces ?? [])));
  return others.length === 0 ? {} : { others };
}

/** One for each piece of the sculpt on the bench, for each piece of other sculpts, for each strip, and for each piece of other parts. */
function templatesInView(outcome: Outcome): readonly Template[] {
  const templates = outcome.templates ?? [];
  const { others } = othersOf(outcome);
  if (others === undefined) return templates;
  const own = (atWorkIn(outcome)?.pieces ?? []).map(({ id }): string => id);
  const inOrder = [...own, ...others.map(({ id }): string => id)];
  const byId = new Map(templates.map((template) => [template.piece as string, template]));
  return [...inOrder.flatMap((id) => byId.get(id) ?? []), ...templates.slice(inOrder.length)];
}

/** @param seams  as they were measured last. */
function earlyView(early: EarlyOutcome, drawn: DrawnPieces, seams: readonly FoamSeam[]): PiecesView {
  const { cut, flats, isFinal } = early;
  const patches = patchViews(cut, drawn, flats, (i) => isFinal[i]);
  return { isFinal: false, ...drawn, patches, benchPatches: patches.length, sheet: 1, seams, ...placesOf(cut, early) };
}

const placesOf = (
  { mesh, patchOfTriangle, offers }: CutSculpt,
  { sculpt, drawn }: Pick<Outcome, 'sculpt' | 'drawn'>,
): Pick<PiecesView, 'patchOfTriangle' | 'cutOffers'> => ({
  patchOfTriangle,
  cutOffers:
    sculpt !== null && drawn?.mesh === mesh
      ? offers.map((offer) => ({ ...offer, marks: offer.marks ?? marksOfOffer(offer, sculpt, drawn) }))
      : offers,
});

function patchViews(
  cut: CutSculpt,
  { pieces }: DrawnPieces,
  flats: readonly (FlatPiece | null)[],
  isFinal: (patch: number) => boolean,
  uneven: ReadonlySet<string> = new Set(),
): PatchView[] {
  // Pieces of other sheets have patches of their own.
  const pieceOfPatch = new Map(
    pieces.flatMap((piece, index) => (piece.layer === cut.shell.layer ? [[piece.patch, index] as const] : [])),
  );
  return cut.patches.map((patch, i) => {
    const flat = flats[i] ?? null;
    const piece = pieceOfPatch.get(i) ?? -1;
    // Pieces are turned after they are laid flat, and the directions in them with them.
    const turnRad = flat === null || piece < 0 ? 0 : turnBetween(flat.uv, pieces[piece].uv);
    return {
      piece,
      kind: patch.kind,
      isFinal: isFinal(i),
      meshTriangles: patch.meshTriangles,
      triangles: patch.triangles,
      meshVertices: patch.meshVertices,
      ...ownSkins(cut, i, pieces[piece], uneven),
      uv: piece < 0 ? null : new Float32Array(pieces[piece].uv),
      stretchPct: flat === null ? null : new Float32Array(flat.major.map((a) => 100 * Math.max(0, a - 1))),
      squashPct: flat === null ? null : new Float32Array(flat.minor.map((b) => 100 * Math.max(0, 1 - b))),
      majorAngle: flat === null ? null : new Float32Array(flat.majorAngle.map((angle) => angle + turnRad)),
      stretchSpread: flat?.stretchPct ?? null,
      squashSpread: flat?.squashPct ?? null,
    };
  });
}

/** Surfaces of a piece that is of another foam than its sheet, or has an edge that is not cut on the plane that halves its fold. */
function ownSkins(
  { patches, shell, shells }: CutSculpt,
  i: number,
  piece: FoamPiece | undefined,
  uneven: ReadonlySet<string>,
): Pick<PatchView, 'skins'> {
  const isUneven = piece?.edges.some(({ seam }) => uneven.has(seam)) === true;
  if (piece === undefined || (shells[i].foam === shell.foam && !isUneven)) return {};
  const { face, back } = plateSkins(patches[i], piece, shells[i], uneven);
  return { skins: { face: new Float32Array(face), back: new Float32Array(back) } };
}

/** Seams whose sides are not both cut on the plane that halves the fold. */
const unevenSeams = (seams: readonly FoamSeam[]): ReadonlySet<string> =>
  new Set(
    seams.flatMap(({ id, standSide, sideBevelDeg }) =>
      standSide === undefined && sideBevelDeg === undefined ? [] : [id],
    ),
  );
