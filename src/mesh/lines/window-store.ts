/**
 * The windows of a search for shortest ways, packed. A window is a stretch of a gate (a half-edge of the triangle that is left) that one
 * source sees through a row of triangles laid flat:
 *
 *        0 ---- near ===== far ---- length      along the gate's twin, into the next triangle (above)
 *                  \       /
 *                   source                      at (x, -y), y >= 0
 */
export class WindowStore {
  gate = new Int32Array(1024);
  near = new Float64Array(1024);
  far = new Float64Array(1024);
  x = new Float64Array(1024);
  y = new Float64Array(1024);
  /** Distance of the window's own source from where the search began, mm. */
  offset = new Float64Array(1024);
  /** The window this one goes on from, or -1 - s for source number s. */
  parent = new Int32Array(1024);
  count = 0;

  /** @returns number of the new window. */
  add(gate: number, near: number, far: number, x: number, y: number, offset: number, parent: number): number {
    const i = this.count;
    if (i === this.gate.length) this.#grow();
    this.gate[i] = gate;
    this.near[i] = near;
    this.far[i] = far;
    this.x[i] = x;
    this.y[i] = y;
    this.offset[i] = offset;
    this.parent[i] = parent;
    this.count += 1;
    return i;
  }

  #grow(): void {
    const size = 2 * this.gate.length;
    this.gate = longerInt(this.gate, size);
    this.parent = longerInt(this.parent, size);
    this.near = longer(this.near, size);
    this.far = longer(this.far, size);
    this.x = longer(this.x, size);
    this.y = longer(this.y, size);
    this.offset = longer(this.offset, size);
  }
}

function longer(values: Float64Array, size: number): Float64Array<ArrayBuffer> {
  const all = new Float64Array(size);
  all.set(values);
  return all;
}

function longerInt(values: Int32Array, size: number): Int32Array<ArrayBuffer> {
  const all = new Int32Array(size);
  all.set(values);
  return all;
}
