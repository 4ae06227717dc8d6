/** Two leaves of a tree whose boxes touch, or one leaf twice: triangles `first` up to `firstEnd` and `second` up to `secondEnd` of its order. */
export interface LeafPair {
  readonly first: number;
  readonly firstEnd: number;
  readonly second: number;
  readonly secondEnd: number;
}

/*
 * A node of the packed tree is 32 bytes: its box as six floats, then for a leaf where its triangles begin, how many they are and a mark, for
 * any other how many nodes on its right child lies. The left child follows at once.
 */
const FLOATS = 8;
const SHORTS = 16;
const LEAF_MARK = 0xffff;

/**
 * Every two leaves of a tree whose boxes touch, each two once, each leaf with itself too.
 * @param root  the packed nodes of the tree, as three-mesh-bvh 0.9 gives them out.
 */
export function* touchingLeaves(root: ArrayBuffer): Generator<LeafPair, void, undefined> {
  const boxes = new Float32Array(root);
  const longs = new Uint32Array(root);
  const shorts = new Uint16Array(root);
  const isLeaf = (node: number): boolean => shorts[SHORTS * node + 15] === LEAF_MARK;
  const rightOf = (node: number): number => node + longs[FLOATS * node + 6];
  const startOf = (leaf: number): number => longs[FLOATS * leaf + 6];
  const endOf = (leaf: number): number => startOf(leaf) + shorts[SHORTS * leaf + 14];
  const stack = [0, 0];
  for (;;) {
    const b = stack.pop();
    const a = stack.pop();
    if (a === undefined || b === undefined) return;
    if (a !== b && !boxesTouch(boxes, FLOATS * a, FLOATS * b)) continue;
    if (isLeaf(a) && isLeaf(b)) {
      yield { first: startOf(a), firstEnd: endOf(a), second: startOf(b), secondEnd: endOf(b) };
    } else if (a === b) {
      const [left, right] = [a + 1, rightOf(a)];
      stack.push(right, right, left, right, left, left);
    } else if (isLeaf(a)) {
      stack.push(a, rightOf(b), a, b + 1);
    } else {
      // The other one is parted next, so that both become smaller alike.
      stack.push(b, rightOf(a), b, a + 1);
    }
  }
}

/** Whether two boxes in a list (least x y z, greatest x y z, from `a` and from `b` on) have a point in common. */
export const boxesTouch = (boxes: Float32Array | Float64Array, a: number, b: number): boolean =>
  boxes[a] <= boxes[b + 3] &&
  boxes[b] <= boxes[a + 3] &&
  boxes[a + 1] <= boxes[b + 4] &&
  boxes[b + 1] <= boxes[a + 4] &&
  boxes[a + 2] <= boxes[b + 5] &&
  boxes[b + 2] <= boxes[a + 5];
