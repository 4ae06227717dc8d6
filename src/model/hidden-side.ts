import { vec3, type Vec3 } from '../geom/vec.ts';

/** Sides of the sculpt as it stands on the bench, seen from the front: which of them is seen least when the prop is worn or stands. */
export const HIDDEN_SIDES = ['back', 'under', 'left', 'right'] as const;
export type HiddenSide = (typeof HIDDEN_SIDES)[number];

/**
 * Directions in the file by which of its axes is up, as the bench stands it: a file with y or x up has its front towards +z, one with z up
 * towards -y. Left and right are the viewer's.
 */
const DIRECTIONS: Readonly<Record<'x' | 'y' | 'z', Readonly<Record<HiddenSide, Vec3>>>> = {
  x: { back: vec3(0, 0, -1), under: vec3(-1, 0, 0), left: vec3(0, 1, 0), right: vec3(0, -1, 0) },
  y: { back: vec3(0, 0, -1), under: vec3(0, -1, 0), left: vec3(-1, 0, 0), right: vec3(1, 0, 0) },
  z: { back: vec3(0, 1, 0), under: vec3(0, 0, -1), left: vec3(-1, 0, 0), right: vec3(1, 0, 0) },
};

/** Where a side of the sculpt looks to, in the directions of the file, length 1. */
export const hiddenDirection = (side: HiddenSide, up: 'x' | 'y' | 'z'): Vec3 => DIRECTIONS[up][side];
