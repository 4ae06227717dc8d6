import { Box3, BufferGeometry, DoubleSide, Group, Mesh, MeshBasicMaterial, ShapeUtils, Vector2, Vector3 } from 'three';
import type { Familiar } from './bench-contract.ts';
import type { BenchColours } from './bench-theme.ts';
import { FAMILIAR_OUTLINES } from './familiar-outlines.ts';
import { LineBatch } from './line-batch.ts';

/** Free space between the sculpt and the thing, mm. */
const GAP = 50;

/** A flat outline of something everybody knows the size of, standing on the bench beside the sculpt. */
export class FamiliarThing {
  readonly object = new Group();
  readonly #line = new LineBatch({ widthPx: 1.6, opacity: 0.9 });
  readonly #fill = new Mesh(
    new BufferGeometry(),
    new MeshBasicMaterial({
      transparent: true,
      opacity: 0.14,
      side: DoubleSide,
      forceSinglePass: true,
      depthWrite: false,
    }),
  );
  #box = new Box3();

  constructor() {
    this.object.add(this.#fill, this.#line.object);
    this.object.visible = false;
  }

  set colours(colours: BenchColours) {
    this.#line.colour = colours.benchLine;
    this.#fill.material.color.copy(colours.benchLine);
  }

  set(kind: Familiar): void {
    this.object.visible = kind !== 'none';
    this.#box.makeEmpty();
    if (kind === 'none') return;
    const lines: number[] = [];
    const [outline, ...inner] = FAMILIAR_OUTLINES[kind].map((points) => points.map(([x, y]) => new Vector2(x, y)));
    for (const [i, ring] of [outline, ...inner].entries()) {
      ring.forEach((p, j) => {
        const isLast = j === ring.length - 1;
        const q = isLast ? ring[0] : ring[j + 1];
        // Inner lines are open strokes.
        if (i > 0 && isLast) return;
        lines.push(p.x, p.y, 0, q.x, q.y, 0);
        if (i === 0) this.#box.expandByPoint(new Vector3(p.x, p.y, 0));
      });
    }
    this.#line.set(lines);
    this.#fill.geometry.dispose();
    const filled = new BufferGeometry().setFromPoints(outline);
    filled.setIndex(ShapeUtils.triangulateShape(outline, []).flat());
    this.#fill.geometry = filled;
  }

  /** Stands it to the right of a box, on the bench. */
  stand(beside: Box3): void {
    const left = this.#box.isEmpty() ? 0 : this.#box.min.x;
    this.object.position.set(beside.max.x + GAP - left, 0, (beside.min.z + beside.max.z) / 2);
  }

  /** Its extent where it stands; empty when there is none. */
  box(): Box3 {
    return this.#box.isEmpty() ? this.#box : this.#box.clone().translate(this.object.position);
  }

  dispose(): void {
    this.#line.dispose();
    this.#fill.geometry.dispose();
    this.#fill.material.dispose();
  }
}
