import { clipPlaces, type Finding } from '../../base/finding.ts';
import { runWithPauses } from '../../base/stepwise.ts';
import type { Work } from '../../base/work.ts';
import { triangleCount, type Mesh } from '../../mesh/mesh.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { faceFindingSteps } from './face-findings.ts';
import { surveySteps, type PolygonSurvey } from './polygon-survey.ts';
import { rimFindings } from './rim-findings.ts';
import { findRims } from './rims.ts';
import { selfCrossingSteps } from './self-crossing.ts';
import { shellSteps } from './shell-of-faces.ts';
import { sideLinkSteps } from './side-links.ts';
import { several } from './wording.ts';

/** Above this many triangles each change takes longer than anyone likes to wait. */
const MANY_TRIANGLES = 200_000;

/**
 * Looks a model over and tells what a maker should know before cutting: where it is open, not a surface, turned, doubled, empty, bent,
 * in several parts, through itself, or too fine. Nothing is changed; the text names the repair where there is one.
 * @param mesh the same model in mm, or in any one unit; elements are in its numbering.
 * @throws Cancelled when the work was called off.
 */
export async function findFaults(model: SourceModel, mesh: Mesh, work: Work): Promise<readonly Finding[]> {
  await work.pause(0, 'looking the model over');
  const survey = await runWithPauses(surveySteps(model.faceStarts, model.faceVertices), () => work.pause(0));
  const findings = edgeFindings(survey);
  if (survey.shellCount > 1) {
    const shells = await runWithPauses(shellSteps(model), () => work.pause(0.2));
    findings.push(shellsFinding(model, shells));
  }
  await work.pause(0.2);
  const links = await runWithPauses(sideLinkSteps(model), () => work.pause(0.2));
  await work.pause(0.3);
  if (survey.openEdges.length > 0) findings.push(...rimFindings(mesh, findRims(model, links)));
  await work.pause(0.4);
  findings.push(...(await runWithPauses(faceFindingSteps(model, links), () => work.pause(0.4))));
  await work.pause(0.6, 'looking for places where it runs through itself');
  findings.push(...(await runWithPauses(selfCrossingSteps(mesh), () => work.pause(0.6))));
  if (triangleCount(mesh) > MANY_TRIANGLES) findings.push(manyFinding(triangleCount(mesh)));
  await work.pause(1);
  return findings;
}

function edgeFindings({ crowdedEdges, splitVertices }: PolygonSurvey): Finding[] {
  const findings: Finding[] = [];
  if (crowdedEdges.length > 0) {
    const count = crowdedEdges.length / 2;
    const edges = Array.from({ length: count }, (_, i) => [crowdedEdges[2 * i], crowdedEdges[2 * i + 1]] as const);
    findings.push({
      code: 'read/non-manifold-edge',
      severity: 'warning',
      text: `${several(count, 'edge has', 'edges have')} more than two faces, so no single sheet of foam can pass there: part the surfaces in your modelling program, or drop doubled faces (repair: drop doubled).`,
      value: count,
      where: { edges: clipPlaces(edges) },
    });
  }
  if (splitVertices.length > 0) {
    findings.push({
      code: 'read/non-manifold-vertex',
      severity: 'warning',
      text: `${several(splitVertices.length, 'vertex holds', 'vertices hold')} surfaces together that meet nowhere else round it: part them in your modelling program, or let a seam run through.`,
      value: splitVertices.length,
      where: { vertices: clipPlaces(splitVertices) },
    });
  }
  return findings;
}

/** Where several surfaces are: one vertex of each. */
function shellsFinding(model: SourceModel, shells: Uint32Array): Finding {
  const vertices: number[] = [];
  for (let f = 0; f < shells.length; f += 1)
    if (shells[f] === f) vertices.push(model.faceVertices[model.faceStarts[f]]);
  return {
    code: 'read/separate-surfaces',
    severity: 'note',
    text: `The sculpt is made of ${vertices.length} separate surfaces, and each becomes pieces of its own; to work on one alone, keep it (repair: keep one shell).`,
    value: vertices.length,
    where: { vertices: clipPlaces(vertices) },
  };
}

const manyFinding = (count: number): Finding => ({
  code: 'read/many-triangles',
  severity: 'note',
  text: `The sculpt has ${count} triangles, and each change will take a while: foam shows no detail that fine, so reduce it in your modelling program.`,
  value: count,
  limit: MANY_TRIANGLES,
  unit: 'triangles',
  where: {},
});
