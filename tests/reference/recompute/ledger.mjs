/** Collects what does not agree, and how far apart the worst agreeing figures of each kind are. */
export class Ledger {
  faults = [];
  /** Largest difference seen, by kind of figure. */
  worst = {};
  checks = 0;

  /**
   * Holds a reported number against the recomputed one.
   * @param {string} kind       gathers differences, e.g. `stretch`
   * @param {string} place      where the number stands in the report
   * @param {number} tolerance  allowed difference, absolute for numbers under 1 and relative above
   */
  agree(kind, place, reported, own, tolerance) {
    this.checks += 1;
    const miss = Math.abs(reported - own) / Math.max(1, Math.abs(own));
    if (!(miss <= tolerance)) this.fault(`${place}: the report says ${reported}, recomputed ${own}`);
    else this.worst[kind] = Math.max(this.worst[kind] ?? 0, miss);
  }

  /** Something that must be so. */
  must(holds, sentence) {
    this.checks += 1;
    if (!holds) this.fault(sentence);
  }

  fault(sentence) {
    this.faults.push(sentence);
  }
}
