import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import { buildTopologySteps } from '../../mesh/topology.ts';
import type { ModelFacts } from '../../model/model-facts.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { doubledFaces } from './doubled-faces.ts';
import { emptyFaces, faceAreaSteps } from './face-areas.ts';
import { polygonCountSteps, type PolygonCounts } from './polygon-counts.ts';

/** What there is to tell of a model: counted on its polygons, measured in units of its file. */
export function factsOf(model: SourceModel): ModelFacts {
  return runAtOnce(factSteps(model));
}

/** The same in stretches. */
export function* factSteps(model: SourceModel): Stepwise<ModelFacts> {
  const vertices = model.positions.length / 3;
  const counts = yield* polygonCountSteps(model.faceStarts, model.faceVertices, vertices);
  const exact = model.afterExactJoin ?? counts;
  yield;
  const areas = yield* faceAreaSteps(model);
  yield;
  const { min, max } = boxOfPoints3(model.positions);
  const triangles = model.triangles.length / 3;
  return {
    vertices,
    verticesAfterExactJoin: exact.vertices,
    faces: counts.faces,
    triangles,
    edges: counts.edges,
    triangleEdges:
      triangles === counts.faces ? counts.edges : (yield* buildTopologySteps(model.triangles, vertices)).edgeCount,
    euler: counts.euler,
    shells: counts.shells,
    openLoops: counts.openLoops,
    openEdges: counts.openEdges,
    genus: genusOf(counts),
    nonManifoldEdges: counts.nonManifoldEdges,
    nonManifoldVertices: counts.nonManifoldVertices,
    turnedEdges: counts.turnedEdges,
    emptyFaces: emptyFaces(areas).length,
    doubledFaces: doubledFaces(model).length,
    area: sum(areas.own),
    fanArea: sum(areas.fan),
    boxMin: [min.x, min.y, min.z],
    boxSize: [max.x - min.x, max.y - min.y, max.z - min.z],
    afterExactJoin: {
      vertices: exact.vertices,
      faces: exact.faces,
      edges: exact.edges,
      euler: exact.euler,
      openLoops: exact.openLoops,
      openEdges: exact.openEdges,
      nonManifoldVertices: exact.nonManifoldVertices,
    },
  };
}

/**
 * Handles of all shells together, from Euler's formula with each rim closed by a disc: 2 shells = V - E + F + rims + 2 handles.
 * Null where the surface is no manifold, or has only one side and so no whole number of handles.
 */
function genusOf({ shells, euler, openLoops, nonManifoldEdges, nonManifoldVertices }: PolygonCounts): number | null {
  if (nonManifoldEdges > 0 || nonManifoldVertices > 0) return null;
  const genus = (2 * shells - euler - openLoops) / 2;
  return Number.isInteger(genus) ? genus : null;
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
