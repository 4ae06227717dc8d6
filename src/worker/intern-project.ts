import type { Project } from '../project/project.ts';
import { Interner } from './intern.ts';

/** Interns the slices of a document that steps depend on, each kind in a store of its own. */
export class ProjectInterner {
  readonly #stores = new Map<string, Interner>();

  /** The document with every slice replaced by the equal one seen before. */
  same(project: Project): Project {
    return {
      ...project,
      foams: this.#same('foams', project.foams),
      paper: this.#same('paper', project.paper),
      ...(project.plain === undefined ? {} : { plain: project.plain.map((part) => this.#same('plain', part)) }),
      parts: project.parts.map((part) => ({
        ...part,
        scale: this.#same('scale', part.scale),
        repairs: this.#same('repairs', part.repairs),
        seams: this.#same('seams', part.seams),
        seamSettings: this.#same('seamSettings', part.seamSettings),
        pieceSettings: this.#same('pieceSettings', part.pieceSettings),
        flatten: this.#same('flatten', part.flatten),
        regions: this.#same('regions', part.regions),
        edgeWishes: this.#same('edgeWishes', part.edgeWishes),
        ...(part.heldSeams === undefined ? {} : { heldSeams: this.#same('heldSeams', part.heldSeams) }),
        ...(part.simplify === undefined ? {} : { simplify: this.#same('simplify', part.simplify) }),
        ...(part.mirror === undefined ? {} : { mirror: this.#same('mirror', part.mirror) }),
        ...(part.scores === undefined ? {} : { scores: this.#same('scores', part.scores) }),
        ...(part.tipHoles === undefined ? {} : { tipHoles: this.#same('tipHoles', part.tipHoles) }),
        ...(part.tapes === undefined ? {} : { tapes: part.tapes.map((tape) => this.#same('tape', tape)) }),
        ...(part.core === undefined ? {} : { core: part.core.map((core) => this.#same('core', core)) }),
        ...(part.joints === undefined ? {} : { joints: part.joints.map((joint) => this.#same('joint', joint)) }),
        ...(part.worn === undefined ? {} : { worn: this.#same('worn', part.worn) }),
        layers: part.layers.map((layer) => this.#same('layer', layer)),
      })),
    };
  }

  #same<T>(kind: string, value: T): T {
    let store = this.#stores.get(kind);
    if (store === undefined) {
      store = new Interner();
      this.#stores.set(kind, store);
    }
    return store.same(value);
  }
}
