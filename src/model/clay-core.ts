import type { Finding } from '../base/finding.ts';
import type { FoamId } from '../base/ids.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';

/** How an area of the sculpt is to be modelled in clay over a core of sheet. */
export interface ClayCoreWish {
  /** Least clay over the core, mm, > 0. */
  readonly coverMm: number;
  /** Thicknesses of sheet in hand, mm, each over 0. */
  readonly sheetsMm: readonly number[];
  /** Direction from the core's first sheet to its last, any length over 0; left out, the mean direction that the area faces. */
  readonly axis?: Vec3;
  /** Wall of a core that is hollow from its base, mm, > 0: for what is worn. Left out, the core is whole. */
  readonly wallMm?: number;
  /** What the label of the clay in hand says beyond its drying; left out, neither mass nor packs are told. */
  readonly label?: ClayLabel;
}

/** The same in a project: its sheets are foams of the stock, one or more, the usual one first. */
export interface AreaInClay extends Omit<ClayCoreWish, 'sheetsMm'> {
  readonly foams: readonly FoamId[];
}

/** Figures of a pack, as its label says. */
export interface ClayLabel {
  /** Of the wet clay, g/cm³, > 0. */
  readonly gPerCm3?: number;
  /** What a pack holds, ml or g, > 0. */
  readonly packMl?: number;
  readonly packG?: number;
}

/** Where the area ended on the sculpt: what stays has an open edge there, and the core is glued into it. */
export interface ClayBorder {
  /** Corners in the numbers of the file, as the area has them on its left; closed without a repeated last one. */
  readonly vertices: readonly number[];
  readonly lengthMm: number;
  /** Farthest corner from the plane of the rim, mm: how far the base is from flat. */
  readonly offPlaneMm: number;
}

/** An area closed to a solid. All mm, in the frame of the model. */
export interface AreaSolid {
  /** Area and base together: closed, faces outward. */
  readonly solid: Mesh;
  /** The area, with walls from its rims straight down beyond the base: clay is wanted over the area alone, so the core may stand on the base. */
  readonly skin: Mesh;
  /** Triangles of `solid` that are the area: the first so many. */
  readonly areaTriangles: number;
  /** Length 1. */
  readonly axis: Vec3;
  readonly areaMm2: number;
  readonly borders: readonly ClayBorder[];
  readonly findings: readonly Finding[];
}

/** What an area comes to when it is modelled in clay. JSON-ready. */
export interface ClayCore {
  /** Polygons of the file that leave the flattening, ascending. */
  readonly faces: readonly number[];
  readonly axis: Vec3;
  readonly coverMm: number;
  /** How the area was closed: by flat triangles across each rim, or it was closed by itself. */
  readonly closedBy: 'rims' | 'itself';
  /** Of the solid under the area, of the core's sheets within their outlines, and what is left for clay, mm³; right to `boundMm3`. */
  readonly solidMm3: number;
  readonly coreMm3: number;
  readonly clayMm3: number;
  readonly boundMm3: number;
  /** The modelled face, mm². */
  readonly areaMm2: number;
  readonly layers: number;
  /** Deepest clay under its face, mm: no place lies deeper than `depthMm + depthBoundMm`. */
  readonly depthMm: number;
  readonly depthBoundMm: number;
  /** Volume over face, mm. */
  readonly meanMm: number;
  /** Least clay found over the corners of the core, mm. */
  readonly leastMm: number;
  readonly clay: ClayOfCore;
  readonly borders: readonly ClayBorder[];
  /** Both sides that are glued where the core meets the cut edge of the wall round it, mm²; 0 where no wall was told. */
  readonly glueMm2: number;
  readonly findings: readonly Finding[];
}

/** Clay to buy and how long it takes. */
export interface ClayOfCore {
  readonly id: string;
  readonly name: string;
  /** Wet volume, ml, with what it loses as it dries. */
  readonly wetMl: number;
  readonly massG: number | null;
  readonly packs: number | null;
  /** Coats, each dried before the next: where it has its mean thickness, and where it is deepest. */
  readonly coats: readonly [mean: number, deepest: number];
  readonly dryH: readonly [mean: number, deepest: number];
  /** Ids of cautions. */
  readonly cautions: readonly string[];
  /** Where drying and shrinking come from, whole sentences. */
  readonly sources: readonly string[];
}
