import { MM_PER_INCH } from '../base/format-length.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { coverageM2PerL } from '../model/coatings.ts';
import { PAPERS } from '../model/papers.ts';
import type { Patch } from '../model/patch.ts';
import { energyOf } from '../steps/flatten/dirichlet-energy.ts';
import { measureStretch } from '../steps/flatten/measure-stretch.ts';
import { restShapes } from '../steps/flatten/rest-shapes.ts';
import { measures, mm, mm2, percent, plain } from '../steps/shapes/measures.ts';
import { warning } from '../steps/shapes/rolled-sheet.ts';
import type { Development, ShapeKind } from '../steps/shapes/shape-kind.ts';
import { angle, count, figure, length } from '../steps/shapes/size-fields.ts';
import type { Sizes } from '../steps/shapes/sizes.ts';
import { edgeGlueMm2, massG } from '../steps/shop/quantities.ts';
import { tilesAlong } from '../steps/tile/lattice.ts';

/** PDF: 1 unit is 1/72 in; CSS: 1 px is 1/96 in. */
const POINTS_PER_MM = 72 / MM_PER_INCH;
const PIXELS_PER_MM = 96 / MM_PER_INCH;
/** Longest side of a PDF page (ISO 32000-1, annex C). */
const MOST_PAGE_UNITS = 14_400;

const PAGE_UNITS: ShapeKind = {
  name: 'page_units',
  also: ['units', 'paper_units'],
  says: 'Units of paper and screen: points, pixels and sizes of papers.',
  sizes: [length('length', 'a length to convert', { default: 100, least: 0 })],
  develop: (sizes) => {
    const papers = PAPERS.flatMap(({ name, widthMm, heightMm }) => {
      const key = name.replace(/\s+/g, '_');
      return [
        [`${key}_mm`, mm([widthMm, heightMm])] as const,
        [`${key}_pt`, plain([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM], 'pt')] as const,
        [`${key}_in`, plain([widthMm / MM_PER_INCH, heightMm / MM_PER_INCH], 'in')] as const,
      ];
    });
    const long = sizes.num('length');
    return ok({
      measures: measures({
        pt_per_mm: plain(POINTS_PER_MM, 'pt/mm'),
        px96_per_mm: plain(PIXELS_PER_MM, 'px/mm'),
        mm_per_pt: plain(1 / POINTS_PER_MM, 'mm/pt'),
        mm_per_px96: plain(1 / PIXELS_PER_MM, 'mm/px'),
        mm_per_in: plain(MM_PER_INCH, 'mm/in'),
        length_pt: plain(long * POINTS_PER_MM, 'pt'),
        length_px96: plain(long * PIXELS_PER_MM, 'px'),
        length_in: plain(long / MM_PER_INCH, 'in'),
        ...Object.fromEntries(papers),
        max_page_mm_14400_units: mm(MOST_PAGE_UNITS / POINTS_PER_MM),
      }),
    });
  },
};

const PAGE_TILES: ShapeKind = {
  name: 'page_tiles',
  also: ['tiles'],
  says: 'Pages a drawing needs along and across, from what a page prints and how much neighbours overlap.',
  sizes: [
    length('length', 'of the drawing', { default: 500, also: ['L', 'drawing_length'] }),
    length('height', 'of the drawing', { default: 300 }),
    length('printable_length', 'what a page shows, along', {
      default: 190,
      also: ['printable_width', 'printable', 'u'],
    }),
    length('printable_height', 'the same across', { default: 277 }),
    length('overlap', 'what neighbours share', { default: 10, least: 0, also: ['o'] }),
    figure('correction', 'how many times too small the printer prints', '', { default: 1, over: 0, most: 2 }),
  ],
  develop: (sizes) => {
    const [long, high, u, v, overlap, correction] = [
      'length',
      'height',
      'printable_length',
      'printable_height',
      'overlap',
      'correction',
    ].map((name) => sizes.num(name));
    const [columnsMm, rowsMm] = [u / correction, v / correction];
    if (!(overlap < Math.min(columnsMm, rowsMm)))
      return fail('shape/sizes', 'The overlap must be less than what a page shows.');
    const [columns, rows] = [
      tilesAlong(long, columnsMm, columnsMm - overlap),
      tilesAlong(high, rowsMm, rowsMm - overlap),
    ];
    return ok({
      measures: measures({
        columns: plain(columns),
        tiles_along_length: plain(columns),
        rows: plain(rows),
        pages: plain(columns * rows),
        tiles: plain(columns * rows),
        drawn_100_mm: mm(100 * correction),
      }),
    });
  },
};

const rowsAlike = (...rows: readonly (readonly number[])[]): Result<readonly (readonly number[])[]> => {
  const most = Math.max(...rows.map((row) => row.length));
  if (rows.some((row) => row.length !== 1 && row.length !== most))
    return fail('shape/sizes', `Give one of each, or ${most} of each: the rows are of different lengths.`);
  return ok(rows.map((row) => Array.from({ length: most }, (_, i) => row[row.length === 1 ? 0 : i])));
};

const SHEET_MASS: ShapeKind = {
  name: 'sheet_mass',
  also: ['mass'],
  says: 'Mass of sheet: area times thickness times density.',
  sizes: [
    figure('area_m2', 'areas', 'm²', { default: [1], isList: true, least: 0, also: ['area'] }),
    length('thickness_mm', 'thicknesses', { default: [10], isList: true, also: ['thickness'] }),
    figure('density_kg_m3', 'densities', 'kg/m³', { default: [100], isList: true, over: 0, also: ['density'] }),
  ],
  develop: (sizes) => {
    const rows = rowsAlike(sizes.row('area_m2'), sizes.row('thickness_mm'), sizes.row('density_kg_m3'));
    if (!rows.ok) return rows;
    const [areas, thicknesses, densities] = rows.value;
    const masses = areas.map((area, i) => massG(1e6 * area, thicknesses[i], densities[i]) / 1000);
    return ok({
      measures: measures({
        mass_kg: plain(masses, 'kg'),
        mass_g: plain(
          masses.map((one) => 1000 * one),
          'g',
        ),
        total_mass_kg: plain(
          masses.reduce((sum, one) => sum + one, 0),
          'kg',
        ),
        mass_per_area_kg_m2: plain(
          thicknesses.map((t, i) => (t / 1000) * densities[i]),
          'kg/m²',
        ),
      }),
    });
  },
};

const COATING: ShapeKind = {
  name: 'coating',
  also: ['coverage'],
  says: 'Coating by its solids: what a litre covers, 10 times solids in per cent over dry film in µm.',
  sizes: [
    figure('solids_percent', 'solids by volume', '%', {
      default: 65,
      over: 0,
      most: 100,
      also: ['volume_solids_percent'],
    }),
    figure('dry_film_um', 'thickness of the dry film', 'µm', { default: 125, over: 0, most: 10_000, also: ['dft_um'] }),
    figure('area_m2', 'area to be coated', 'm²', { default: 1, least: 0, also: ['area'] }),
    count('coats', 'coats', { default: 1, most: 100 }),
    figure('loss_percent', 'what is lost', '%', { default: 0, least: 0, most: 99 }),
  ],
  develop: (sizes) => {
    const [solids, film, area, coats, loss] = ['solids_percent', 'dry_film_um', 'area_m2', 'coats', 'loss_percent'].map(
      (name) => sizes.num(name),
    );
    const coverage = coverageM2PerL({ solidsPct: solids, dryFilmUm: film });
    const practical = coverage * (1 - loss / 100);
    return ok({
      measures: measures({
        m2_per_litre: plain(coverage, 'm²/l'),
        practical_m2_per_litre: plain(practical, 'm²/l'),
        litres: plain((area * coats) / practical, 'l'),
        millilitres: plain((1000 * area * coats) / practical, 'ml'),
        wet_film_um: plain((100 * film) / solids, 'µm'),
        wet_film_per_coat_um: plain((100 * film) / solids, 'µm'),
        total_dry_film_um: plain(film * coats, 'µm'),
      }),
    });
  },
};

const SEAM_GLUE: ShapeKind = {
  name: 'seam_glue',
  also: ['glue_area', 'glue'],
  says: 'Glue on both cuts of a seam: its length times the width of the cut, t / cos(bevel), twice.',
  sizes: [
    length('seam_length', 'length of the seam', { default: 1000, also: ['length'] }),
    length('thickness', 'thickness of the sheet', { default: 10, most: 200 }),
    angle('bevel_deg', 'lean of the cut from square', {
      default: 0,
      least: -89,
      most: 89,
      also: ['bevel_from_square_deg'],
    }),
    figure('coverage_m2_per_litre', 'what a litre of glue covers', 'm²/l', { default: 5, over: 0, also: ['coverage'] }),
  ],
  develop: (sizes) => {
    const [long, thicknessMm, bevel, coverage] = ['seam_length', 'thickness', 'bevel_deg', 'coverage_m2_per_litre'].map(
      (name) => sizes.num(name),
    );
    const own = edgeGlueMm2(
      { thicknessMm },
      { stationMm: Float64Array.of(0, long), bevelDeg: Float64Array.of(bevel, bevel) },
      { kind: 'butt', allowanceMm: 0 },
    );
    return ok({
      measures: measures({
        cut_width: mm(own / long),
        glue_area_one_side: mm2(own),
        glue_area: mm2(2 * own),
        glue_area_m2: plain((2 * own) / 1e6, 'm²'),
        millilitres: plain((2 * own) / 1e3 / coverage, 'ml'),
      }),
    });
  },
};

/** Measures of a map from the flat piece to the finished shape, by what measures pieces: one triangle that the map stretches. */
const STRETCH: ShapeKind = {
  name: 'stretch',
  also: ['distortion'],
  says: 'Measures of a stretch given by its 2 x 2 matrix: singular values, area, conformal ratio, energies and strains.',
  sizes: [
    figure('J', 'matrix of the map, row by row', '', {
      default: [1.1, 0, 0, 0.95],
      isList: true,
      least: -1000,
      most: 1000,
      also: ['matrix', 'jacobian'],
    }),
  ],
  develop: (sizes: Sizes): Result<Development> => {
    const J = sizes.row('J');
    if (J.length !== 4)
      return fail('shape/sizes', 'J takes four numbers: the first row of the matrix, then the second.');
    const [a, b, c, d] = J;
    const det = a * d - b * c;
    if (!(Math.abs(det) > 1e-12)) return fail('shape/sizes', 'The matrix leaves no area: change J.');
    const patch = { meshVertices: Uint32Array.of(0, 1, 2), triangles: Uint32Array.of(0, 1, 2) } as unknown as Patch;
    const rest = restShapes(patch, Float64Array.of(0, 0, 0, a, c, 0, b, d, 0));
    const flat = Float64Array.of(0, 0, 1, 0, 0, 1);
    const { major, minor } = measureStretch(rest, flat);
    const [sigma1, sigma2] = [major[0], minor[0]];
    return ok({
      measures: measures({
        sigma1: plain(sigma1),
        sigma2: plain(sigma2),
        area_ratio: plain(det),
        conformal_ratio: plain(sigma1 / sigma2),
        ARAP_density: plain((sigma1 - 1) ** 2 + (sigma2 - 1) ** 2),
        symmetric_dirichlet: plain(energyOf(rest, flat, Float64Array.of(1))),
        dirichlet: plain((sigma1 ** 2 + sigma2 ** 2) / 2),
        max_stretch_percent: percent(100 * (sigma1 - 1)),
        max_squash_percent: percent(100 * (1 - sigma2)),
        area_change_percent: percent(100 * (det - 1)),
        green_strain_xx: plain((a * a + c * c - 1) / 2),
        green_strain_yy: plain((b * b + d * d - 1) / 2),
        green_strain_xy: plain((a * b + c * d) / 2),
      }),
      warnings: det < 0 ? [warning('shape/flip', 'The matrix turns the piece over.')] : [],
    });
  },
};

const STRETCH_BOUND: ShapeKind = {
  name: 'stretch_bound',
  also: ['dirichlet_bound'],
  says: 'Even stretch that a bound on the symmetric Dirichlet energy allows, both ways and along one axis.',
  sizes: [figure('bound', 'energy; true size has 4', '', { default: 4.1, least: 4, most: 1e6 })],
  develop: (sizes) => {
    const bound = sizes.num('bound');
    // s² + 1/s² = q, the larger root.
    const scaleFor = (q: number): number => Math.sqrt((q + Math.sqrt(Math.max(0, (q - 2) * (q + 2)))) / 2);
    const [both, one] = [scaleFor(bound / 2), scaleFor(bound - 2)];
    return ok({
      measures: measures({
        isotropic_scale: plain(both),
        one_axis_scale: plain(one),
        isotropic_stretch_percent: percent(100 * (both - 1)),
        one_axis_stretch_percent: percent(100 * (one - 1)),
        isotropic_squash_percent: percent(100 * (1 - 1 / both)),
      }),
    });
  },
};

/** Figures of the trade that other steps work out, offered beside the shapes. */
export const SHAPE_FIGURES: readonly ShapeKind[] = [
  PAGE_UNITS,
  PAGE_TILES,
  SHEET_MASS,
  COATING,
  SEAM_GLUE,
  STRETCH,
  STRETCH_BOUND,
];
