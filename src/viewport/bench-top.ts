import { BufferAttribute, BufferGeometry, Group, Mesh, Vector3, type MeshLambertMaterial } from 'three';
import type { BenchColours } from './bench-theme.ts';
import type { BenchLayout } from './bench-layout.ts';
import { boardForm } from './board-form.ts';
import { benchMaterial } from './foam-materials.ts';
import { LineBatch } from './line-batch.ts';
import { WordsMesh, type LaidWords } from './words-mesh.ts';

const THICKNESS = 24;
const CORNER = 14;
const EDGE = 1.5;
/** The rule stands this far inside the front edge; ticks of 1, 5 and 10 cm. */
const INSET = 10;
const TICKS = [5, 9, 14] as const;
/** Height of the rule's numbers as an em, mm. */
const NUMBER_EM = 15;

/** The bench in true scale: a board with a centimetre rule along its front edge. */
export class BenchTop {
  readonly object = new Group();
  readonly #board: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly #rule = new LineBatch({ widthPx: 1, opacity: 0.75, renderOrder: 0 });
  readonly #numbers: WordsMesh;

  constructor(font: string) {
    this.#board = new Mesh(new BufferGeometry(), benchMaterial());
    this.#board.receiveShadow = true;
    this.#numbers = new WordsMesh(font);
    this.object.add(this.#board, this.#rule.object, this.#numbers.object);
  }

  set colours(colours: BenchColours) {
    this.#board.material.color.copy(colours.bench);
    this.#rule.colour = colours.benchLine;
    this.#numbers.colour = colours.benchLine;
  }

  /** @param isTrueScale false while the size of the sculpt is unknown: no rule then. */
  set(top: BenchLayout['top'], isTrueScale: boolean): void {
    const { minX, maxX, minZ, maxZ } = top;
    this.#board.geometry.dispose();
    const { positions, normals, corners } = boardForm({
      width: maxX - minX,
      depth: maxZ - minZ,
      thickness: THICKNESS,
      corner: CORNER,
      edge: EDGE,
    });
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(positions, 3));
    geometry.setAttribute('normal', new BufferAttribute(normals, 3));
    geometry.setIndex([...corners]);
    geometry.translate((minX + maxX) / 2, 0, (minZ + maxZ) / 2);
    this.#board.geometry = geometry;
    const ticks: number[] = [];
    const words: LaidWords[] = [];
    const z = maxZ - INSET;
    const length = Math.floor((maxX - minX - 2 * CORNER) / 10) * 10;
    for (let mm = 0; isTrueScale && mm <= length; mm += 10) {
      const x = minX + CORNER + mm;
      const kind = mm % 100 === 0 ? 2 : mm % 50 === 0 ? 1 : 0;
      ticks.push(x, 0.1, z, x, 0.1, z - TICKS[kind]);
      if (kind !== 2 || mm === 0) continue;
      words.push({
        text: String(mm / 10),
        at: new Vector3(x, 0.2, z - TICKS[2] - 4),
        right: new Vector3(NUMBER_EM, 0, 0),
        up: new Vector3(0, 0, -NUMBER_EM),
        align: 'centre',
      });
    }
    if (isTrueScale) ticks.push(minX + CORNER, 0.1, z, minX + CORNER + length, 0.1, z);
    this.#rule.set(ticks);
    this.#numbers.set(words);
  }

  dispose(): void {
    this.#board.geometry.dispose();
    this.#board.material.dispose();
    this.#rule.dispose();
    this.#numbers.dispose();
  }
}
