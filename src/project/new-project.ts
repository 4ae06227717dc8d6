import { foamId, layerId, partId, type LayerId, type PartId } from '../base/ids.ts';
import { IN_PLACE } from '../geom/matrix4.ts';
import { FLATTEN_WISHES } from '../model/flatten-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { DEFAULT_FOAMS } from '../model/foams.ts';
import { NO_SEAMS } from '../model/seams.ts';
import type { Project, SculptPart, SourceRef } from './project.ts';

/** Foam a new project begins with: 6 mm, the sheet most tutorials build armour from (common practice). */
const FIRST_FOAM = foamId('eva-6');

/** A project with nothing in it yet: the usual foams, A4 upright, mm. */
export const emptyProject = (name: string): Project => ({
  schemaVersion: 1,
  name,
  revision: 1,
  parts: [],
  foams: DEFAULT_FOAMS,
  paper: { name: 'A4', orientation: 'portrait', marginMm: 10, overlapMm: 10 },
  lengthUnit: 'mm',
});

/** A project with one sculpt and nothing decided. */
export function newProject(name: string, source: SourceRef): Project {
  const empty = emptyProject(name);
  const sculpt = newSculpt({ part: partId('part-1'), layer: layerId('layer-1') }, name, source, firstFoam(empty.foams));
  return { ...empty, parts: [sculpt] };
}

/** The foam that new parts begin with: 6 mm, else the first there is. */
export const firstFoam = (foams: readonly FoamSheet[]): FoamSheet =>
  foams.find((sheet) => sheet.id === FIRST_FOAM) ?? foams[0];

/**
 * A sculpt of which nothing is decided: no size, no seams; sculpt is the face, traced on the face.
 * STL files usually come with z up, OBJ files with y up (common practice of modelling programs); the maker can turn it.
 * @param ids  its own, and that of its one sheet of foam.
 */
export const newSculpt = (
  ids: { readonly part: PartId; readonly layer: LayerId },
  name: string,
  source: SourceRef,
  foam: FoamSheet,
): SculptPart => ({
  kind: 'sculpt',
  id: ids.part,
  name,
  source,
  transform: IN_PLACE,
  copies: 1,
  scale: null,
  upAxis: source.format === 'stl' ? 'z' : 'y',
  repairs: [],
  seams: NO_SEAMS,
  seamSettings: [],
  pieceSettings: [],
  flatten: FLATTEN_WISHES,
  regions: [],
  edgeWishes: [],
  modelIs: 'face',
  layers: [
    {
      id: ids.layer,
      foam: foam.id,
      thicknessMm: foam.thicknessMm,
      neutralFraction: foam.neutralFraction,
      allowForShrinkage: false,
    },
  ],
  tracedSide: 'face',
});

/** A project's name from its file's: `lamplighter_helm.obj` → `lamplighter helm`, `kit.parts.json` → `kit`. */
export function nameFromFile(fileName: string): string {
  const stem = fileName.replace(/^.*[\\/]/, '').replace(/(\.parts)?\.[^.]*$/, '');
  const words = stem.replace(/[_-]+/g, ' ').trim();
  return words === '' ? 'prop' : words;
}
