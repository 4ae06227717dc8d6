import { fail, ok } from '../../base/result.ts';
import { vec2 } from '../../geom/vec.ts';
import { arc } from '../../geom/outline.ts';
import { degrees, measures, mm, mm2, mm3, plain } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import type { ShapeKind } from './shape-kind.ts';
import { choice, length } from './size-fields.ts';

const MOST_LAYERS = 1000;

/** A blade that rises evenly to its middle, built of sheets: each is one step narrower, half width x layer / rise; slope atan(rise / half width). */
export const TAPERED_LAYERS: ShapeKind = {
  name: 'tapered_layers',
  also: ['layers', 'blade_layers', 'layered_blade'],
  says: 'Tapered blade of sheets, each one step narrower, their edges cut on the slope.',
  sizes: [
    length('half_width', 'from the middle to the edge', { default: 30 }),
    length('rise', 'height in the middle', { default: 12, also: ['height'] }),
    length('layer', 'thickness of each sheet', { default: 2, also: ['layer_thickness', 'thickness'] }),
    length('length', 'of the blade', { default: 300 }),
  ],
  develop: (sizes) => {
    const [half, rise, layer, long] = ['half_width', 'rise', 'layer', 'length'].map((name) => sizes.num(name));
    const layers = Math.ceil(rise / layer - 1e-9);
    if (layers > MOST_LAYERS)
      return fail('shape/sizes', `There would be more than ${MOST_LAYERS} layers: make layer thicker.`);
    const step = (half * layer) / rise;
    const bottom = Array.from({ length: layers }, (_, i) => half - i * step);
    const top = bottom.map((one) => Math.max(0, one - step));
    const tilt = Math.atan2(half, rise);
    const tiltDeg = (180 * tilt) / Math.PI;
    const pieces = bottom.map((one, i) => {
      const [a, b, c, d] = [vec2(-one, 0), vec2(one, 0), vec2(one, long), vec2(-one, long)];
      return piece(`layer ${i + 1}`, [
        side('end', a, b),
        side('right edge', b, c, { bevelDeg: -tiltDeg }),
        side('far end', c, d),
        side('left edge', d, a, { bevelDeg: -tiltDeg }),
      ]);
    });
    return ok({
      pieces,
      measures: measures({
        layers: plain(layers),
        step: mm(step),
        slope_from_sheet_deg: degrees(Math.atan2(rise, half)),
        cut_tilt_from_square_deg: degrees(tilt),
        layer_half_widths_bottom_face: mm(bottom),
        layer_half_widths_top_face: mm(top),
        layer_widths: mm(bottom.map((one) => 2 * one)),
        slope_width: mm(Math.hypot(half, rise)),
        cut_width: mm(Math.hypot(step, layer)),
        stacked_height: mm(layers * layer),
        edge_included_angle_deg: degrees(Math.atan2(rise, half)),
        section_area: mm2(half * rise),
        volume: mm3(half * rise * long),
        sanded_volume: mm3(bottom.reduce((sum, one) => sum + 2 * one * layer, 0) * long - half * rise * long),
      }),
    });
  },
};

const RULE = choice(
  'rule',
  'where a layer has its size: larger leaves foam to sand off, smaller leaves hollows to fill',
  ['larger', 'middle', 'smaller'],
);

/** Sphere or dome of stacked discs, radius sqrt(R² - z²) at height z. */
export const SPHERE_LAYERS: ShapeKind = {
  name: 'sphere_layers',
  also: ['layered_sphere'],
  says: 'Sphere or half sphere stacked of discs of sheet.',
  sizes: [
    length('radius', 'radius of the sphere', { default: 100 }),
    length('layer', 'thickness of the sheet', { default: 10, also: ['layer_thickness', 'thickness'] }),
    RULE,
    choice('part', 'the whole sphere, or half of it on its flat side', ['sphere', 'half']),
    length('core_diameter', 'hole through all discs; 0 for none', { default: 0, least: 0 }),
  ],
  develop: (sizes) => {
    const [radius, layer, core] = ['radius', 'layer', 'core_diameter'].map((name) => sizes.num(name));
    const isHalf = sizes.word('part') === 'half';
    const high = isHalf ? radius : 2 * radius;
    const layers = Math.ceil(high / layer - 1e-9);
    if (layers > MOST_LAYERS)
      return fail('shape/sizes', `There would be more than ${MOST_LAYERS} layers: make layer thicker.`);
    const z = (i: number): number => (isHalf ? i * layer : (i - layers / 2) * layer);
    const at = (height: number): number => Math.sqrt(Math.max(0, (radius - height) * (radius + height)));
    const rule = sizes.word('rule');
    const radii = Array.from({ length: layers }, (_, i) => {
      const [a, b] = [z(i), z(i + 1)];
      const near = a < 0 && b > 0 ? 0 : Math.min(Math.abs(a), Math.abs(b));
      return at(rule === 'larger' ? near : rule === 'smaller' ? Math.max(Math.abs(a), Math.abs(b)) : (a + b) / 2);
    });
    return ok(
      stackOf(
        radii,
        layer,
        core,
        layers,
        ((isHalf ? 2 : 4) / 3) * Math.PI * radius ** 3,
        radii.map((_, i) => z(i)),
      ),
    );
  },
};

/** Cone or frustum of stacked discs. */
export const CONE_LAYERS: ShapeKind = {
  name: 'cone_layers',
  also: ['layered_cone'],
  says: 'Cone or frustum stacked of discs of sheet.',
  sizes: [
    length('base_radius', 'radius of the base', { default: 60, also: ['large_radius'] }),
    length('top_radius', 'radius of the top; 0 for a cone', { default: 0, least: 0, also: ['small_radius'] }),
    length('height', 'from base to top', { default: 100 }),
    length('layer', 'thickness of the sheet', { default: 10, also: ['layer_thickness', 'thickness'] }),
    RULE,
    length('core_diameter', 'hole through all discs; 0 for none', { default: 0, least: 0 }),
  ],
  develop: (sizes) => {
    const [base, top, height, layer, core] = ['base_radius', 'top_radius', 'height', 'layer', 'core_diameter'].map(
      (name) => sizes.num(name),
    );
    const layers = Math.ceil(height / layer - 1e-9);
    if (layers > MOST_LAYERS)
      return fail('shape/sizes', `There would be more than ${MOST_LAYERS} layers: make layer thicker.`);
    const at = (z: number): number => base + ((top - base) * Math.min(z, height)) / height;
    const rule = sizes.word('rule');
    const radii = Array.from({ length: layers }, (_, i) => {
      const [a, b] = [at(i * layer), at((i + 1) * layer)];
      return rule === 'larger' ? Math.max(a, b) : rule === 'smaller' ? Math.min(a, b) : at((i + 0.5) * layer);
    });
    return ok(
      stackOf(
        radii,
        layer,
        core,
        layers,
        (Math.PI / 3) * height * (base ** 2 + base * top + top ** 2),
        radii.map((_, i) => i * layer),
      ),
    );
  },
};

function stackOf(
  radii: readonly number[],
  layer: number,
  core: number,
  layers: number,
  volume: number,
  heights: readonly number[],
) {
  const hole = core / 2;
  const origin = vec2(0, 0);
  const pieces = radii.flatMap((radius, i) =>
    radius <= Math.max(hole, 1e-9)
      ? []
      : [
          piece(
            `layer ${i + 1}`,
            [edge('rim', arc(origin, radius, 0, 2 * Math.PI))],
            hole > 0 ? { holes: [[edge('core hole', arc(origin, hole, 0, -2 * Math.PI))]] } : {},
          ),
        ],
  );
  const whole = radii.reduce((sum, radius) => sum + Math.PI * radius ** 2 * layer, 0);
  return {
    pieces,
    measures: measures({
      layers: plain(layers),
      layer_radii: mm(radii),
      layer_diameters: mm(radii.map((one) => 2 * one)),
      layer_heights: mm(heights),
      stacked_height: mm(layers * layer),
      stacked_volume: mm3(whole),
      volume: mm3(volume),
      sanded_volume: mm3(whole - volume),
      sheet_area: mm2(pieces.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)),
    }),
  };
}
