import type { Finding, Severity } from '../../base/finding.ts';
import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import type { StackLayer, StackPiece, StackRule, StackWish } from '../../model/stack.ts';
import { HEIGHT_RIGHT_MM } from './choose-sheets.ts';
import type { CoreHole } from './core-hole.ts';
import { disc, dowelsInJoints, type DowelPlace } from './dowels.ts';
import type { Solid } from './frame.ts';
import { gluedGroups, hangingPieces } from './joints.ts';
import { areaOf, inside, without, type FineGrid } from './regions.ts';

/** Foam narrower than this tears at the knife or bends under the sander, mm (shop judgement). */
export const NARROW_MM = 5;

/** What is left of a piece a half of that farther in counts from this area, mm²: less is a tip of the outline. */
const LEAST_CORE_MM2 = 1;

/** A layer as the findings need it. */
interface Outlined {
  readonly outline: readonly Region[];
  readonly hollow: readonly Region[];
}

export function bareJoints(
  sound: readonly (readonly Region[])[],
  dowels: readonly DowelPlace[],
  grid: FineGrid,
): readonly Finding[] {
  const bare: string[] = [];
  for (let i = 0; i + 1 < sound.length; i += 1) {
    const counts = dowelsInJoints(sound, dowels, i, grid);
    if (counts.length === 0 || counts.some((count) => count < 2)) bare.push(`${i + 1} and ${i + 2}`);
  }
  if (bare.length === 0) return [];
  return [
    finding(
      'stack/no-dowel-room',
      'warning',
      `There is no room for two dowels in every part where these layers meet: ${bare.join('; ')}. Set them down by the placing lines, or take thinner dowels.`,
      bare.length,
    ),
  ];
}

export function bareLayers(
  drafts: readonly Outlined[],
  { rule, wallMm, openAt }: Pick<StackWish, 'rule' | 'wallMm' | 'openAt'>,
): readonly Finding[] {
  const empty = numbersOf(drafts, ({ outline }) => outline.length === 0);
  const findings: Finding[] = [];
  if (empty.length > 0)
    findings.push(
      finding(
        'stack/empty-layer',
        'warning',
        `Nothing is left of ${layerWords(empty)} by the ${rule === 'middle' ? 'middle' : `${rule} face`}: take thinner sheets there, or build it up.`,
        empty.length,
      ),
    );
  if (wallMm === undefined) return findings;
  const whole = numbersOf(drafts, ({ outline, hollow }) => hollow.length === 0 && outline.length > 0);
  const hollow = numbersOf(drafts, (draft) => draft.hollow.length > 0);
  if (whole.length > 0)
    findings.push(
      finding(
        'stack/not-hollow',
        'note',
        `No hollow with a wall of ${wallMm} mm fits into ${layerWords(whole)}, so ${whole.length === 1 ? 'it stays' : 'they stay'} whole.`,
        whole.length,
      ),
    );
  const shut = [
    ...(openAt === 'bottom' || openAt === 'both' ? [] : ['below']),
    ...(openAt === 'top' || openAt === 'both' ? [] : ['above']),
  ];
  if (hollow.length > 0 && shut.length > 0)
    findings.push(
      finding(
        'stack/hollow-shut',
        'note',
        `The hollow of ${layerWords(hollow)} is shut ${shut.join(' and ')} by whole foam: let the glue air before the last layer goes on, or open an end where the inside is to be reached.`,
        hollow.length,
      ),
    );
  return findings;
}

export function coreFindings(core: CoreHole | null, drafts: readonly Outlined[]): readonly Finding[] {
  if (core === null) return [];
  const none = drafts.flatMap(({ outline }, i) => (outline.length > 0 && !core.through[i] ? [i + 1] : []));
  if (none.length === 0) return [];
  return [
    finding(
      'stack/no-core-room',
      'warning',
      `The core has no room in ${layerWords(none)}, which ${none.length === 1 ? 'has' : 'have'} no hole for it: end the core there, or move it.`,
      none.length,
    ),
  ];
}

export function heightFinding(rest: number, rule: StackRule): readonly Finding[] {
  if (Math.abs(rest) <= HEIGHT_RIGHT_MM) return [];
  const off = Number(Math.abs(rest).toFixed(2));
  return [
    {
      code: 'stack/height',
      severity: 'warning',
      text:
        rest > 0
          ? `The layers come to ${off} mm less than the solid: fill the rest, or add another thickness of sheet${rule === 'smaller' ? ', or take the larger face' : ''}.`
          : `The layers come to ${off} mm more than the solid: sand the rest off, or add another thickness of sheet.`,
      value: off,
      limit: HEIGHT_RIGHT_MM,
      unit: 'mm',
      where: {},
    },
  ];
}

/** Pieces that no joint holds, pieces that hang, and those that are narrow all over or hang together by a narrow web. */
export function pieceFindings(
  solid: Solid,
  layers: readonly Pick<StackLayer, 'pieces' | 'thicknessMm'>[],
  grid: FineGrid,
): readonly Finding[] {
  const findings: Finding[] = [];
  const [, ...apart] = gluedGroups(layers);
  if (apart.length > 0) {
    const shells = shellCount(solid);
    findings.push(
      finding(
        'stack/apart',
        'warning',
        `The stack falls into ${apart.length + 1} parts, for where layers do not lie on each other nothing holds them: ${apart.map((names) => rangeWords(names)).join('; ')} ${apart.length === 1 && apart[0].length === 1 ? 'is' : 'are'} glued to no other piece. ${shells > 1 ? `The model has ${shells} surfaces of its own that may lie apart; else take` : 'Take'} the larger face, thinner sheets or another axis.`,
        apart.length + 1,
      ),
    );
  }
  const hanging = hangingPieces(layers);
  if (hanging.length > 0)
    findings.push(
      finding(
        'stack/hangs',
        'note',
        `Nothing lies under ${pieceWords(hanging)}: glue ${hanging.length === 1 ? 'it' : 'each'} under the next layer before that is set down.`,
        hanging.length,
      ),
    );
  const pieces = layers.flatMap((layer) => layer.pieces);
  const cores = pieces.map((piece) => partsFarIn(piece, grid));
  const narrow = pieces.filter((_, i) => cores[i] === 0).map(({ name }) => name);
  const webbed = pieces.filter((_, i) => cores[i] > 1).map(({ name }) => name);
  if (narrow.length > 0)
    findings.push({
      ...finding(
        'stack/narrow',
        'warning',
        `Nowhere as wide as ${NARROW_MM} mm: ${pieceWords(narrow)}. Cut ${narrow.length === 1 ? 'it' : 'them'} larger and sand, or leave ${narrow.length === 1 ? 'it' : 'them'} to filler.`,
        narrow.length,
      ),
      limit: NARROW_MM,
      unit: 'mm',
    });
  if (webbed.length > 0)
    findings.push({
      ...finding(
        'stack/web',
        'warning',
        `Held together by a web under ${NARROW_MM} mm: ${pieceWords(webbed)}. Glue the layer down before you lift it, or take a thicker wall, larger margin or thinner dowel.`,
        webbed.length,
      ),
      limit: NARROW_MM,
      unit: 'mm',
    });
  return findings;
}

/** Where the surface runs through itself its sections cover less than they count. @param twice mm³ counted twice. */
export function overlapFinding(twiceMm3: number, solidMm3: number): readonly Finding[] {
  if (twiceMm3 <= 1e-6 * solidMm3) return [];
  return [
    {
      ...finding(
        'stack/overlap',
        'warning',
        `The surface runs through itself: about ${Number((twiceMm3 / 1000).toPrecision(2))} cm³ are counted twice in the volumes of the solid and of sanding; the outlines are right. Unite the bodies first where the volumes matter.`,
        twiceMm3,
      ),
      unit: 'mm³',
    },
  ];
}

/** How many parts a piece falls into where half of the least width is taken off all round. */
function partsFarIn({ outer, openings, holes }: StackPiece, grid: FineGrid): number {
  const rounds = holes.map(({ x, y, radiusMm }) => ({ outer: disc({ x, y }, radiusMm), holes: [] }));
  const whole = [{ outer, holes: openings }];
  const foam = rounds.length === 0 ? whole : without(whole, rounds, grid);
  return inside(foam, NARROW_MM / 2).filter((part) => areaOf([part]) > LEAST_CORE_MM2).length;
}

function shellCount({ surface: { triangles, positions } }: Solid): number {
  const sets = new DisjointSets(positions.length / 3);
  for (let t = 0; t < triangles.length; t += 3) {
    sets.join(triangles[t], triangles[t + 1]);
    sets.join(triangles[t], triangles[t + 2]);
  }
  return new Set([...triangles].map((v) => sets.find(v))).size;
}

const numbersOf = <T>(list: readonly T[], is: (one: T) => boolean): readonly number[] =>
  list.flatMap((one, i) => (is(one) ? [i + 1] : []));

const layerWords = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'layer' : 'layers'} ${numbers.join(', ')}`;

/** So many names are told one by one. */
const MOST_NAMES = 12;

function pieceWords(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  return `${names.length === 1 ? 'piece' : 'pieces'} ${names.slice(0, MOST_NAMES).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

const rangeWords = (names: readonly string[]): string =>
  names.length > 3 ? `pieces ${names[0]} to ${names[names.length - 1]}` : pieceWords(names);

const finding = (code: string, severity: Severity, text: string, value: number): Finding => ({
  code,
  severity,
  text,
  value,
  where: {},
});
