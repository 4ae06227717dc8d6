import { CanvasTexture, Group, Mesh, MeshBasicMaterial, PlaneGeometry, Vector3, type Box3, type Color } from 'three';

/** Px of its picture along either side, and how far it is blurred. */
const SIZE_PX = 128;
const BLUR_PX = 3.5;
/** Free margin round what stands, so that the blur runs out, as a share of its size. */
const MARGIN = 0.16;
/** Triangles that are looked at, at most. */
const MOST_TRIANGLES = 12_000;
/** What is higher than this share of the height gives no shade on the bench. */
const LOW_SHARE = 0.45;
const DARKEST = 0.62;
/** Over the bench, mm. */
const ABOVE = 0.1;

/**
 * The shade on the bench where things stand: dark where they touch it and lighter the higher they are over it. For pictures that are drawn
 * without shadows. One draw call.
 */
export class ContactShade {
  readonly object = new Group();
  readonly #mesh = new Mesh(
    new PlaneGeometry(1, 1).rotateX(-Math.PI / 2),
    new MeshBasicMaterial({
      transparent: true,
      depthWrite: false,
      polygonOffset: true,
      polygonOffsetFactor: -1,
      polygonOffsetUnits: -2,
    }),
  );
  #of: Float32Array | null = null;

  constructor() {
    this.#mesh.visible = false;
    this.#mesh.renderOrder = -1;
    this.object.add(this.#mesh);
  }

  set colour(bench: Color) {
    this.#mesh.material.color.copy(bench).multiplyScalar(0.12);
  }

  /**
   * @param points     packed xyz, in the scene, corner by corner of triangles; null where nothing stands.
   * @param box        round them.
   */
  set(points: Float32Array | null, box: Box3): void {
    if (points === this.#of) return;
    this.#of = points;
    this.#mesh.visible = points !== null && !box.isEmpty();
    if (points === null || box.isEmpty()) return;
    const size = box.getSize(new Vector3());
    const side = (1 + 2 * MARGIN) * Math.max(size.x, size.z);
    const middle = box.getCenter(new Vector3());
    this.#mesh.scale.set(side, 1, side);
    this.#mesh.position.set(middle.x, ABOVE, middle.z);
    this.#mesh.material.map?.dispose();
    this.#mesh.material.map = shadeOf(points, middle, side, LOW_SHARE * size.y);
    this.#mesh.material.needsUpdate = true;
  }

  dispose(): void {
    this.#mesh.geometry.dispose();
    this.#mesh.material.map?.dispose();
    this.#mesh.material.dispose();
  }
}

/** The triangles seen from above, darker the lower they are, then blurred. */
function shadeOf(points: Float32Array, middle: Vector3, side: number, high: number): CanvasTexture<OffscreenCanvas> {
  const sharp = new OffscreenCanvas(SIZE_PX, SIZE_PX);
  const blurred = new OffscreenCanvas(SIZE_PX, SIZE_PX);
  const [pen, brush] = [sharp.getContext('2d'), blurred.getContext('2d')];
  const count = points.length / 9;
  const stride = Math.ceil(count / MOST_TRIANGLES);
  if (pen !== null && brush !== null) {
    pen.lineWidth = 1;
    for (let t = 0; t < count; t += stride) {
      const low = Math.min(points[9 * t + 1], points[9 * t + 4], points[9 * t + 7]);
      if (low > high) continue;
      pen.fillStyle = pen.strokeStyle = `rgba(255, 255, 255, ${DARKEST * (1 - low / high) ** 2})`;
      pen.beginPath();
      for (let c = 3 * t; c < 3 * t + 3; c += 1) {
        const x = ((points[3 * c] - middle.x) / side + 0.5) * SIZE_PX;
        const y = ((points[3 * c + 2] - middle.z) / side + 0.5) * SIZE_PX;
        if (c === 3 * t) pen.moveTo(x, y);
        else pen.lineTo(x, y);
      }
      pen.closePath();
      pen.fill();
      pen.stroke();
    }
    brush.filter = `blur(${BLUR_PX}px)`;
    brush.drawImage(sharp, 0, 0);
  }
  return new CanvasTexture(blurred);
}
