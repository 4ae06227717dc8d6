import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { triangleCentre } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { roomsOf } from './mesh-offsets.ts';
import { greatestMm, mmText } from './room-words.ts';

/** Where a sheet of foam lies, counted outward from the sculpt, mm. */
export interface SheetPlace {
  readonly thicknessMm: number;
  readonly backMm: number;
  readonly faceMm: number;
  /** Place of the sculpt in the wall, 0 at the back to 1 at the face: how the wall grows to either side when the sheet becomes thicker. */
  readonly place: number;
}

/** Findings `shell/folds-over`: where the back or the face of a sheet folds over itself, and how thick it may be there. */
export function* foldSteps(mesh: Mesh, { thicknessMm, backMm, faceMm, place }: SheetPlace): Stepwise<Finding[]> {
  const findings: Finding[] = [];
  for (const { side, outward, far, grows } of [
    { side: 'back', outward: -1, far: -backMm, grows: place },
    { side: 'face', outward: 1, far: faceMm, grows: 1 - place },
  ] as const) {
    if (!(far > 0)) continue;
    const rooms = yield* roomsOf(mesh, outward);
    const tight: number[] = [];
    for (let t = 0; t < rooms.length; t += 1) if (rooms[t] < far) tight.push(t);
    if (tight.length === 0) continue;
    tight.sort((a, b) => rooms[a] - rooms[b] || a - b);
    // Of several sheets the one told of is changed and the others stay as they are.
    const works = grows > 0 ? greatestMm(thicknessMm - (far - rooms[tight[0]]) / grows) : 0;
    findings.push({
      code: 'shell/folds-over',
      severity: 'warning',
      text: `The ${side} of ${mmText(thicknessMm)} foam folds over itself at ${tight.length} ${tight.length === 1 ? 'place' : 'places'} where the sculpt is tighter than the foam is thick: use ${works > 0 ? `at most ${mmText(works)} there` : 'thinner or fewer sheets of foam there'}, or smooth the sculpt.`,
      value: thicknessMm,
      limit: works,
      unit: 'mm',
      where: { triangles: clipPlaces(tight), point: triangleCentre(mesh, tight[0]) },
    });
  }
  return findings;
}
