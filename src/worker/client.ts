import * as Comlink from 'comlink';
import type { Workshop } from './workshop-api.ts';

/** A search for a better layout, in threads of its own. */
export { startSheetSearch } from './sheet-search.ts';

/** Starts the worker and returns what the window may ask of it. Callbacks and large arrays cross as they should. */
export function connectWorkshop(): Workshop {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const remote = Comlink.wrap<Workshop>(worker);
  return {
    putSource: (bytes, fileName) => remote.putSource(bytes, fileName),
    getSource: (hash) => remote.getSource(hash),
    compute: (project, have, onProgress, onEarly, sheet) =>
      remote.compute(project, have, Comlink.proxy(onProgress), onEarly && Comlink.proxy(onEarly), sheet),
    cancel: () => remote.cancel(),
    prop: () => remote.prop(),
    bendField: (sheet) => remote.bendField(sheet),
    tapeAt: (tape) => remote.tapeAt(tape),
    sharpEdges: (angleDeg) => remote.sharpEdges(angleDeg),
    edgePath: (from, to) => remote.edgePath(from, to),
    handLine: (corners, within, trail) => remote.handLine(corners, within, trail),
    followLine: (edge, way) => remote.followLine(edge, way),
    border: (of) => remote.border(of),
    simplifyKeeps: (part) => remote.simplifyKeeps(part),
    shapes: () => remote.shapes(),
    tryShape: (ask) => remote.tryShape(ask),
    pipes: () => remote.pipes(),
    coreSide: (wish) => remote.coreSide(wish),
    partFromFile: (bytes, fileName, foam) => remote.partFromFile(bytes, fileName, foam),
    keepFile: (bytes, fileName) => remote.keepFile(bytes, fileName),
    freePlaces: (ask) => remote.freePlaces(ask),
    drawAcross: (wish, isMirrored) => remote.drawAcross(wish, isMirrored),
    moveLine: (wish) => remote.moveLine(wish),
    readDrawing: (text) => remote.readDrawing(text),
    layDrawing: (wish, isMirrored) => remote.layDrawing(wish, isMirrored),
    propose: (ask, onAnswer) => remote.propose(ask, Comlink.proxy(onAnswer)),
    ease: (ask, onAnswer) => remote.ease(ask, Comlink.proxy(onAnswer)),
    stopProposing: () => remote.stopProposing(),
    seamCosts: (limitPct, onCost) => remote.seamCosts(limitPct, Comlink.proxy(onCost)),
    stopCosting: () => remote.stopCosting(),
    shop: () => remote.shop(),
    stepPicture: (step) => remote.stepPicture(step),
    tryGluing: (order) => remote.tryGluing(order),
    compare: (one, other, onProgress) => remote.compare(one, other, Comlink.proxy(onProgress)),
    stopComparing: () => remote.stopComparing(),
    makeFiles: (ask, project, date, onProgress) => remote.makeFiles(ask, project, date, Comlink.proxy(onProgress)),
    stopFiles: () => remote.stopFiles(),
    makeMockUp: (mockUp, project, date) => remote.makeMockUp(mockUp, project, date),
    makeFile: (kind, project, date) => remote.makeFile(kind, project, date),
    newVersion: (project, source) => remote.newVersion(project, source),
    openProject: (bytes, fileName) => remote.openProject(bytes, fileName),
  };
}
