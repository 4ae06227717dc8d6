import { DoubleSide, FrontSide, MeshStandardMaterial, type MeshStandardMaterialParameters } from 'three';

/**
 * A dull surface that takes light as foam and card do: no shine, and a soft brightening where it turns away, as nap does, so that a
 * dark shape is not lost on its own dark side. Colours at corners are sRGB bytes.
 * @param nap how bright the turned-away edge becomes, 0 to 1.
 */
export function dullMaterial(nap: number, parameters: MeshStandardMaterialParameters): MeshStandardMaterial {
  const material = new MeshStandardMaterial({ roughness: 0.95, metalness: 0, ...parameters });
  material.onBeforeCompile = (shader) => {
    shader.uniforms.nap = { value: nap };
    shader.vertexShader = shader.vertexShader.replace(
      '#include <color_vertex>',
      `#include <color_vertex>
#ifdef USE_COLOR_ALPHA
  vColor.rgb = mix(vColor.rgb / 12.92, pow((vColor.rgb + 0.055) / 1.055, vec3(2.4)), step(0.04045, vColor.rgb));
#endif`,
    );
    shader.fragmentShader = shader.fragmentShader
      .replace('void main() {', 'uniform float nap;\nvoid main() {')
      .replace(
        '#include <opaque_fragment>',
        `float away = 1.0 - abs(dot(normalize(normal), normalize(vViewPosition)));
outgoingLight += nap * away * away * away * (0.35 + 0.65 * diffuseColor.rgb) * (0.4 + 0.6 * max(0.0, normal.y));
#include <opaque_fragment>`,
      );
  };
  material.customProgramCacheKey = () => 'dull';
  return material;
}

/** Lets lines drawn on a surface win against it. */
const BEHIND_LINES = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 } as const;

export const skinMaterial = (): MeshStandardMaterial =>
  dullMaterial(0.16, { vertexColors: true, side: FrontSide, shadowSide: DoubleSide, ...BEHIND_LINES });

export const cutFaceMaterial = (): MeshStandardMaterial =>
  dullMaterial(0.05, { side: DoubleSide, shadowSide: DoubleSide, ...BEHIND_LINES });

/** The sculpt is often an open shell and is seen from inside too. */
export const sculptMaterial = (): MeshStandardMaterial =>
  dullMaterial(0.06, { vertexColors: true, side: DoubleSide, shadowSide: DoubleSide, ...BEHIND_LINES });

export const benchMaterial = (): MeshStandardMaterial => dullMaterial(0, { side: FrontSide });
