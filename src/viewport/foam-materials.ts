import { DoubleSide, FrontSide, MeshLambertMaterial, type MeshLambertMaterialParameters } from 'three';

/** How a dull surface looks in detail. */
export interface Dullness {
  /** How bright the edge that turns away becomes, 0 to 1: nap and dust catch light there, so a dark shape is not lost on its dark side. */
  readonly nap: number;
  /** How much lighter and darker its grain is than its colour, 0 to 1. */
  readonly grain: number;
}

/** Size of the finer of two grains, mm; the coarser is five times that. */
const GRAIN_MM = 0.9;

const NOISE = `
uniform float nap;
uniform float grain;
varying vec3 vPlace;
float dice(ivec3 p) {
  uvec3 q = uvec3(p) * uvec3(1597334673u, 3812015801u, 2798796415u);
  uint n = q.x ^ q.y ^ q.z;
  n = (n ^ (n >> 15u)) * 2246822519u;
  return float((n ^ (n >> 13u)) & 0xffffu) / 65535.0;
}
float cloud(vec3 p) {
  vec3 f = fract(p);
  ivec3 i = ivec3(floor(p));
  f = f * f * (3.0 - 2.0 * f);
  vec4 x = mix(
    vec4(dice(i), dice(i + ivec3(0, 1, 0)), dice(i + ivec3(0, 0, 1)), dice(i + ivec3(0, 1, 1))),
    vec4(dice(i + ivec3(1, 0, 0)), dice(i + ivec3(1, 1, 0)), dice(i + ivec3(1, 0, 1)), dice(i + ivec3(1, 1, 1))), f.x);
  return mix(mix(x.x, x.y, f.y), mix(x.z, x.w, f.y), f.z);
}
void main() {`;

// Grain finer than a pixel would flicker: it fades out. A plain picture has no shadows and no grain.
const GRAIN = `#include <color_fragment>
#ifdef USE_SHADOWMAP
if (grain > 0.0) {
  float pixel = length(fwidth(vPlace));
  float fine = 1.0 - smoothstep(0.5, 1.3, pixel / ${GRAIN_MM.toFixed(2)});
  float coarse = 1.0 - smoothstep(0.5, 1.3, pixel / ${(5 * GRAIN_MM).toFixed(2)});
  float shade = fine * (cloud(vPlace / ${GRAIN_MM.toFixed(2)}) - 0.5) + 0.5 * coarse * (cloud(vPlace / ${(5 * GRAIN_MM).toFixed(2)}) - 0.5);
  diffuseColor.rgb *= 1.0 + 2.0 * grain * shade;
}
#endif`;

const NAP = `float away = 1.0 - abs(dot(normalize(normal), normalize(vViewPosition)));
outgoingLight += nap * away * away * away * (0.35 + 0.65 * diffuseColor.rgb) * (0.4 + 0.6 * max(0.0, normal.y));
#include <opaque_fragment>`;

const DECODE = `#include <color_vertex>
#ifdef USE_COLOR_ALPHA
  vColor.rgb = mix(vColor.rgb / 12.92, pow((vColor.rgb + 0.055) / 1.055, vec3(2.4)), step(0.04045, vColor.rgb));
#endif`;

/** A surface that takes light as foam, card and board do: without shine. Colours at corners are sRGB bytes. */
export function dullMaterial({ nap, grain }: Dullness, parameters: MeshLambertMaterialParameters): MeshLambertMaterial {
  const material = new MeshLambertMaterial({ ...parameters });
  const grainNow = { value: grain };
  material.userData = { grain, grainNow };
  material.onBeforeCompile = (shader) => {
    shader.uniforms.nap = { value: nap };
    shader.uniforms.grain = grainNow;
    shader.vertexShader = shader.vertexShader
      .replace('void main() {', 'varying vec3 vPlace;\nvoid main() {')
      .replace('#include <color_vertex>', DECODE)
      .replace(
        '#include <project_vertex>',
        '#include <project_vertex>\nvPlace = (modelMatrix * vec4(transformed, 1.0)).xyz;',
      );
    shader.fragmentShader = shader.fragmentShader
      .replace('void main() {', NOISE)
      .replace('#include <color_fragment>', GRAIN)
      .replace('#include <opaque_fragment>', NAP);
  };
  material.customProgramCacheKey = () => 'dull';
  return material;
}

/** Takes the grain off a dull surface whose colours are a measure, or puts it back. */
export function showGrain(material: MeshLambertMaterial, isShown: boolean): void {
  const { grain, grainNow } = material.userData as { grain: number; grainNow: { value: number } };
  grainNow.value = isShown ? grain : 0;
}

/** Lets lines drawn on a surface win against it. */
const BEHIND_LINES = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 } as const;
/** What lies on the bench is put back so: seen from afar, foam of 2 mm would be put back through its top. */
const UNDER_SHEETS = { polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 2 } as const;

export const skinMaterial = (): MeshLambertMaterial =>
  dullMaterial(
    { nap: 0.16, grain: 0.1 },
    { vertexColors: true, side: FrontSide, shadowSide: DoubleSide, ...BEHIND_LINES },
  );

/** Cut foam shows its cells. */
export const cutFaceMaterial = (): MeshLambertMaterial =>
  dullMaterial({ nap: 0.05, grain: 0.28 }, { side: DoubleSide, shadowSide: DoubleSide, ...BEHIND_LINES });

export const sheetMaterial = (): MeshLambertMaterial =>
  dullMaterial({ nap: 0.05, grain: 0.12 }, { vertexColors: true, shadowSide: DoubleSide, ...BEHIND_LINES });

/** The sculpt is often an open shell and is seen from inside too. */
export const sculptMaterial = (): MeshLambertMaterial =>
  dullMaterial(
    { nap: 0.05, grain: 0 },
    { vertexColors: true, side: DoubleSide, shadowSide: DoubleSide, ...BEHIND_LINES },
  );

export const benchMaterial = (): MeshLambertMaterial =>
  dullMaterial({ nap: 0, grain: 0.035 }, { side: FrontSide, ...UNDER_SHEETS });
