import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  type Color,
  DoubleSide,
  LinearFilter,
  LinearMipmapLinearFilter,
  Mesh,
  MeshBasicMaterial,
  Vector3,
} from 'three';

/** A line of words lying on something. Directions have the length of one em. */
export interface LaidWords {
  readonly text: string;
  /** On the baseline at `align`. */
  readonly at: Vector3;
  readonly right: Vector3;
  readonly up: Vector3;
  readonly align: 'left' | 'centre' | 'right';
}

/** Height of a capital over the em of the drawing font, measured by {@link CAPITAL_SHARE} users that know only capitals' height. */
export const CAPITAL_SHARE = 0.68;

const CELL_PX = 64;
const FONT_PX = 44;
const COLUMNS = 16;

/** Words in the scene, letter by letter from one picture of the letters: one draw call. */
export class WordsMesh {
  readonly object: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly #font: string;
  #isShown = true;
  #isEmpty = true;
  readonly #places = new Map<string, { column: number; row: number; advance: number }>();

  /** @param font CSS font family. */
  constructor(font: string) {
    this.#font = font;
    this.object = new Mesh(
      new BufferGeometry(),
      new MeshBasicMaterial({
        transparent: true,
        depthWrite: false,
        side: DoubleSide,
        forceSinglePass: true,
        polygonOffset: true,
        polygonOffsetFactor: -3,
        polygonOffsetUnits: -6,
      }),
    );
    this.object.frustumCulled = false;
    this.object.visible = false;
    this.object.renderOrder = 3;
  }

  set colour(colour: Color) {
    this.object.material.color.copy(colour);
  }

  set isShown(isShown: boolean) {
    this.#isShown = isShown;
    this.object.visible = isShown && !this.#isEmpty;
  }

  set(lines: readonly LaidWords[]): void {
    this.#isEmpty = lines.length === 0;
    this.object.visible = this.#isShown && !this.#isEmpty;
    if (lines.length === 0) return;
    const letters = [...new Set(lines.flatMap(({ text }) => [...text]))]
      .filter((letter) => letter.trim() !== '')
      .sort();
    const rows = Math.max(1, Math.ceil(letters.length / COLUMNS));
    if (letters.some((letter) => !this.#places.has(letter))) this.#draw(letters, rows);
    const height =
      this.object.material.map === null
        ? rows
        : Math.round((this.object.material.map.image as OffscreenCanvas).height / CELL_PX);
    const positions: number[] = [];
    const uvs: number[] = [];
    const point = new Vector3();
    const cell = CELL_PX / FONT_PX;
    for (const { text, at, right, up, align } of lines) {
      const width = this.widthOf(text);
      let pen = align === 'left' ? 0 : align === 'centre' ? -width / 2 : -width;
      for (const letter of text) {
        const place = this.#places.get(letter);
        const advance = this.#advance(letter);
        if (place !== undefined) {
          const left = pen + advance / 2 - cell / 2;
          // The letter's baseline lies at three quarters of its cell.
          for (const [x, y] of QUAD) {
            point
              .copy(at)
              .addScaledVector(right, left + x * cell)
              .addScaledVector(up, (y - 0.25) * cell)
              .toArray(positions, positions.length);
            uvs.push((place.column + x) / COLUMNS, 1 - (place.row + 1 - y) / height);
          }
        }
        pen += advance;
      }
    }
    this.object.geometry.dispose();
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3));
    geometry.setAttribute('uv', new BufferAttribute(Float32Array.from(uvs), 2));
    this.object.geometry = geometry;
  }

  /** How wide a line that was set is, em. */
  widthOf(text: string): number {
    return [...text].reduce((sum, letter) => sum + this.#advance(letter), 0);
  }

  dispose(): void {
    this.object.geometry.dispose();
    this.object.material.map?.dispose();
    this.object.material.dispose();
  }

  #advance(letter: string): number {
    return this.#places.get(letter)?.advance ?? 0.28;
  }

  #draw(letters: readonly string[], rows: number): void {
    const canvas = new OffscreenCanvas(COLUMNS * CELL_PX, rows * CELL_PX);
    const pen = canvas.getContext('2d');
    if (pen === null) return;
    this.#places.clear();
    pen.font = `600 ${FONT_PX}px ${this.#font}`;
    pen.textAlign = 'center';
    pen.textBaseline = 'alphabetic';
    pen.fillStyle = '#fff';
    letters.forEach((letter, i) => {
      const [column, row] = [i % COLUMNS, Math.floor(i / COLUMNS)];
      pen.fillText(letter, (column + 0.5) * CELL_PX, (row + 0.75) * CELL_PX);
      this.#places.set(letter, { column, row, advance: pen.measureText(letter).width / FONT_PX });
    });
    const texture = new CanvasTexture(canvas);
    texture.minFilter = LinearMipmapLinearFilter;
    texture.magFilter = LinearFilter;
    texture.anisotropy = 8;
    this.object.material.map?.dispose();
    this.object.material.map = texture;
    this.object.material.needsUpdate = true;
  }
}

const QUAD = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 0],
  [1, 1],
  [0, 1],
] as const;
