import type { WebGLRenderer } from 'three';
import type { BenchStats } from './bench-contract.ts';

/**
 * Counts what pictures take. A picture draws shadows anew only where something moved: they are counted apart, so that the figures of what
 * is seen do not depend on why the last picture was drawn.
 */
export class PictureCount {
  readonly #renderer: WebGLRenderer;
  /** Of the picture that is being drawn, and of the last one that drew any. */
  #shadow = { calls: 0, triangles: 0 };
  #shadowCalls = 0;
  #seen = { calls: 0, triangles: 0 };
  #frames = 0;

  constructor(renderer: WebGLRenderer) {
    this.#renderer = renderer;
    const { shadowMap, info } = renderer;
    const draw = shadowMap.render.bind(shadowMap);
    // Shadows come first in a picture, after its count was set to none.
    shadowMap.render = (...of) => {
      draw(...of);
      this.#shadow = { calls: info.render.calls, triangles: info.render.triangles };
    };
  }

  /** A picture is done. */
  drawn(): void {
    const { calls, triangles } = this.#renderer.info.render;
    this.#seen = { calls: calls - this.#shadow.calls, triangles: triangles - this.#shadow.triangles };
    if (this.#shadow.calls > 0) this.#shadowCalls = this.#shadow.calls;
    this.#frames += 1;
  }

  stats(): BenchStats {
    const { geometries, textures } = this.#renderer.info.memory;
    return {
      drawCalls: this.#seen.calls,
      shadowCalls: this.#shadowCalls,
      triangles: this.#seen.triangles,
      frames: this.#frames,
      geometries,
      textures,
    };
  }
}
