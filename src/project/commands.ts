import type { NamedWish } from '../base/finding.ts';
import type { FoamId, LayerId } from '../base/ids.ts';
import type { EdgeWish, FlattenWishes, Give, HeatShrinkage, Region, SeamPaint } from '../model/flatten-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { TracedSide } from '../model/foam-piece.ts';
import type { NeutralTest } from '../model/neutral-test.ts';
import type { PieceSetting } from '../model/foam-settings.ts';
import { NO_SEAMS, type SeamMarks, type SeamSetting } from '../model/seams.ts';
import type { ModelIs } from '../model/shell-layer.ts';
import type { Repair, ScaleChoice } from '../model/source-model.ts';
import { sculptAtWork } from './at-work.ts';
import { joinedPaths, wishedPaths, withoutPaths } from './part-paths.ts';
import { edgesAndPaths } from './path-names.ts';
import type { LayerChoice, PaperChoice, Part, Project, SculptPart } from './project.ts';

/** A change to the document: pure, sharing what it does not touch; returns the same object when nothing would change. */
export interface Command {
  /** What undo will name, in the words of the screen. */
  readonly label: string;
  /** Commands in a row with one key undo as one: a drag, a slider. The key ends with the drag. */
  readonly mergeKey?: string;
  apply(project: Project): Project;
}

export type EdgePair = readonly [number, number];

/** Changes the sculpt that is worked on. */
export function onSculpt(label: string, change: (part: SculptPart) => SculptPart, mergeKey?: string): Command {
  return {
    label,
    ...(mergeKey === undefined ? {} : { mergeKey }),
    apply(project) {
      const atWork = sculptAtWork(project);
      const parts = project.parts.map((part): Part => (part === atWork ? change(part) : part));
      return parts.every((part, i) => part === project.parts[i]) ? project : { ...project, parts };
    },
  };
}

export const renameProject = (name: string): Command => ({
  label: 'rename',
  mergeKey: 'rename',
  apply: (project) => (name === project.name || name.trim() === '' ? project : { ...project, name: name.trim() }),
});

export const setScale = (scale: ScaleChoice): Command => onSculpt('set the size', (part) => ({ ...part, scale }));

export const setUpAxis = (upAxis: 'x' | 'y' | 'z'): Command =>
  onSculpt('set which way is up', (part) => (part.upAxis === upAxis ? part : { ...part, upAxis }));

export const addRepair = (repair: Repair): Command =>
  onSculpt('repair', (part) => ({ ...part, repairs: [...part.repairs, repair] }));

export const removeRepair = (index: number): Command =>
  onSculpt('take back a repair', (part) => ({ ...part, repairs: part.repairs.filter((_, i) => i !== index) }));

/** Parts the sculpt along edges given in file numbers; those that are seams already stay, as do paths. */
export const addSeamEdges = (pairs: readonly EdgePair[], mergeKey?: string): Command =>
  onSculpt(
    'part here',
    (part) => {
      const known = new Set(part.seams.edges.map(edgeKey));
      const added = edgesAndPaths(pairs).edges.filter((pair) => {
        const key = edgeKey(pair);
        return pair[0] !== pair[1] && !known.has(key) && known.add(key);
      });
      return added.length === 0 ? part : withSeams(part, { edges: [...part.seams.edges, ...added] });
    },
    mergeKey,
  );

/** Joins the foam again along edges given in file numbers, and along whole paths (`pathName`). */
export const removeSeamEdges = (pairs: readonly EdgePair[], mergeKey?: string): Command =>
  onSculpt(
    'join',
    (part) => {
      const { edges: pairsGone, paths } = edgesAndPaths(pairs);
      const gone = new Set(pairsGone.map(edgeKey));
      const edges = part.seams.edges.filter((pair) => !gone.has(edgeKey(pair)));
      return withoutPaths(edges.length === part.seams.edges.length ? part : withSeams(part, { edges }), paths);
    },
    mergeKey,
  );

/**
 * Takes a stretch of seam to another place. What was said of a seam by one of the edges it leaves is said by one it takes.
 * @param before   the marks and the seams' settings when the seam was taken hold of: every step of one drag counts from these.
 * @param gone     edges it leaves, file numbers.
 * @param added    edges it takes.
 * @param mergeKey the drag's own key.
 */
export const moveSeam = (
  before: {
    readonly seams: SeamMarks;
    readonly settings: readonly SeamSetting[];
    readonly edgeWishes: readonly EdgeWish[];
    readonly heldSeams?: readonly EdgePair[] | undefined;
  },
  gone: readonly EdgePair[],
  added: readonly EdgePair[],
  mergeKey: string,
): Command =>
  onSculpt(
    'move the seam',
    (part) => {
      const left = new Set(gone.map(edgeKey));
      const taken = new Set(added.map(edgeKey));
      const kept = before.seams.edges.filter((pair) => !left.has(edgeKey(pair)) && !taken.has(edgeKey(pair)));
      const [first] = added;
      const moved = <T extends { readonly edge: EdgePair }>(said: T): T =>
        first !== undefined && left.has(edgeKey(said.edge)) && !taken.has(edgeKey(said.edge))
          ? { ...said, edge: first }
          : said;
      const fresh = added.filter((pair, i) => added.findIndex((other) => edgeKey(other) === edgeKey(pair)) === i);
      const { heldSeams: _, ...rest } = part;
      // A seam that is held stays held where a hand moves it.
      const heldBefore = before.heldSeams ?? [];
      const stay = heldBefore.filter((pair) => !left.has(edgeKey(pair)) && !taken.has(edgeKey(pair)));
      const held = stay.length === heldBefore.length ? stay : [...stay, ...fresh];
      return {
        ...rest,
        ...(held.length === 0 ? {} : { heldSeams: held }),
        seams: { ...before.seams, edges: [...kept, ...fresh] },
        seamSettings: before.settings.map(moved),
        edgeWishes: before.edgeWishes.map(moved),
      };
    },
    mergeKey,
  );

/**
 * Pulls a dart: seams along edges beside those there were.
 * @param before   the marks when it was begun: every step of one pull counts from these.
 * @param pairs    edges of the dart, file numbers; none: it is back where it was begun.
 * @param mergeKey the pull's own key.
 */
export const drawDart = (before: SeamMarks, pairs: readonly EdgePair[], mergeKey: string): Command =>
  onSculpt(
    'pull a dart',
    (part) => {
      const known = new Set(before.edges.map(edgeKey));
      const fresh = pairs.filter((pair) => !known.has(edgeKey(pair)) && known.add(edgeKey(pair)));
      return { ...part, seams: fresh.length === 0 ? before : { ...before, edges: [...before.edges, ...fresh] } };
    },
    mergeKey,
  );

export const clearSeams = (): Command =>
  onSculpt('join everything', (part) =>
    part.seams.edges.length + part.seams.paths.length === 0 ? part : stillHeld({ ...part, seams: NO_SEAMS }),
  );

/** @param joins  how they are joined; none: as seams are joined already. */
export const setSeams = (seams: SeamMarks, joins: readonly SeamSetting[] = []): Command =>
  onSculpt('set the seams', (part) =>
    stillHeld({ ...part, seams, ...(joins.length === 0 ? {} : { seamSettings: joins }) }),
  );

/**
 * Takes another foam for a sheet of the wall; its own neutral fraction comes with it.
 * @param sheet the sheet; left out: all of them. So too for what follows.
 */
export const setFoam = (foam: FoamId, thicknessMm: number, sheet?: LayerId): Command => ({
  label: 'choose the foam',
  apply(project) {
    const neutralFraction = project.foams.find(({ id }) => id === foam)?.neutralFraction;
    return onLayer('choose the foam', sheet, (layer) => ({
      ...layer,
      foam,
      thicknessMm,
      neutralFraction: neutralFraction ?? layer.neutralFraction,
    })).apply(project);
  },
});

export const setThickness = (thicknessMm: number, sheet?: LayerId): Command =>
  onLayer('set the thickness', sheet, (layer) => ({ ...layer, thicknessMm }), 'thickness');

export const setNeutral = (neutralFraction: number, sheet?: LayerId): Command =>
  onLayer('set the neutral fraction', sheet, (layer) => ({ ...layer, neutralFraction }), 'neutral');

export const setModelIs = (modelIs: ModelIs): Command =>
  onSculpt('say which surface the sculpt is', (part) => (part.modelIs === modelIs ? part : { ...part, modelIs }));

export const setTracedSide = (tracedSide: TracedSide): Command =>
  onSculpt('choose the traced side', (part) => (part.tracedSide === tracedSide ? part : { ...part, tracedSide }));

/** Changes wishes for the piece that holds polygon `face` of the file; an earlier wish for the same polygon is extended. */
export const setPieceSetting = (face: number, wish: Omit<PieceSetting, 'face'>): Command =>
  onSculpt('change the piece', (part) => withPieceSetting(part, face, wish));

/** Changes what is dear and what is cheap when pieces are laid flat. */
export const setFlattenWishes = (wishes: Partial<FlattenWishes>): Command =>
  onSculpt(
    'change how it is laid flat',
    (part) => {
      const names = Object.keys(wishes) as (keyof FlattenWishes)[];
      return names.every((name) => part.flatten[name] === wishes[name])
        ? part
        : { ...part, flatten: { ...part.flatten, ...wishes } };
    },
    `flatten ${Object.keys(wishes).join(' ')}`,
  );

/**
 * Names an area by polygons of the file. They leave the areas they were in, so that each polygon is in one at most; an area left empty is gone.
 * @param faces in any order; none: nothing changes.
 * @param seams what is said of seams there; left out: nothing.
 */
export const addRegion = (name: string, faces: readonly number[], give: Give, seams?: SeamPaint): Command =>
  onSculpt(give === 'normal' ? paintLabel(seams) : `make an area ${give}`, (part) => {
    const own = [...new Set(faces)].sort((a, b) => a - b);
    if (own.length === 0) return part;
    const regions = withoutFaces(part.regions, own);
    const area: Region = {
      id: freeRegionId(part.regions),
      name,
      faces: own,
      give,
      ...(seams === undefined ? {} : { seams }),
    };
    return { ...part, regions: [...regions, area] };
  });

const paintLabel = (seams: SeamPaint | undefined): string =>
  seams === undefined ? 'name an area' : seams === 'clear' ? 'keep an area clear of seams' : 'prefer an area for seams';

/** Takes polygons of the file out of all areas: they give as the rest does. */
export const freeFaces = (faces: readonly number[]): Command =>
  onSculpt('let it give as the rest', (part) => {
    const regions = withoutFaces(part.regions, faces);
    return regions === part.regions ? part : { ...part, regions };
  });

export const removeRegion = (id: string): Command =>
  onSculpt('remove an area', (part) =>
    part.regions.some((region) => region.id === id)
      ? { ...part, regions: part.regions.filter((region) => region.id !== id) }
      : part,
  );

export const renameRegion = (id: string, name: string): Command =>
  onRegion('rename an area', id, (region) =>
    name.trim() === '' || name.trim() === region.name ? region : { ...region, name: name.trim() },
  );

export const setRegionGive = (id: string, give: Give): Command =>
  onRegion(give === 'normal' ? 'let an area give as the rest' : `make an area ${give}`, id, (region) =>
    region.give === give ? region : { ...region, give },
  );

/** Says of an area what holds for seams there; null: nothing. */
export const setRegionSeams = (id: string, seams: SeamPaint | null): Command =>
  onRegion(seams === null ? 'leave seams free in an area' : paintLabel(seams), id, (region) => {
    if ((region.seams ?? null) === seams) return region;
    const { seams: _, ...bare } = region;
    return seams === null ? bare : { ...bare, seams };
  });

/** Lays a sheet of a foam on the face over an area; null takes it off. */
export const raiseRegion = (id: string, foam: FoamSheet | null): Command =>
  onRegion(foam === null ? 'take the raised sheet off' : 'raise an area', id, (region) => {
    if (region.raised?.foam === foam?.id) return region;
    const { raised: _, ...bare } = region;
    if (foam === null) return bare;
    const { thicknessMm, neutralFraction } = foam;
    return { ...bare, raised: { foam: foam.id, thicknessMm, neutralFraction } };
  });

/**
 * Changes wishes for the edge of the foam that runs along edges of the sculpt given in file numbers. A wish of false is none.
 * @param pairs all edges it runs along, so that a wish made at any of them is found again; the first one carries it. Paths among them
 *              (`pathName`) carry it themselves. None: nothing changes.
 */
export const setEdgeWish = (pairs: readonly EdgePair[], wish: Omit<EdgeWish, 'edge'>): Command =>
  onSculpt('change the edge', (before) => {
    const { edges: along, paths } = edgesAndPaths(pairs);
    const part = wishedPaths(before, paths, wish);
    if (along.length === 0) return part;
    const own = new Set(along.map(edgeKey));
    const known = part.edgeWishes.filter(({ edge }) => own.has(edgeKey(edge)));
    const merged = Object.assign({}, ...known, wish) as Omit<EdgeWish, 'edge'>;
    const kept = part.edgeWishes.filter(({ edge }) => !own.has(edgeKey(edge)));
    const { holdLength = false, straight = false } = merged;
    const next: EdgeWish = {
      edge: known[0]?.edge ?? along[0],
      ...(holdLength ? { holdLength } : {}),
      ...(straight ? { straight } : {}),
    };
    const isSame = known.every(
      (old) => (old.holdLength ?? false) === holdLength && (old.straight ?? false) === straight,
    );
    if (isSame && known.length === (holdLength || straight ? 1 : 0)) return part;
    return { ...part, edgeWishes: holdLength || straight ? [...kept, next] : kept };
  });

/** Keeps what a foam loses under the hot-air gun as its maker measured it, or forgets it. */
export const setShrinkage = (foam: FoamId, shrinkage: HeatShrinkage | null): Command => ({
  label: 'set the heat shrinkage',
  mergeKey: `shrinkage ${foam}`,
  apply(project) {
    const foams = project.foams.map((sheet) => {
      if (sheet.id !== foam || isSameShrinkage(sheet.shrinkage ?? null, shrinkage)) return sheet;
      const { shrinkage: _, ...rest } = sheet;
      return shrinkage === null ? rest : { ...rest, shrinkage };
    });
    return foams.every((sheet, i) => sheet === project.foams[i]) ? project : { ...project, foams };
  },
});

/** Keeps what was measured of a foam to find its neutral fraction, or forgets it. Changes no piece. */
export const setNeutralTest = (foam: FoamId, neutralTest: NeutralTest | null): Command => ({
  label: 'keep a bend of the test strip',
  mergeKey: `neutral test ${foam}`,
  apply: (project) => ({
    ...project,
    foams: project.foams.map((sheet) => {
      if (sheet.id !== foam) return sheet;
      const { neutralTest: _, ...rest } = sheet;
      return neutralTest === null ? rest : { ...rest, neutralTest };
    }),
  }),
});

/** Takes a neutral fraction as that of a foam: its pieces now, and all that are made of it later. */
export const useNeutral = (foam: FoamId, neutralFraction: number): Command => ({
  label: 'take the measured neutral fraction',
  apply(project) {
    const onLayers = onSculpt('', (part) => ({
      ...part,
      layers: part.layers.map((layer) => (layer.foam === foam ? { ...layer, neutralFraction } : layer)),
    }));
    const foams = project.foams.map((sheet) => (sheet.id === foam ? { ...sheet, neutralFraction } : sheet));
    return { ...onLayers.apply(project), foams };
  },
});

/** Cuts pieces larger by what their foam shrinks under the hot-air gun, or not. */
export const setAllowForShrinkage = (allowForShrinkage: boolean): Command =>
  onSculpt('allow for shrinkage', (part) =>
    part.layers.every((layer) => layer.allowForShrinkage === allowForShrinkage)
      ? part
      : { ...part, layers: part.layers.map((layer) => ({ ...layer, allowForShrinkage })) },
  );

/** Takes back a wish that cannot be followed. Wishes beside it stay. */
export function forgetWish(wish: NamedWish): Command {
  const label = 'forget a wish';
  const named = (command: Command): Command => ({ ...command, label });
  switch (wish.about) {
    case 'edge': {
      const { edges, asks } = wish;
      const none = { holdLength: false, straight: false };
      return named(setEdgeWish(edges, asks === 'anything' ? none : { [asks]: false }));
    }
    case 'seam':
      return onSculpt(label, (part) => {
        const { paths } = edgesAndPaths([wish.edge]);
        if (paths.size > 0) return joinedPaths(part, paths, { kind: 'butt' });
        const seamSettings = part.seamSettings.filter(({ edge }) => edgeKey(edge) !== edgeKey(wish.edge));
        return seamSettings.length === part.seamSettings.length ? part : { ...part, seamSettings };
      });
    case 'piece':
      return onSculpt(label, (part) => {
        const pieceSettings = part.pieceSettings.filter(({ face }) => face !== wish.face);
        return pieceSettings.length === part.pieceSettings.length ? part : { ...part, pieceSettings };
      });
    case 'area':
      return named(removeRegion(wish.id));
    case 'faces':
      return named(freeFaces(wish.faces));
    case 'shrinkage':
      return named(setAllowForShrinkage(false));
  }
}

export const setPaper = (paper: PaperChoice): Command => ({
  label: 'choose the paper',
  mergeKey: 'paper',
  apply: (project) => ({ ...project, paper }),
});

export const setLengthUnit = (lengthUnit: 'mm' | 'in'): Command => ({
  label: 'change the unit',
  apply: (project) => (project.lengthUnit === lengthUnit ? project : { ...project, lengthUnit }),
});

function onLayer(
  label: string,
  sheet: LayerId | undefined,
  change: (layer: LayerChoice) => LayerChoice,
  dragOf?: string,
): Command {
  const changeOwn = (layer: LayerChoice) => (sheet === undefined || layer.id === sheet ? change(layer) : layer);
  const mergeKey = dragOf === undefined || sheet === undefined ? dragOf : `${dragOf} ${sheet}`;
  return onSculpt(label, (part) => ({ ...part, layers: part.layers.map(changeOwn) }), mergeKey);
}

function onRegion(label: string, id: string, change: (region: Region) => Region): Command {
  return onSculpt(label, (part) => {
    const regions = part.regions.map((region) => (region.id === id ? change(region) : region));
    return regions.every((region, i) => region === part.regions[i]) ? part : { ...part, regions };
  });
}

/** The areas without these polygons; the same list where none held one. */
function withoutFaces(regions: readonly Region[], faces: readonly number[]): readonly Region[] {
  const gone = new Set(faces);
  if (!regions.some((region) => region.faces.some((face) => gone.has(face)))) return regions;
  return regions
    .map((region) => {
      const kept = region.faces.filter((face) => !gone.has(face));
      return kept.length === region.faces.length ? region : { ...region, faces: kept };
    })
    .filter((region) => region.faces.length > 0);
}

/** `area-1`, `area-2` …: the first that is free. */
function freeRegionId(regions: readonly Region[]): string {
  for (let i = 1; ; i += 1) if (!regions.some(({ id }) => id === `area-${i}`)) return `area-${i}`;
}

const isSameShrinkage = (a: HeatShrinkage | null, b: HeatShrinkage | null): boolean =>
  a?.alongPct === b?.alongPct && a?.acrossPct === b?.acrossPct;

/** Equal for an edge named from either end. */
export const edgeKey = ([a, b]: EdgePair): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** A wish for a piece added to what was wished for it at the same polygon. */
export function withPieceSetting(part: SculptPart, face: number, wish: Omit<PieceSetting, 'face'>): SculptPart {
  const known = part.pieceSettings.find((setting) => setting.face === face);
  const others = part.pieceSettings.filter((setting) => setting.face !== face);
  return { ...part, pieceSettings: [...others, { ...known, ...wish, face }] };
}

const withSeams = (part: SculptPart, seams: Pick<SeamMarks, 'edges'>): SculptPart =>
  stillHeld({ ...part, seams: { ...part.seams, ...seams } });

/** What is no seam any more is not held. */
function stillHeld(part: SculptPart): SculptPart {
  const { heldSeams, ...rest } = part;
  if (heldSeams === undefined) return part;
  const seams = new Set(part.seams.edges.map(edgeKey));
  const held = heldSeams.filter((pair) => seams.has(edgeKey(pair)));
  if (held.length === heldSeams.length) return part;
  return held.length === 0 ? rest : { ...rest, heldSeams: held };
}
