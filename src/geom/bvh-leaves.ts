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
  const tree = nodesOf(root);
  const stack = [0, 0];
  for (;;) {
    const b = stack.pop();
    const a = stack.pop();
    if (a === undefined || b === undefined) return;
    if (a !== b && !boxesTouch(tree.boxes, FLOATS * a, FLOATS * b)) continue;
    if (tree.isLeaf(a) && tree.isLeaf(b)) {
      yield { first: tree.startOf(a), firstEnd: tree.endOf(a), second: tree.startOf(b), secondEnd: tree.endOf(b) };
    } else if (a === b) {
      const [left, right] = [a + 1, tree.rightOf(a)];
      stack.push(right, right, left, right, left, left);
    } else if (tree.isLeaf(a)) {
      stack.push(a, tree.rightOf(b), a, b + 1);
    } else {
      // The other one is parted next, so that both become smaller alike.
      stack.push(b, tree.rightOf(a), b, a + 1);
    }
  }
}

/** Every leaf of one tree with every leaf of another whose boxes touch, each two once; roots as {@link touchingLeaves} takes them. */
export function* meetingLeaves(root: ArrayBuffer, otherRoot: ArrayBuffer): Generator<LeafPair, void, undefined> {
  const [own, other] = [nodesOf(root), nodesOf(otherRoot)];
  const stack = [0, 0];
  for (;;) {
    const b = stack.pop();
    const a = stack.pop();
    if (a === undefined || b === undefined) return;
    if (!boxesTouch(own.boxes, FLOATS * a, FLOATS * b, other.boxes)) continue;
    const [isEnd, isOtherEnd] = [own.isLeaf(a), other.isLeaf(b)];
    if (isEnd && isOtherEnd) {
      yield { first: own.startOf(a), firstEnd: own.endOf(a), second: other.startOf(b), secondEnd: other.endOf(b) };
    } else if (isOtherEnd || (!isEnd && own.widthOf(a) >= other.widthOf(b))) {
      stack.push(own.rightOf(a), b, a + 1, b);
    } else {
      stack.push(a, other.rightOf(b), a, b + 1);
    }
  }
}

/** The packed nodes of a tree by their numbers. */
function nodesOf(root: ArrayBuffer) {
  const boxes = new Float32Array(root);
  const longs = new Uint32Array(root);
  const shorts = new Uint16Array(root);
  const startOf = (leaf: number): number => longs[FLOATS * leaf + 6];
  return {
    boxes,
    isLeaf: (node: number): boolean => shorts[SHORTS * node + 15] === LEAF_MARK,
    rightOf: (node: number): number => node + longs[FLOATS * node + 6],
    startOf,
    endOf: (leaf: number): number => startOf(leaf) + shorts[SHORTS * leaf + 14],
    /** Longest side of a node's box. */
    widthOf(node: number): number {
      const at = FLOATS * node;
      return Math.max(boxes[at + 3] - boxes[at], boxes[at + 4] - boxes[at + 1], boxes[at + 5] - boxes[at + 2]);
    },
  };
}

type Boxes = Float32Array | Float64Array;

/** Whether two boxes (least x y z, greatest x y z, from `a` and from `b` on) have a point in common; the second may stand in a list of its own. */
export const boxesTouch = (boxes: Boxes, a: number, b: number, others: Boxes = boxes): boolean =>
  boxes[a] <= others[b + 3] &&
  others[b] <= boxes[a + 3] &&
  boxes[a + 1] <= others[b + 4] &&
  others[b + 1] <= boxes[a + 4] &&
  boxes[a + 2] <= others[b + 5] &&
  others[b + 2] <= boxes[a + 5];
