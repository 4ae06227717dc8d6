import * as Comlink from 'comlink';
import { sourcesOfProject } from '../project/sources.ts';
import { Connection, WorkshopLost } from './connection.ts';
import type { BeatTimes } from './heartbeat.ts';
import type { ComputeReply, OnEarly, Workshop } from './workshop-api.ts';

/** A search for a better layout, in threads of its own. */
export { startSheetSearch } from './sheet-search.ts';

/** The workshop in a worker, which can be ended whatever it does. */
export interface ConnectedWorkshop extends Workshop {
  /** Ends the worker; the next question starts another, with all files it had. A compute that ran is called off, all else that was asked rejects. */
  restart(): void;
}

export interface ConnectChoices {
  /** Called when the worker has not been heard for long while something was waited for, and when it is heard again. */
  readonly onSilent?: (isSilent: boolean) => void;
  readonly times?: BeatTimes;
  /** Left out: the worker of the window. */
  readonly start?: () => Worker;
}

const startWorker = (): Worker => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });

/** Starts the worker and returns what the window may ask of it. Callbacks and large arrays cross as they should. */
export function connectWorkshop({ onSilent, times, start }: ConnectChoices = {}): ConnectedWorkshop {
  const connection = new Connection(start ?? startWorker, onSilent ?? (() => undefined), times);
  const { remote } = connection;
  /** Names of the files of projects that were opened in the worker. */
  const names = new Map<string, string>();
  /** Updates that this worker has sent: of those of one before it knows nothing. */
  let sent = { starts: connection.starts, numbers: new Set<number>() };
  const known = (have: number): number => {
    if (sent.starts !== connection.starts) sent = { starts: connection.starts, numbers: new Set() };
    return connection.starts === 1 || sent.numbers.has(have) ? have : 0;
  };
  const compute = async (
    ...[project, have, onProgress, onEarly, sheet]: Parameters<Workshop['compute']>
  ): Promise<ComputeReply> => {
    try {
      const early =
        onEarly &&
        Comlink.proxy<OnEarly>((update) => {
          sent.numbers.add(update.number);
          return onEarly(update);
        });
      const reply = await remote.compute(project, known(have), Comlink.proxy(onProgress), early, sheet);
      if (!reply.cancelled) sent.numbers.add(reply.update.number);
      return reply;
    } catch (error) {
      if (error instanceof WorkshopLost && isEnding) return { cancelled: true };
      throw error;
    }
  };
  let isEnding = false;
  return {
    restart() {
      isEnding = true;
      connection.restart();
      // Who waited is told within this turn.
      setTimeout(() => (isEnding = false));
    },
    async putSource(bytes, fileName) {
      const put = await remote.putSource(bytes, fileName);
      if (put.ok) connection.keep(put.value.hash, fileName, bytes);
      return put;
    },
    async getSource(hash) {
      const bytes = await remote.getSource(hash);
      const fileName = names.get(hash);
      if (bytes !== undefined && fileName !== undefined) connection.keep(hash, fileName, bytes);
      return bytes;
    },
    compute,
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
    async partFromFile(bytes, fileName, foam) {
      const made = await remote.partFromFile(bytes, fileName, foam);
      if (made.ok) connection.keep(made.value.source.hash, fileName, bytes);
      return made;
    },
    async keepFile(bytes, fileName) {
      const hash = await remote.keepFile(bytes, fileName);
      connection.keep(hash, fileName, bytes);
      return hash;
    },
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
    async openProject(bytes, fileName) {
      const opened = await remote.openProject(bytes, fileName);
      // Their bytes come when they are asked for.
      if (opened.ok) for (const source of sourcesOfProject(opened.value)) names.set(source.hash, source.fileName);
      return opened;
    },
  };
}
