import {
  Box3,
  Color,
  DirectionalLight,
  HemisphereLight,
  NoToneMapping,
  type Object3D,
  PCFShadowMap,
  PerspectiveCamera,
  Scene,
  Sphere,
  Vector3,
  WebGLRenderer,
} from 'three';
import { NoWebGl, type BenchStats } from './bench-contract.ts';
import type { BenchColours } from './bench-theme.ts';
import { MovingDetail } from './moving-detail.ts';
import { PictureCount } from './picture-count.ts';
import { ALL_ROOM, allowed, isUnder, type EyeRoom } from './eye-room.ts';
import { between, eyeDirection, eyeOf, FIELD_OF_VIEW, isSameView, type Orbit, type OrbitBounds } from './orbit.ts';

/** How long the eye takes to a new place, ms. */
const TRAVEL_MS = 250;
const MOST_PIXEL_RATIO = 2;
/** From here on a moving picture is drawn coarser, and so long after the last move it is fine again, ms. */
const MANY_TRIANGLES = 400_000;
const REST_MS = 160;
/** A plain picture of more than so many pixels is drawn at half its fineness while it moves. */
const MANY_PIXELS = 1_000_000;
const COARSE_PIXEL_RATIO = 0.5;
const SHADOW_PX = 2048;
/** Light comes over the viewer's left shoulder, and from a lamp over the bench. */
const KEY_DIRECTION = new Vector3(-0.62, 1.1, 0.72).normalize();
const FILL_DIRECTION = new Vector3(1, 0.25, 0.1);
const LAMP_DIRECTION = new Vector3(0.06, 1, -0.05).normalize();

/** Camera, lights and the drawing of pictures: one only when something changed. */
export class Studio {
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera((FIELD_OF_VIEW * 180) / Math.PI, 1, 1, 10_000);
  readonly #renderer: WebGLRenderer;
  readonly #count: PictureCount;
  readonly #canvas: HTMLCanvasElement;
  readonly #isPlain: boolean;
  readonly #key = new DirectionalLight();
  /** Straight from above, for the shade where things stand. */
  readonly #lamp = new DirectionalLight();
  readonly #fill = new DirectionalLight();
  readonly #sky = new HemisphereLight();
  #widthPx = 1;
  #heightPx = 1;
  #ball = new Sphere(new Vector3(), 1);
  #orbit: Orbit = { target: new Vector3(), yaw: 0.45, pitch: 0.4, distance: 1000 };
  #bounds: OrbitBounds = { box: new Box3(new Vector3(-1, -1, -1), new Vector3(1, 1, 1)), nearest: 1, farthest: 10_000 };
  #room: EyeRoom = ALL_ROOM;
  /** How far above the middle of the picture that is which the eye looks at, px. */
  #risePx = 0;
  #travel: { from: Orbit; to: Orbit; risePx: readonly [number, number]; start: number } | null = null;
  #request = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #detail = new MovingDetail();
  /** When the picture that is waited for was asked for, ms. */
  #asked = 0;
  #isReduced = false;
  #isLost = false;
  #isOpen = false;

  /**
   * @param isPlain    drawn without soft edges, shadows and grain: for a picture that the processor draws.
   * @param beforeDraw called before each picture with the CSS px that a millimetre has where the eye looks; `drawn` after it.
   * @throws NoWebGl when the browser has no WebGL 2 for this canvas.
   */
  constructor(
    canvas: HTMLCanvasElement,
    isPlain: boolean,
    beforeDraw: (pxPerMm: number) => void,
    drawn: () => void,
    lost: () => void,
    restored: () => void,
  ) {
    const context = canvas.getContext('webgl2', {
      antialias: !isPlain,
      alpha: false,
      powerPreference: 'high-performance',
    });
    if (context === null) throw new NoWebGl();
    this.#canvas = canvas;
    this.#isPlain = isPlain;
    this.#beforeDraw = beforeDraw;
    this.#drawn = drawn;
    this.#renderer = new WebGLRenderer({ canvas, context, antialias: !isPlain });
    this.#count = new PictureCount(this.#renderer);
    this.#renderer.toneMapping = NoToneMapping;
    this.#renderer.shadowMap.enabled = !isPlain;
    this.#renderer.localClippingEnabled = true;
    this.#renderer.shadowMap.type = PCFShadowMap;
    this.#renderer.shadowMap.autoUpdate = false;
    // Asking whether a program is in order waits until it is made.
    this.#renderer.debug.checkShaderErrors = import.meta.env.DEV;
    for (const [light, radius] of [
      [this.#key, 4],
      [this.#lamp, 9],
    ] as const) {
      light.castShadow = true;
      light.shadow.mapSize.set(SHADOW_PX, SHADOW_PX);
      light.shadow.radius = radius;
      this.scene.add(light, light.target);
    }
    this.scene.add(this.#fill, this.#sky);
    canvas.addEventListener('webglcontextlost', this.#onLost);
    canvas.addEventListener('webglcontextrestored', this.#onRestored);
    this.#lost = lost;
    this.#restored = restored;
    this.resize();
  }

  readonly #beforeDraw: (pxPerMm: number) => void;
  readonly #drawn: () => void;
  readonly #lost: () => void;
  readonly #restored: () => void;
  readonly #onLost = (event: Event): void => {
    event.preventDefault();
    this.#isLost = true;
    this.#lost();
  };
  readonly #onRestored = (): void => {
    this.#isLost = false;
    this.changed();
    this.#restored();
  };

  /** Drawn without soft edges, shadows and grain. */
  get isPlain(): boolean {
    return this.#isPlain;
  }

  get orbit(): Orbit {
    return this.#orbit;
  }

  get bounds(): OrbitBounds {
    return this.#bounds;
  }

  get widthPx(): number {
    return this.#widthPx;
  }

  get heightPx(): number {
    return this.#heightPx;
  }

  get pixelRatio(): number {
    return this.#renderer.getPixelRatio();
  }

  get isReduced(): boolean {
    return this.#isReduced;
  }

  set isReduced(isReduced: boolean) {
    this.#isReduced = isReduced;
  }

  add(...objects: Object3D[]): void {
    this.scene.add(...objects);
  }

  remove(...objects: Object3D[]): void {
    this.scene.remove(...objects);
  }

  /** Sets light and ground to the theme. */
  paint(colours: BenchColours): void {
    this.scene.background = colours.background;
    this.#sky.color.copy(colours.background).lerp(new Color(0xffffff), 0.75);
    this.#sky.groundColor.copy(colours.bench).lerp(new Color(0x000000), 0.35);
    this.#sky.intensity = colours.isDark ? 1 : 0.95;
    this.#key.intensity = colours.isDark ? 2.5 : 2;
    this.#lamp.intensity = colours.isDark ? 0.7 : 0.6;
    this.#key.color.set(0xfff3e2);
    this.#fill.color.set(colours.isDark ? 0xaebccc : 0xdfe6ee);
  }

  /** Everything there is: how far the eye may go and where shadows may fall. */
  setExtent(all: Box3): void {
    const ball = all.getBoundingSphere(new Sphere());
    // A picture much higher than wide needs far more distance than half as much again.
    this.#bounds = {
      box: all.clone().expandByScalar(ball.radius / 4),
      nearest: Math.min(30, ball.radius / 4),
      farthest: 16 * ball.radius,
    };
    this.#ball = ball;
    const r = ball.radius;
    for (const [light, direction] of [
      [this.#key, KEY_DIRECTION],
      [this.#lamp, LAMP_DIRECTION],
    ] as const) {
      light.position.copy(ball.center).addScaledVector(direction, 2 * r);
      light.target.position.copy(ball.center);
      const { camera } = light.shadow;
      camera.left = camera.bottom = -r;
      camera.right = camera.top = r;
      camera.near = 0.5 * r;
      camera.far = 3.5 * r;
      camera.updateProjectionMatrix();
      light.shadow.normalBias = (5 * r) / SHADOW_PX;
      light.shadow.bias = -0.0003;
    }
    this.changed();
  }

  /** Draws from now on: programs for all that is in the scene are made first, without holding up the window. */
  async open(): Promise<void> {
    this.aim();
    // Where programs cannot be made beside other work, making them beforehand would only hold up the window earlier.
    if (this.#renderer.extensions.has('KHR_parallel_shader_compile')) {
      await this.#renderer.compileAsync(this.scene, this.camera);
    }
    this.#isOpen = true;
    this.changed();
  }

  /** What is in the scene has changed: draws a new picture with new shadows. */
  changed(): void {
    this.#renderer.shadowMap.needsUpdate = true;
    this.redraw();
  }

  /** While a picture is begun: another one must follow it. */
  drawAgain(withShadows: boolean): void {
    queueMicrotask(() => (withShadows ? this.changed() : this.redraw()));
  }

  /** Draws a new picture, shadows as they are. */
  redraw(): void {
    if (this.#request !== 0 || !this.#isOpen) return;
    this.#asked = performance.now();
    this.#request = requestAnimationFrame(() => this.#frame());
  }

  /** Where foam is that the eye keeps clear of. */
  set room(room: EyeRoom) {
    this.#room = room;
  }

  /** Foam has moved: an eye that it came to goes out of it. */
  makeRoom(): void {
    const { goal } = this;
    const clear = this.#allowed(goal, false);
    if (isSameView(clear, goal)) return;
    if (this.#travel === null) this.#put(clear);
    else this.#travel = { ...this.#travel, to: clear };
  }

  /** To a view, or next to it where the eye would be in foam or under the bench top. */
  setOrbit(orbit: Orbit): void {
    this.#put(this.#allowed(orbit, false));
  }

  #put(orbit: Orbit): void {
    if (this.#travel !== null) this.#risePx = this.#travel.risePx[1];
    this.#travel = null;
    this.#orbit = orbit;
    this.#draft();
    this.redraw();
  }

  #allowed(orbit: Orbit, mayBeUnder: boolean): Orbit {
    return allowed(orbit, this.#bounds, this.#room, mayBeUnder || isUnder(this.#orbit) || isUnder(this.goal));
  }

  /** While the eye moves over much, the picture is coarser; it is drawn finely again once the eye rests. */
  #draft(): void {
    const coarse = Math.min(this.#coarsePixelRatio, this.#finePixelRatio) * this.#detail.share;
    clearTimeout(this.#rest);
    if (this.#renderer.getPixelRatio() !== coarse) this.#renderer.setPixelRatio(coarse);
    this.#rest = setTimeout(() => this.#settle(), REST_MS);
  }

  #settle(): void {
    this.#rest = undefined;
    this.#detail.rested();
    // Where nothing was left out nothing is drawn anew.
    if (this.#renderer.getPixelRatio() !== this.#finePixelRatio) this.resize();
  }

  get #finePixelRatio(): number {
    return Math.min(this.#isPlain ? 1 : MOST_PIXEL_RATIO, globalThis.devicePixelRatio);
  }

  /** While the eye moves. */
  get #coarsePixelRatio(): number {
    if (this.#isPlain && this.widthPx * this.heightPx > MANY_PIXELS) return COARSE_PIXEL_RATIO;
    return this.#renderer.info.render.triangles < MANY_TRIANGLES ? MOST_PIXEL_RATIO : 1;
  }

  /**
   * Goes to a view, in a moment unless motion is reduced or `atOnce`.
   * @param risePx how far above the middle of the picture it looks; left out, as now.
   * @param isAsked to this very side, even from under the bench top.
   */
  travelTo(to: Orbit, atOnce: boolean, risePx = this.riseGoalPx, isAsked = false): void {
    const goal = this.#allowed(to, isAsked);
    if (atOnce || this.#isReduced) {
      this.#risePx = risePx;
      this.#travel = null;
      this.#put(goal);
      return;
    }
    this.#travel = { from: this.#orbit, to: goal, risePx: [this.#risePx, risePx], start: performance.now() };
    this.redraw();
  }

  get isTravelling(): boolean {
    return this.#travel !== null;
  }

  /** Ends a way that is being gone where the eye is now. */
  stay(): void {
    if (this.#travel === null) return;
    this.#travel = null;
    this.setOrbit(this.#orbit);
  }

  /** Where the eye is or is on its way to. */
  get goal(): Orbit {
    return this.#travel?.to ?? this.#orbit;
  }

  get riseGoalPx(): number {
    return this.#travel?.risePx[1] ?? this.#risePx;
  }

  resize(): void {
    // Asked for once: with each question the window is laid out anew, where anything on it has changed.
    this.#widthPx = Math.max(1, this.#canvas.clientWidth);
    this.#heightPx = Math.max(1, this.#canvas.clientHeight);
    if (this.pixelRatio !== this.#finePixelRatio) this.#renderer.setPixelRatio(this.#finePixelRatio);
    this.#renderer.setSize(this.widthPx, this.heightPx, false);
    this.camera.aspect = this.widthPx / this.heightPx;
    // A canvas of another size is black until it is drawn on: at once, before the window shows it.
    if (this.#isOpen) this.#draw();
    else this.redraw();
  }

  stats(): BenchStats {
    return this.#count.stats();
  }

  /** The picture as it stands now. */
  snapshot(): Promise<Blob> {
    this.#draw();
    return new Promise((resolve, reject) => {
      this.#canvas.toBlob((blob) =>
        blob === null ? reject(new Error('The picture could not be kept.')) : resolve(blob),
      );
    });
  }

  dispose(): void {
    cancelAnimationFrame(this.#request);
    clearTimeout(this.#rest);
    this.#canvas.removeEventListener('webglcontextlost', this.#onLost);
    this.#canvas.removeEventListener('webglcontextrestored', this.#onRestored);
    this.#key.dispose();
    this.#lamp.dispose();
    this.#renderer.dispose();
  }

  /** Brings the camera to where the eye is. */
  aim(): void {
    const { camera } = this;
    const eye = eyeOf(this.#orbit);
    const ball = this.#ball;
    const away = eye.distanceTo(ball.center);
    camera.near = Math.max(this.#orbit.distance / 50, away - 1.2 * ball.radius, 0.5);
    camera.far = Math.max(away + 1.5 * ball.radius, camera.near * 2);
    // From below, where no lamp reaches, the eye carries a light.
    const isBelow = this.#orbit.pitch < 0;
    this.#fill.position.copy(isBelow ? eyeDirection(this.#orbit) : FILL_DIRECTION);
    this.#fill.intensity = isBelow ? 2 : 0.85;
    camera.position.copy(eye);
    camera.lookAt(this.#orbit.target);
    // Sets the projection too.
    camera.setViewOffset(this.widthPx, this.heightPx, 0, this.#risePx, this.widthPx, this.heightPx);
    camera.updateMatrixWorld();
  }

  #frame(): void {
    this.#request = 0;
    if (this.#rest !== undefined) this.#detail.drawn(performance.now() - this.#asked);
    if (this.#travel !== null) {
      const { from, to, risePx, start } = this.#travel;
      const share = Math.min(1, (performance.now() - start) / TRAVEL_MS);
      const eased = share * share * (3 - 2 * share);
      this.#orbit = between(from, to, eased);
      this.#risePx = risePx[0] + eased * (risePx[1] - risePx[0]);
      if (share === 1) this.#travel = null;
      else this.redraw();
    }
    this.#draw();
  }

  #draw(): void {
    if (this.#isLost) return;
    this.aim();
    this.#beforeDraw(this.heightPx / (2 * this.#orbit.distance * Math.tan(FIELD_OF_VIEW / 2)));
    this.#renderer.render(this.scene, this.camera);
    this.#count.drawn();
    this.#drawn();
  }
}
