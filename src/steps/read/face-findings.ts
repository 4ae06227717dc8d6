import { clipPlaces, MOST_PLACES, type Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { bentFaces } from './bent-faces.ts';
import { doubledFaces } from './doubled-faces.ts';
import { emptyFaces, faceAreaSteps } from './face-areas.ts';
import { orientSteps, type Orientation } from './orient-faces.ts';
import type { SideLinks } from './side-links.ts';
import { several } from './wording.ts';

/** Tells of faces that look the wrong way, lie on each other, have no area or are not flat. */
export function* faceFindingSteps(model: SourceModel, links: SideLinks): Stepwise<Finding[]> {
  const areas = yield* faceAreaSteps(model);
  yield;
  const doubled = doubledFaces(model);
  const empty = emptyFaces(areas);
  yield;
  const findings = orientationFindings(model, yield* orientSteps(model, links, areas));
  yield;
  if (doubled.length > 0) {
    findings.push({
      code: 'read/doubled-faces',
      severity: 'warning',
      text: `${several(doubled.length, 'face has', 'faces have')} the same corners as another one: drop ${doubled.length === 1 ? 'it' : 'them'} (repair: drop doubled).`,
      value: doubled.length,
      where: { triangles: trianglesOf(model, doubled) },
    });
  }
  if (empty.length > 0) {
    findings.push({
      code: 'read/empty-faces',
      severity: 'warning',
      text: `${several(empty.length, 'face has', 'faces have')} no area: drop ${empty.length === 1 ? 'it' : 'them'} (repair: drop empty).`,
      value: empty.length,
      where: { triangles: trianglesOf(model, empty) },
    });
  }
  const bent = bentFaces(model, areas.longestSquared);
  if (bent.length > 0) findings.push(bentFinding(model, bent, areas.own, areas.fan));
  return findings;
}

function orientationFindings(model: SourceModel, { against, insideOut, oneSided }: Orientation): Finding[] {
  const findings: Finding[] = [];
  if (against.length > 0) {
    findings.push({
      code: 'read/turned-faces',
      severity: 'warning',
      text: `${several(against.length, 'face is', 'faces are')} turned against ${against.length === 1 ? 'its' : 'their'} neighbours, so inside and outside change over there: turn ${against.length === 1 ? 'it' : 'them'} (repair: turn faces).`,
      value: against.length,
      where: { triangles: trianglesOf(model, against) },
    });
  }
  if (insideOut.length > 0) {
    findings.push({
      code: 'read/inside-out',
      severity: 'warning',
      text: `${insideOut.length === 1 ? 'A surface looks' : `${insideOut.length} surfaces look`} inward, so the foam would lie on the wrong side: turn the faces (repair: turn faces), unless a hollow is meant.`,
      value: insideOut.length,
      where: { triangles: trianglesOf(model, insideOut) },
    });
  }
  if (oneSided.length > 0) {
    findings.push({
      code: 'read/one-sided',
      severity: 'warning',
      text: `${oneSided.length === 1 ? 'A surface has' : `${oneSided.length} surfaces have`} only one side, like a Möbius band: cut ${oneSided.length === 1 ? 'it' : 'them'} open in your modelling program.`,
      value: oneSided.length,
      where: { triangles: trianglesOf(model, oneSided) },
    });
  }
  return findings;
}

function bentFinding(model: SourceModel, bent: readonly number[], own: Float64Array, fan: Float64Array): Finding {
  const [used, fanned] = [sum(own), sum(fan)];
  const isSame = Math.abs(used - fanned) <= 1e-6 * fanned;
  const share = Math.abs(used / fanned - 1) * 100;
  const areas = isSame
    ? 'cut the other way the surface would be as large'
    : `cut the other way it would be ${digits(Number(share.toPrecision(2)))} % ${fanned > used ? 'larger' : 'smaller'}`;
  return {
    code: 'read/bent-faces',
    severity: 'note',
    text: `${several(bent.length, 'face of the sculpt is', 'faces of the sculpt are')} not flat and had to be cut into triangles; ${areas}. Cut ${bent.length === 1 ? 'it' : 'them'} in your modelling program if the fold matters.`,
    value: used,
    limit: fanned,
    unit: 'square units of the file',
    where: { triangles: trianglesOf(model, bent) },
  };
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);

const digits = (value: number): string => String(Number(value.toPrecision(7)));

/** The first triangles of some polygons. @param faces ascending. */
function trianglesOf({ faceOfTriangle, faceStarts }: SourceModel, faces: readonly number[]): readonly number[] {
  const isWanted = new Uint8Array(faceStarts.length - 1);
  for (const f of faces) isWanted[f] = 1;
  const triangles: number[] = [];
  for (let t = 0; t < faceOfTriangle.length && triangles.length < MOST_PLACES; t += 1) {
    if (isWanted[faceOfTriangle[t]] === 1) triangles.push(t);
  }
  return clipPlaces(triangles);
}
