import type { Finding } from '../base/finding.ts';
import type { Ring } from '../geom/ring.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';

/**
 * Where a layer has its outline: `larger` holds all of the solid between its two faces, so that foam is only sanded off; `smaller` lies wholly
 * in the solid, so that hollows are only filled; `middle` is the section half way up.
 */
export type StackRule = 'larger' | 'middle' | 'smaller';

/** Where the rest lies when the sheets do not come to the height of the solid: over its top, under its foot, or half and half. */
export type StackSeat = 'bottom' | 'middle' | 'top';

/** Dowels through the layers, mm. */
export interface DowelWish {
  readonly diameterMm: number;
  /** How much wider the hole is. */
  readonly clearanceMm: number;
  /** Least foam between a hole and the finished surface. */
  readonly marginMm: number;
}

/** A pipe or rod through all layers, mm. */
export interface CoreWish {
  readonly diameterMm: number;
  readonly clearanceMm: number;
  /** Least foam round the hole. */
  readonly marginMm: number;
  /** Its place across the axis, in the frame of the stack; left out, where all layers have most room. */
  readonly at?: { readonly x: number; readonly y: number };
}

/** How a solid is to be stacked. */
export interface StackWish {
  /** Direction from the first layer to the last, any length over 0. */
  readonly axis: Vec3;
  readonly rule: StackRule;
  /** Thicknesses of sheet in hand, mm, each over 0. */
  readonly sheetsMm: readonly number[];
  readonly seat: StackSeat;
  readonly dowels?: DowelWish;
  readonly core?: CoreWish;
  /** Wall of hollow layers, mm, > 0; left out, layers are solid. */
  readonly wallMm?: number;
  /** Where the hollow runs out of the stack; left out, a wall shuts it at both ends. */
  readonly openAt?: 'bottom' | 'top' | 'both';
  /** Another skin that the foam stays away from; left out, it may reach the surface of the solid. */
  readonly cover?: CoverWish;
}

/** Foam stays under a skin of another material. */
export interface CoverWish {
  /** Least distance from the foam to the skin, mm, > 0. */
  readonly mm: number;
  /** Closed surface, mm, faces outward, in the frame of the model: the solid itself, or one that reaches on where nothing is to cover the foam. */
  readonly skin: Mesh;
}

/** A round hole in the frame of the stack, mm. */
export interface StackHole {
  readonly kind: 'dowel' | 'core';
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
}

/** One piece of foam in a layer, in the frame of the stack: x y seen from the last layer. */
export interface StackPiece {
  /** `7`, or `7a` and `7b` where the layer has more than one. */
  readonly name: string;
  readonly outer: Ring;
  /** Openings of the solid itself and the hollow of a wall; clockwise. */
  readonly openings: readonly Ring[];
  readonly holes: readonly StackHole[];
  /** Where its number stands: far from every edge. */
  readonly labelAt: { readonly x: number; readonly y: number };
  /** Outline of the next layer where it runs on this piece, x y per corner, open lines. */
  readonly placing: readonly Float64Array[];
  /** The pieces of the layer before that it is glued on, and on how much of it, holes taken out, mm². */
  readonly restsOn: readonly { readonly name: string; readonly areaMm2: number }[];
  /** Area of the piece with its openings and holes taken out, mm². */
  readonly areaMm2: number;
}

/** What stands over the finished surface or under it. */
export interface StackRest {
  readonly volumeMm3: number;
  /** The volume is right to this much, mm³. */
  readonly boundMm3: number;
  /** Greatest distance to the finished surface at the places looked at, mm; nowhere is it more than this and `depthBoundMm`. */
  readonly depthMm: number;
  readonly depthBoundMm: number;
}

/** A layer, counted from 1 at the start of the axis. */
export interface StackLayer {
  readonly number: number;
  readonly thicknessMm: number;
  /** Where it begins and ends along the axis, mm, in the frame of the stack. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly pieces: readonly StackPiece[];
  /** Its outlines before hollow and holes are taken out, as rings: outer ones counter-clockwise, openings clockwise. */
  readonly outline: readonly Ring[];
  /** The finished surface at the faces of the layer, as rings: just over the lower face and just under the upper one. */
  readonly lowerSection: readonly Ring[];
  readonly upperSection: readonly Ring[];
  /** Area within its outlines, before hollow and holes, mm², and how far rounding to the grid may put it off. */
  readonly outlineAreaMm2: number;
  readonly areaBoundMm2: number;
  /** Volume of the solid between the faces of the layer, mm³. */
  readonly solidMm3: number;
  readonly sand: StackRest;
  readonly fill: StackRest;
}

/** A dowel from one layer to another. */
export interface StackDowel {
  readonly x: number;
  readonly y: number;
  readonly fromLayer: number;
  readonly toLayer: number;
  readonly lengthMm: number;
}

/** One picture of the stack cut along its axis: the steps of the layers against the outline of the solid. */
export interface StackSideView {
  /** The direction of the frame that runs to the right. */
  readonly across: 'x' | 'y';
  /** Where the cut lies on the other direction, mm. */
  readonly atMm: number;
  /** Closed outlines of the solid, across and along the axis. */
  readonly solid: readonly Ring[];
  /** left right from to of each stretch of foam, mm, and its layer. */
  readonly steps: readonly {
    readonly layer: number;
    readonly left: number;
    readonly right: number;
    readonly from: number;
    readonly to: number;
  }[];
}

/** Which directions of the model the frame of the stack has: x and y across, z along the axis; length 1, square to each other. */
export interface StackFrame {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
}

/** A solid as layers of sheet. */
export interface Stack {
  readonly frame: StackFrame;
  readonly rule: StackRule;
  /** Height of the solid along the axis and of the layers, mm. */
  readonly heightMm: number;
  readonly stackedMm: number;
  readonly layers: readonly StackLayer[];
  readonly dowels: readonly StackDowel[];
  /** Volume of the solid, of the layers within their outlines, and of the foam that is left of these, mm³. */
  readonly solidMm3: number;
  readonly stackedMm3: number;
  readonly foamMm3: number;
  /** Volume of the solid beyond the first and last layer, mm³. */
  readonly beyondMm3: number;
  readonly sideViews: readonly StackSideView[];
  readonly findings: readonly Finding[];
}
