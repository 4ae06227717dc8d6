import { fail, ok, type Result } from '../../base/result.ts';
import { drawSvgPath, type PathPen } from '../../geom/svg-path.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { ArtArc, ArtPath, ArtSegment } from '../../model/artwork.ts';

/** Parts of one path at most: more than anybody draws. */
const MOST_SEGMENTS = 100_000;

/** A number beyond this is no place on a drawing. */
const MOST_NUMBER = 1e9;

/**
 * Reads the text of a path as SVG writes it (SVG 1.1, chapter 8.3; SVG 2, chapter 9.3) into exact parts, in the path's own axes. Parts without
 * length are left out; a line that is only a point is too.
 * @returns one path for each move. Fails with `artwork/path`, telling what stands where, or `artwork/too-large`.
 */
export function readPathData(text: string): Result<readonly ArtPath[]> {
  if (text.trim() === 'none') return ok([]);
  const pen = new ExactPen();
  const fault = drawSvgPath(text, pen, MOST_NUMBER);
  if (fault !== null) {
    const wanted = fault.wanted === 'a number' ? 'a number of use' : fault.wanted;
    return fail(
      'artwork/path',
      `A path cannot be read at character ${fault.at}: ${wanted} should stand there${fault.found}. Save it again as plain SVG.`,
    );
  }
  if (pen.isFull)
    return fail('artwork/too-large', `A path has more than ${MOST_SEGMENTS} parts: simplify it, or draw it in parts.`);
  return ok(pen.paths());
}

/** Draws commands as exact parts. */
class ExactPen implements PathPen {
  readonly #paths: { start: Vec2; segments: ArtSegment[]; isClosed: boolean }[] = [];
  #here: Vec2 = { x: 0, y: 0 };
  /** Where the last curve's second handle stood, for the curve that goes on smoothly; null after other commands. */
  #handle: Vec2 | null = null;
  #handleOf = '';
  #isNew = true;
  isDown = false;
  count = 0;

  get isFull(): boolean {
    return this.count > MOST_SEGMENTS;
  }

  draw(kind: string, values: readonly number[], isRelative: boolean): void {
    const here = this.#here;
    const [ox, oy] = isRelative ? [here.x, here.y] : [0, 0];
    const at = (i: number): Vec2 => ({ x: ox + values[i], y: oy + values[i + 1] });
    this.count += 1;
    switch (kind) {
      case 'M':
        this.#here = at(0);
        this.#paths.push({ start: this.#here, segments: [], isClosed: false });
        [this.isDown, this.#isNew] = [true, false];
        break;
      case 'L':
        this.#add({ kind: 'line', from: here, to: at(0) });
        break;
      case 'H':
        this.#add({ kind: 'line', from: here, to: { x: ox + values[0], y: here.y } });
        break;
      case 'V':
        this.#add({ kind: 'line', from: here, to: { x: here.x, y: oy + values[0] } });
        break;
      case 'C':
        this.#cubic(at(0), at(2), at(4));
        break;
      case 'S':
        this.#cubic(this.#mirrored('C'), at(0), at(2));
        break;
      case 'Q':
        this.#quadratic(at(0), at(2));
        break;
      case 'T':
        this.#quadratic(this.#mirrored('Q'), at(0));
        break;
      case 'A':
        this.#add(arcFromEnds(here, values, at(5)));
        break;
      default:
        this.#close();
    }
    if (!'CSQT'.includes(kind)) this.#handle = null;
  }

  paths(): readonly ArtPath[] {
    return this.#paths
      .filter(({ segments }) => segments.length > 0)
      .map(({ segments, isClosed }) => ({ segments, isClosed }));
  }

  #add(segment: ArtSegment): void {
    // After a close without a move, a new line begins where the closed one did.
    if (this.#isNew) this.#paths.push({ start: this.#here, segments: [], isClosed: false });
    this.#isNew = false;
    this.#here = segment.to;
    const { from, to } = segment;
    const isPoint =
      from.x === to.x &&
      from.y === to.y &&
      (segment.kind === 'line' ||
        (segment.kind === 'cubic' && segment.handles.every((h) => h.x === to.x && h.y === to.y)));
    if (!isPoint) this.#paths[this.#paths.length - 1].segments.push(segment);
  }

  #close(): void {
    const path = this.#paths[this.#paths.length - 1];
    if (!this.#isNew) {
      this.#add({ kind: 'line', from: this.#here, to: path.start });
      path.isClosed = true;
    }
    this.#isNew = true;
    this.#here = path.start;
  }

  /** The handle across the point here of the last curve's handle, where that was of this kind; else the point itself. */
  #mirrored(kind: string): Vec2 {
    const handle = this.#handleOf === kind ? this.#handle : null;
    return handle === null ? this.#here : { x: 2 * this.#here.x - handle.x, y: 2 * this.#here.y - handle.y };
  }

  #cubic(b: Vec2, c: Vec2, d: Vec2): void {
    this.#add({ kind: 'cubic', from: this.#here, handles: [b, c], to: d });
    [this.#handle, this.#handleOf] = [c, 'C'];
  }

  #quadratic(b: Vec2, c: Vec2): void {
    const a = this.#here;
    const third = (p: Vec2): Vec2 => ({ x: (p.x + 2 * b.x) / 3, y: (p.y + 2 * b.y) / 3 });
    this.#add({ kind: 'cubic', from: a, handles: [third(a), third(c)], to: c });
    [this.#handle, this.#handleOf] = [b, 'Q'];
  }
}

/**
 * An elliptical arc from its ends (SVG 1.1, appendix F.6). Radii that are too short are made just long enough; without a radius it is straight.
 * @param values  rx, ry, turn of the axes in degrees, large flag, sweep flag.
 */
export function arcFromEnds(from: Vec2, values: readonly number[], to: Vec2): ArtSegment {
  let [rx, ry] = [Math.abs(values[0]), Math.abs(values[1])];
  const tilt = (values[2] * Math.PI) / 180;
  const [isLarge, isSweep] = [values[3] === 1, values[4] === 1];
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return { kind: 'line', from, to };
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  // Half the way between the ends in the ellipse's own axes (F.6.5.1).
  const [dx, dy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [px, py] = [c * dx + s * dy, -s * dx + c * dy];
  const over = (px / rx) ** 2 + (py / ry) ** 2;
  if (over > 1) [rx, ry] = [rx * Math.sqrt(over), ry * Math.sqrt(over)];
  // The centre (F.6.5.2 and 3), in shares of the radii, so that great radii keep their digits.
  const [qx, qy] = [px / rx, py / ry];
  const square = qx * qx + qy * qy;
  const size = (isLarge === isSweep ? -1 : 1) * Math.sqrt(Math.max(0, (1 - square) / square));
  const [mx, my] = [size * qy, -size * qx];
  const centre = {
    x: c * rx * mx - s * ry * my + (from.x + to.x) / 2,
    y: s * rx * mx + c * ry * my + (from.y + to.y) / 2,
  };
  const start = Math.atan2(qy - my, qx - mx);
  let turn = Math.atan2(-qy - my, -qx - mx) - start;
  if (isSweep && turn < 0) turn += 2 * Math.PI;
  if (!isSweep && turn > 0) turn -= 2 * Math.PI;
  return { kind: 'arc', from, to, centre, u: { x: c * rx, y: s * rx }, v: { x: -s * ry, y: c * ry }, start, turn };
}

/** A whole ellipse upright, from its rightmost point. @param turn  2 pi, or less where it is a corner. */
export function uprightArc(centre: Vec2, rx: number, ry: number, start: number, turn: number): ArtArc {
  const at = (angle: number): Vec2 => ({ x: centre.x + rx * Math.cos(angle), y: centre.y + ry * Math.sin(angle) });
  const from = at(start);
  const to = Math.abs(turn) >= 2 * Math.PI ? from : at(start + turn);
  return { kind: 'arc', from, to, centre, u: { x: rx, y: 0 }, v: { x: 0, y: ry }, start, turn };
}
