import { rad, vec3, type Vec3 } from '../src/geom/vec.ts';
import { gridCells, type Grid } from './kit/cells.ts';
import { through } from './kit/curves.ts';
import { ModelBuilder, type SampleModel } from './kit/model-builder.ts';
import { evenly, ruledGrid } from './kit/surfaces.ts';

/** Edges between the eight panels, degrees from the front ridge; the last one is the lip of the split. */
const PANEL_EDGES_DEG = [0, 45, 90, 135, 173];
const STEPS_PER_PANEL = 3;
const BODY_ROWS = 6;
const FLARE_ROWS = 2;
/** 0: flat panels, 1: a round tube. */
const ROUNDNESS = 0.35;
/** How far the front ridge stands out of the ring of panels, share of the radius. */
const RIDGE = 0.09;
/** A forearm is wider than deep. */
const [WIDE, DEEP] = [1.05, 0.97];
/** Height of the crease at the wrist, mm. */
const WRIST = 30;

/** Radius of the body in mm at a height in mm: over a wrist of 175 mm girth and a forearm of 280 mm, with 6 mm of foam and 2 to 4 mm of air. */
const bodyRadius = through([WRIST, 38], [115, 48.5], [205, 55]);

/** 1 at the front ridge, falling smoothly to 0 at the split. */
const frontness = (angleDeg: number): number => ((1 + Math.cos(rad(angleDeg))) / 2) ** 2;

const handRim = (angleDeg: number): number => 6 - 22 * frontness(angleDeg);
const elbowCrease = (angleDeg: number): number => 180 + 24 * frontness(angleDeg);
const elbowRim = (angleDeg: number): number => 204 + 54 * frontness(angleDeg);

/** The point of the panelled ring of one radius (mm, at the panel edges) at a height and an angle from the front. */
function ringPoint(
  panel: number,
  share: number,
  radius: (angleDeg: number) => number,
  height: (angleDeg: number) => number,
): Vec3 {
  const [from, to] = [PANEL_EDGES_DEG[panel], PANEL_EDGES_DEG[panel + 1]];
  const angle = from + (to - from) * share;
  const flat = Math.cos(rad((to - from) / 2)) / Math.cos(rad(angle - (from + to) / 2));
  const r =
    radius(angle) * (ROUNDNESS + (1 - ROUNDNESS) * flat) * (1 + RIDGE * Math.max(0, 1 - angle / PANEL_EDGES_DEG[1]));
  return vec3(WIDE * r * Math.sin(rad(angle)), height(angle), DEEP * r * Math.cos(rad(angle)));
}

/** Half a ring, from the front ridge round the wearer's left to the split. */
function halfRing(radius: (angleDeg: number) => number, height: (angleDeg: number) => number): Vec3[] {
  const points: Vec3[] = [];
  for (let panel = 0; panel + 1 < PANEL_EDGES_DEG.length; panel++) {
    for (let step = panel === 0 ? 0 : 1; step <= STEPS_PER_PANEL; step++) {
      points.push(ringPoint(panel, step / STEPS_PER_PANEL, radius, height));
    }
  }
  return points;
}

/**
 * A forearm guard of eight panels with a ridge along the front and one split along the back, to be laced.
 * The wrist is at y = 0; both ends flare, over the hand and over the elbow.
 */
export function buildBracer(): SampleModel {
  const bracer = new ModelBuilder('bracer');
  const body: Grid = [...evenly(BODY_ROWS)].reverse().map((share) => {
    const height = (a: number): number => WRIST + (elbowCrease(a) - WRIST) * share;
    return halfRing((a) => bodyRadius(height(a)), height);
  });
  const elbow = halfRing((a) => 66 + 6 * frontness(a), elbowRim);
  const hand = halfRing((a) => 45 + 5 * frontness(a), handRim);
  bracer.across('elbow-flare', gridCells(ruledGrid(elbow, body[0], evenly(FLARE_ROWS))));
  bracer.across('body', gridCells(body));
  bracer.across('hand-flare', gridCells(ruledGrid(body[BODY_ROWS], hand, evenly(FLARE_ROWS))));
  return bracer.build();
}
