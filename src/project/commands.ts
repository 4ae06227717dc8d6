import type { FoamId } from '../base/ids.ts';
import type { TracedSide } from '../model/foam-piece.ts';
import type { PieceSetting } from '../model/foam-settings.ts';
import { NO_SEAMS, type SeamMarks, type SeamSetting } from '../model/seams.ts';
import type { ModelIs } from '../model/shell-layer.ts';
import type { Repair, ScaleChoice } from '../model/source-model.ts';
import type { LayerChoice, PaperChoice, Part, Project, SculptPart } from './project.ts';

/** A change to the document: pure, sharing what it does not touch; returns the same object when nothing would change. */
export interface Command {
  /** What undo will name, in the words of the screen. */
  readonly label: string;
  /** Commands in a row with one key undo as one: a drag, a slider. The key ends with the drag. */
  readonly mergeKey?: string;
  apply(project: Project): Project;
}

type EdgePair = readonly [number, number];

/** Changes the sculpt in the project's only part of that kind. */
function onSculpt(label: string, change: (part: SculptPart) => SculptPart, mergeKey?: string): Command {
  return {
    label,
    ...(mergeKey === undefined ? {} : { mergeKey }),
    apply(project) {
      const parts = project.parts.map((part): Part => (part.kind === 'sculpt' ? change(part) : part));
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

/** Parts the sculpt along edges given in file numbers; those that are seams already stay. */
export const addSeamEdges = (pairs: readonly EdgePair[], mergeKey?: string): Command =>
  onSculpt(
    'part here',
    (part) => {
      const known = new Set(part.seams.edges.map(edgeKey));
      const added = pairs.filter((pair) => {
        const key = edgeKey(pair);
        return pair[0] !== pair[1] && !known.has(key) && known.add(key);
      });
      return added.length === 0 ? part : withSeams(part, { edges: [...part.seams.edges, ...added] });
    },
    mergeKey,
  );

/** Joins the foam again along edges given in file numbers. */
export const removeSeamEdges = (pairs: readonly EdgePair[], mergeKey?: string): Command =>
  onSculpt(
    'join',
    (part) => {
      const gone = new Set(pairs.map(edgeKey));
      const edges = part.seams.edges.filter((pair) => !gone.has(edgeKey(pair)));
      return edges.length === part.seams.edges.length ? part : withSeams(part, { edges });
    },
    mergeKey,
  );

export const clearSeams = (): Command =>
  onSculpt('join everything', (part) =>
    part.seams.edges.length + part.seams.paths.length === 0 ? part : { ...part, seams: NO_SEAMS },
  );

export const setSeams = (seams: SeamMarks): Command => onSculpt('set the seams', (part) => ({ ...part, seams }));

/** Makes the seam through an edge (file numbers) a butt or lap seam. */
export const setSeamKind = (edge: EdgePair, kind: 'butt' | 'lap', allowanceMm: number, lapFace?: number): Command =>
  onSculpt('change the seam', (part) => {
    const setting: SeamSetting = { edge, kind, allowanceMm, ...(lapFace === undefined ? {} : { lapFace }) };
    const others = part.seamSettings.filter((known) => edgeKey(known.edge) !== edgeKey(edge));
    return { ...part, seamSettings: [...others, setting] };
  });

/** Takes another foam for the sculpt's layer; its own neutral fraction comes with it. */
export const setFoam = (foam: FoamId, thicknessMm: number): Command => ({
  label: 'choose the foam',
  apply(project) {
    const neutralFraction = project.foams.find((sheet) => sheet.id === foam)?.neutralFraction;
    return onLayer('choose the foam', (layer) => ({
      ...layer,
      foam,
      thicknessMm,
      neutralFraction: neutralFraction ?? layer.neutralFraction,
    })).apply(project);
  },
});

export const setThickness = (thicknessMm: number): Command =>
  onLayer('set the thickness', (layer) => ({ ...layer, thicknessMm }), 'thickness');

export const setNeutral = (neutralFraction: number): Command =>
  onLayer('set the neutral fraction', (layer) => ({ ...layer, neutralFraction }), 'neutral');

export const setModelIs = (modelIs: ModelIs): Command =>
  onSculpt('say which surface the sculpt is', (part) => (part.modelIs === modelIs ? part : { ...part, modelIs }));

export const setTracedSide = (tracedSide: TracedSide): Command =>
  onSculpt('choose the traced side', (part) => (part.tracedSide === tracedSide ? part : { ...part, tracedSide }));

/** Changes wishes for the piece that holds polygon `face` of the file; an earlier wish for the same polygon is extended. */
export const setPieceSetting = (face: number, wish: Omit<PieceSetting, 'face'>): Command =>
  onSculpt('change the piece', (part) => {
    const known = part.pieceSettings.find((setting) => setting.face === face);
    const others = part.pieceSettings.filter((setting) => setting.face !== face);
    return { ...part, pieceSettings: [...others, { ...known, ...wish, face }] };
  });

export const setPaper = (paper: PaperChoice): Command => ({
  label: 'choose the paper',
  mergeKey: 'paper',
  apply: (project) => ({ ...project, paper }),
});

export const setLengthUnit = (lengthUnit: 'mm' | 'in'): Command => ({
  label: 'change the unit',
  apply: (project) => (project.lengthUnit === lengthUnit ? project : { ...project, lengthUnit }),
});

function onLayer(label: string, change: (layer: LayerChoice) => LayerChoice, mergeKey?: string): Command {
  return onSculpt(label, (part) => ({ ...part, layers: part.layers.map(change) }), mergeKey);
}

const edgeKey = ([a, b]: EdgePair): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

const withSeams = (part: SculptPart, seams: Pick<SeamMarks, 'edges'>): SculptPart => ({
  ...part,
  seams: { ...part.seams, ...seams },
});
