import { ARC } from './arc-shape.ts';
import { BEND, BEND_STRAIN, EMPIRICAL_BEND } from './bend.ts';
import { BEVEL, FOLD_GROOVE } from './bevel.ts';
import { BOX } from './box.ts';
import { BRANCH } from './branch.ts';
import { DOME } from './dome.ts';
import { HALF_ROUND_EDGING, QUARTER_ROUND_EDGING } from './edging.ts';
import { ELBOW } from './elbow.ts';
import { BOX_JOINT, COMB_JOINT } from './finger-joint.ts';
import { CONE, CONE_FROM_DISC, FRUSTUM, TAPERED_WRAP } from './frustum.ts';
import { HOPPER } from './hopper.ts';
import { CONE_LAYERS, SPHERE_LAYERS, TAPERED_LAYERS } from './layers.ts';
import { OBLIQUE_CONE } from './oblique-cone.ts';
import { ELLIPSE, REGULAR_POLYGON } from './plane-figures.ts';
import { PRISM } from './prism.ts';
import { PYRAMID } from './pyramid.ts';
import { RING } from './ring.ts';
import { SEAM_ALLOWANCE } from './seam-allowance.ts';
import type { ShapeKind } from './shape-kind.ts';
import { ANGLE_DEFECTS, ARCHIMEDEAN_SOLIDS, PLATONIC_SOLIDS, SOLIDS } from './solids.ts';
import { DOME_GORES, SPHERE_GORES } from './sphere-gores.ts';
import { SPHERE_ZONES } from './sphere-zones.ts';
import { SPHERICAL_CAP } from './spherical-cap.ts';
import { SQUARE_TO_ROUND } from './square-to-round.ts';
import { STAR } from './star.ts';
import { TORUS_GORES, TORUS_LAYERS, TORUS_ZONES } from './torus.ts';
import { TRUNCATED_CYLINDER } from './truncated-cylinder.ts';
import { HELICAL_STRIP, TAPERED_HELICAL_STRIP } from './winding.ts';
import { WRAP } from './wrap.ts';

/** Every kind of shape that is developed from its sizes, in the order in which they are listed. */
export const SHAPE_KINDS: readonly ShapeKind[] = [
  WRAP,
  TAPERED_WRAP,
  CONE,
  FRUSTUM,
  CONE_FROM_DISC,
  OBLIQUE_CONE,
  TRUNCATED_CYLINDER,
  ELBOW,
  BRANCH,
  SQUARE_TO_ROUND,
  SPHERE_GORES,
  DOME_GORES,
  SPHERE_ZONES,
  SPHERICAL_CAP,
  SPHERE_LAYERS,
  CONE_LAYERS,
  TORUS_LAYERS,
  TORUS_GORES,
  TORUS_ZONES,
  PRISM,
  PYRAMID,
  HOPPER,
  BOX,
  ...SOLIDS,
  PLATONIC_SOLIDS,
  ARCHIMEDEAN_SOLIDS,
  DOME,
  REGULAR_POLYGON,
  ELLIPSE,
  STAR,
  RING,
  HALF_ROUND_EDGING,
  QUARTER_ROUND_EDGING,
  BOX_JOINT,
  COMB_JOINT,
  HELICAL_STRIP,
  TAPERED_HELICAL_STRIP,
  TAPERED_LAYERS,
  BEVEL,
  FOLD_GROOVE,
  BEND,
  EMPIRICAL_BEND,
  BEND_STRAIN,
  ARC,
  ANGLE_DEFECTS,
  SEAM_ALLOWANCE,
];
