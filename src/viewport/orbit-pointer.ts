import type { Vector3 } from 'three';
import { panned, turned, zoomed, type Orbit, type OrbitBounds } from './orbit.ts';
import { isSlide } from './wheel-kind.ts';

/** What the pointer needs to know and may do. Positions are CSS px in the canvas. */
export interface OrbitHost {
  orbit(): Orbit;
  bounds(): OrbitBounds;
  setOrbit(orbit: Orbit): void;
  /** The point of the scene under a place of the picture: what is zoomed to. */
  pointUnder(x: number, y: number): Vector3;
  hovered(x: number, y: number): void;
  left(): void;
  clicked(x: number, y: number, keys: { readonly shift: boolean; readonly alt: boolean }): void;
  /** Two clicks or taps on one place. */
  clickedTwice(x: number, y: number): void;
  /** A press with the first button or one finger. @returns true when a drag from here moves what lies there, not the view. */
  grabbed(x: number, y: number): boolean;
  dragged(x: number, y: number): void;
  dropped(): void;
}

/** Radians for a drag over the whole height of the picture. */
const TURN_PER_HEIGHT = Math.PI;
/** A press that moves no farther than this is a click, px; a pen trembles more, and a finger more than that. */
const CLICK_PX: Readonly<Record<string, number>> = { mouse: 4, pen: 7, touch: 10 };
/** Growth of the distance for each px of the wheel; a pinch on a trackpad comes as small wheel steps with Ctrl. */
const WHEEL = 0.0016;
const PINCH_WHEEL = 0.01;
/** Fingers on a trackpad pause no longer than so, ms. */
const SLIDE_PAUSE_MS = 180;
/** Of the buttons that are down, the right and the middle one of a mouse; the right one is the one on the side of a pen. */
const MOVING_BUTTONS = 2 | 4;

interface Press {
  x: number;
  y: number;
  readonly startX: number;
  readonly startY: number;
  readonly pans: boolean;
  /** True while the drag moves a thing of the scene. */
  holds: boolean;
  hasMoved: boolean;
}

/**
 * Turns pointers into moves of the eye: one drags to turn (or moves what it took hold of); right, middle, Shift, the button on the side of a pen or two fingers
 * move sideways; wheel and pinch come nearer to what is under the pointer.
 */
export class OrbitPointer {
  readonly #canvas: HTMLCanvasElement;
  readonly #host: OrbitHost;
  readonly #presses = new Map<number, Press>();
  readonly #listeners = new AbortController();
  #isPinching = false;
  /** When two fingers on a trackpad moved last, ms. */
  #slidAt = -Infinity;

  constructor(canvas: HTMLCanvasElement, host: OrbitHost) {
    this.#canvas = canvas;
    this.#host = host;
    canvas.style.touchAction = 'none';
    const { signal } = this.#listeners;
    canvas.addEventListener('pointerdown', (event) => this.#down(event), { signal });
    canvas.addEventListener('pointermove', (event) => this.#move(event), { signal });
    canvas.addEventListener('pointerup', (event) => this.#up(event), { signal });
    canvas.addEventListener('pointercancel', (event) => this.#cancelled(event), { signal });
    canvas.addEventListener('pointerleave', () => this.#presses.size === 0 && host.left(), { signal });
    canvas.addEventListener('dblclick', (event) => this.#twice(event), { signal });
    canvas.addEventListener('contextmenu', (event) => event.preventDefault(), { signal });
    canvas.addEventListener('wheel', (event) => this.#wheel(event), { signal, passive: false });
  }

  /** True while the view follows a pointer. */
  get isDragging(): boolean {
    return [...this.#presses.values()].some(({ hasMoved }) => hasMoved);
  }

  dispose(): void {
    this.#listeners.abort();
  }

  #down(event: PointerEvent): void {
    const { x, y } = this.#place(event);
    const pans = event.button === 1 || event.button === 2 || event.shiftKey;
    const holds = event.button === 0 && !pans && this.#presses.size === 0 && this.#host.grabbed(x, y);
    if (!holds) this.#letGo();
    this.#presses.set(event.pointerId, { x, y, startX: x, startY: y, pans, holds, hasMoved: false });
    this.#canvas.setPointerCapture(event.pointerId);
    if (this.#presses.size > 1) this.#isPinching = true;
    if (event.button === 1) event.preventDefault();
  }

  #move(event: PointerEvent): void {
    const { x, y } = this.#place(event);
    const press = this.#presses.get(event.pointerId);
    if (press === undefined) {
      this.#host.hovered(x, y);
      return;
    }
    const slack = CLICK_PX[event.pointerType] ?? CLICK_PX['mouse'];
    if (!press.hasMoved && Math.hypot(x - press.startX, y - press.startY) <= slack && !this.#isPinching) return;
    press.hasMoved = true;
    if (press.holds) {
      this.#host.dragged(x, y);
      return;
    }
    const [dx, dy] = [x - press.x, y - press.y];
    if (this.#presses.size > 1) {
      this.#pinch(press, event.pointerId, dx, dy);
    } else {
      const { clientHeight } = this.#canvas;
      const orbit = this.#host.orbit();
      const turn = TURN_PER_HEIGHT / clientHeight;
      this.#host.setOrbit(
        press.pans || (event.buttons & MOVING_BUTTONS) !== 0
          ? panned(orbit, dx, dy, clientHeight)
          : turned(orbit, -dx * turn, dy * turn),
      );
    }
    press.x = x;
    press.y = y;
  }

  /** One of two fingers moved: half the move goes sideways, the change of their distance comes nearer. */
  #pinch(press: Press, id: number, dx: number, dy: number): void {
    const other = [...this.#presses.entries()].find(([key]) => key !== id)?.[1];
    if (other === undefined) return;
    const before = Math.hypot(press.x - other.x, press.y - other.y);
    const after = Math.hypot(press.x + dx - other.x, press.y + dy - other.y);
    const orbit = panned(this.#host.orbit(), dx / 2, dy / 2, this.#canvas.clientHeight);
    const middle = this.#host.pointUnder((press.x + dx + other.x) / 2, (press.y + dy + other.y) / 2);
    const twist =
      Math.atan2(press.y + dy - other.y, press.x + dx - other.x) - Math.atan2(press.y - other.y, press.x - other.x);
    const round = turned(orbit, Math.atan2(Math.sin(twist), Math.cos(twist)), 0);
    this.#host.setOrbit(before > 0 && after > 0 ? zoomed(round, before / after, middle, this.#host.bounds()) : orbit);
  }

  #up(event: PointerEvent): void {
    const press = this.#presses.get(event.pointerId);
    if (press?.holds === true && press.hasMoved) this.#host.dropped();
    this.#presses.delete(event.pointerId);
    const wasPinching = this.#isPinching;
    if (this.#presses.size === 0) this.#isPinching = false;
    if (press === undefined || press.hasMoved || wasPinching || event.button !== 0) return;
    const { x, y } = this.#place(event);
    this.#host.clicked(x, y, { shift: event.shiftKey, alt: event.altKey });
  }

  #cancelled(event: PointerEvent): void {
    this.#letGo();
    this.#presses.delete(event.pointerId);
  }

  /** A second finger, or the end of a press: what was held stays where it is now. */
  #letGo(): void {
    for (const press of this.#presses.values()) {
      if (press.holds && press.hasMoved) this.#host.dropped();
      press.holds = false;
    }
  }

  #twice(event: MouseEvent): void {
    const { x, y } = this.#place(event);
    this.#host.clickedTwice(x, y);
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    const { x, y } = this.#place(event);
    if (this.#isTrackpad(event)) {
      this.#host.setOrbit(panned(this.#host.orbit(), -event.deltaX, -event.deltaY, this.#canvas.clientHeight));
      return this.#host.hovered(x, y);
    }
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    const step = Math.max(-240, Math.min(240, event.deltaY * lines));
    const factor = Math.exp(step * (event.ctrlKey ? PINCH_WHEEL : WHEEL));
    this.#host.setOrbit(zoomed(this.#host.orbit(), factor, this.#host.pointUnder(x, y), this.#host.bounds()));
    this.#host.hovered(x, y);
  }

  /** What began with fingers on a trackpad goes on so. */
  #isTrackpad(event: WheelEvent): boolean {
    const { deltaMode, ctrlKey, timeStamp } = event;
    const goesOn = !ctrlKey && deltaMode === WheelEvent.DOM_DELTA_PIXEL && timeStamp - this.#slidAt < SLIDE_PAUSE_MS;
    if (!goesOn && !isSlide(event)) return false;
    this.#slidAt = timeStamp;
    return true;
  }

  #place(event: MouseEvent): { x: number; y: number } {
    const box = this.#canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }
}
