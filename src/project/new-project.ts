import { foamId, layerId, partId } from '../base/ids.ts';
import { IN_PLACE } from '../geom/matrix4.ts';
import { FLATTEN_WISHES } from '../model/flatten-settings.ts';
import { DEFAULT_FOAMS } from '../model/foams.ts';
import { NO_SEAMS } from '../model/seams.ts';
import type { Project, SourceRef } from './project.ts';

/** Foam a new project begins with: 6 mm, the sheet most tutorials build armour from (common practice). */
const FIRST_FOAM = foamId('eva-6');

/**
 * A project with one sculpt and nothing decided: no size, no seams; 6 mm foam, sculpt is the face, traced on the face, A4 upright.
 * STL files usually come with z up, OBJ files with y up (common practice of modelling programs); the maker can turn it.
 */
export function newProject(name: string, source: SourceRef): Project {
  const foam = DEFAULT_FOAMS.find((sheet) => sheet.id === FIRST_FOAM) ?? DEFAULT_FOAMS[0];
  return {
    schemaVersion: 1,
    name,
    revision: 1,
    parts: [
      {
        kind: 'sculpt',
        id: partId('part-1'),
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
            id: layerId('layer-1'),
            foam: foam.id,
            thicknessMm: foam.thicknessMm,
            neutralFraction: foam.neutralFraction,
            allowForShrinkage: false,
          },
        ],
        tracedSide: 'face',
      },
    ],
    foams: DEFAULT_FOAMS,
    paper: { name: 'A4', orientation: 'portrait', marginMm: 10, overlapMm: 10 },
    lengthUnit: 'mm',
  };
}

/** A project's name from its file's: `lamplighter_helm.obj` → `lamplighter helm`. */
export function nameFromFile(fileName: string): string {
  const stem = fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '');
  const words = stem.replace(/[_-]+/g, ' ').trim();
  return words === '' ? 'prop' : words;
}
