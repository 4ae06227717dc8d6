import * as v from 'valibot';
import { FLATTEN_WISHES, type FlattenWishes } from '../model/flatten-settings.ts';
import { orderedLike } from '../base/ordered-like.ts';
import { readJson } from '../base/read-json.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { PAPER_LANGUAGES } from '../base/paper-language.ts';
import { bytesFromBase64, base64FromBytes } from '../base/base64.ts';
import { contentHash } from '../base/hash.ts';
import { brokenPlace } from './broken-place.ts';
import { cutterSchema } from './cutter-schema.ts';
import { clayCoreSchema } from './clay-core-schema.ts';
import { clayShapeSchema, filletsSchema, unknownColour } from './finish-schema.ts';
import { MOST_BEND_DEG, MOST_OFF_MM, OPENING_USES } from './wear-commands.ts';
import { isStagger, LEAST_STAGGER_MM, MOST_STAGGER_MM } from './stagger-limits.ts';
import { MOST_CORRECTION_PCT, MOST_LEAN_DEG } from './printer-commands.ts';
import { documentOf, withVersions, type Document } from './kept-version.ts';
import { PROJECT_SUFFIX } from './project-suffix.ts';
import type { Project } from './project.ts';
import { joinsSchema } from './joins-schema.ts';
import { MOST_SCULPTS } from './part-limits.ts';
import { firstById } from './first-by.ts';
import { migrated, MIGRATIONS, SCHEMA_VERSION, type RawDocument } from './migrations.ts';
import { plainSchema } from './plain-schema.ts';
import { bodyScaleSchema, bodySchema } from './body-schema.ts';
import { seamPathSchema } from './seam-path-schema.ts';
import { seamSettingSchema } from './seam-setting-schema.ts';
import { HIDDEN_SIDES } from '../model/hidden-side.ts';
import { LEAST_TRIANGLES } from './simplify-commands.ts';
import { FOAM_RULE_NAMES, RULE_LIMITS } from './shop-rules.ts';
import { gluingSchema, shopSchema } from './shop-schema.ts';
import { stockSchema } from './stock-schema.ts';
import { neededSources, sourcesOfProject } from './sources.ts';
import { TIP_HOLE_MM } from './tip-commands.ts';
import { unknownFields, unknownFieldsTold } from './unknown-fields.ts';
import { readVersions, versionsSchema, writtenVersions } from './version-file.ts';
import { WISH_LIMITS } from './wish-limits.ts';

/** A project file as read: the document and the bytes of its source files by hash. */
export interface OpenedProject {
  readonly project: Project;
  readonly sources: ReadonlyMap<string, { readonly fileName: string; readonly bytes: Uint8Array }>;
}

/** True when the bytes begin like a JSON object: no OBJ or STL does. */
export function looksLikeProject(bytes: Uint8Array): boolean {
  const begin = new TextDecoder().decode(bytes.subarray(0, 256));
  return begin.trimStart().startsWith('{');
}

/** Sheets in a wall at most: more is no wall of sheets but a stack. */
export const MOST_LAYERS = 8;

/** How pieces were laid flat before the maker could say: their outlines stay as they were printed. */
const WISHES_BEFORE: FlattenWishes = { ...FLATTEN_WISHES, squashPrice: 1 };

const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const positive = v.pipe(v.number(), v.finite(), v.gtValue(0));
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const shrinkPct = v.pipe(finite, v.gtValue(-WISH_LIMITS.shrinkagePct), v.ltValue(WISH_LIMITS.shrinkagePct));
const pair = v.strictTuple([count, count]);
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));
const staggerMm = v.pipe(
  finite,
  v.check((mm) => isStagger(mm), `${LEAST_STAGGER_MM} to ${MOST_STAGGER_MM} mm to one side or the other`),
);
const side = v.picklist(['face', 'back']);

const scale = v.variant('by', [
  v.object({ by: v.literal('unit'), unit: v.picklist(['mm', 'cm', 'm', 'in']) }),
  v.object({ by: v.literal('size'), axis: v.picklist(['longest', 'x', 'y', 'z']), mm: positive }),
  v.object({ by: v.literal('points'), from: count, to: count, mm: positive }),
  bodyScaleSchema,
]);

const repair = v.variant('kind', [
  v.object({ kind: v.literal('turn-faces') }),
  v.object({ kind: v.literal('drop-doubled') }),
  v.object({ kind: v.literal('drop-empty') }),
  v.object({ kind: v.literal('close-hole'), edge: pair }),
  v.object({ kind: v.literal('keep-shell'), vertex: count }),
]);

const triple = v.strictTuple([finite, finite, finite]);
const direction = v.pipe(
  triple,
  v.check(([x, y, z]) => x !== 0 || y !== 0 || z !== 0, 'a direction that is not 0'),
);
const notNegative = v.pipe(finite, v.minValue(0));

const tape = v.object({
  id: v.string(),
  name: v.string(),
  pointInFile: triple,
  normal: direction,
  bodyGirthMm: v.optional(positive),
  easeMm: v.optional(notNegative),
  bodyBreadthMm: v.optional(positive),
  bodyLengthMm: v.optional(positive),
});

const coreRod = v.object({
  id: v.string(),
  name: v.string(),
  pointInFile: triple,
  direction,
  diameterMm: positive,
  lengthMm: v.optional(positive),
  roomMm: v.optional(notNegative),
});

const coreModel = v.object({
  kind: v.literal('model'),
  id: v.string(),
  name: v.string(),
  source: v.object({ hash, fileName: v.string(), format: v.picklist(['obj', 'stl']) }),
  unit: v.picklist(['mm', 'cm', 'm', 'in', 'sculpt']),
  pointInFile: triple,
  turnDeg: v.optional(triple),
  roomMm: v.optional(notNegative),
});

const bodyJoint = v.object({
  id: v.string(),
  name: v.string(),
  pointInFile: triple,
  axis: direction,
  towards: direction,
  bendDeg: v.pipe(
    finite,
    v.minValue(-MOST_BEND_DEG),
    v.maxValue(MOST_BEND_DEG),
    v.check((deg) => deg !== 0, 'a bend other than 0'),
  ),
});

const mirror = v.variant('by', [
  v.object({ by: v.literal('off') }),
  v.object({ by: v.literal('plane'), pointInFile: triple, normal: direction }),
]);

const simplify = v.pipe(
  v.object({
    triangles: v.optional(v.pipe(count, v.minValue(LEAST_TRIANGLES))),
    deviationMm: v.optional(positive),
    keep: v.array(count),
  }),
  v.check(
    ({ triangles, deviationMm }) => (triangles === undefined) !== (deviationMm === undefined),
    'either triangles or deviationMm',
  ),
);

/** A list of things whose ids differ. */
const withOwnIds = <T extends { id: string }>(thing: v.GenericSchema<T>, what: string) =>
  v.pipe(
    v.array(thing),
    v.checkItems((one, index, all) => firstById(one, index, all), what),
  );

const sculpt = v.object({
  kind: v.literal('sculpt'),
  id: v.string(),
  name: v.string(),
  source: v.object({ hash, fileName: v.string(), format: v.picklist(['obj', 'stl']) }),
  transform: v.pipe(v.array(finite), v.length(16)),
  copies: v.pipe(count, v.minValue(1)),
  scale: v.nullable(scale),
  upAxis: v.picklist(['x', 'y', 'z']),
  repairs: v.array(repair),
  simplify: v.optional(simplify),
  seams: v.object({
    edges: v.array(pair),
    paths: v.array(seamPathSchema),
  }),
  seamSettings: v.array(seamSettingSchema),
  heldSeams: v.optional(v.array(pair)),
  mirror: v.optional(mirror),
  hiddenSide: v.optional(v.picklist(HIDDEN_SIDES)),
  pieceSettings: v.array(
    v.object({
      face: count,
      name: v.optional(v.string()),
      foam: v.optional(v.string()),
      quantity: v.optional(v.pipe(count, v.minValue(1))),
      bendStyle: v.optional(v.picklist(['rolled', 'grooved', 'kerfed'])),
      tracedSide: v.optional(side),
      held: v.optional(v.boolean()),
      grain: v.optional(
        v.object({
          angleDeg: v.pipe(finite, v.minValue(-180), v.maxValue(180)),
          stretch: v.picklist(['any', 'across', 'along']),
        }),
      ),
    }),
  ),
  // Absent in files of before these wishes could be made.
  flatten: v.optional(
    v.object({
      seamPrice: v.pipe(finite, v.minValue(WISH_LIMITS.seamPrice.least), v.maxValue(WISH_LIMITS.seamPrice.most)),
      squashPrice: v.pipe(finite, v.minValue(WISH_LIMITS.squashPrice.least), v.maxValue(WISH_LIMITS.squashPrice.most)),
      evenOut: v.boolean(),
      keepApart: v.boolean(),
    }),
    WISHES_BEFORE,
  ),
  regions: v.optional(
    v.array(
      v.object({
        id: v.string(),
        name: v.string(),
        faces: v.array(count),
        give: v.picklist(['stiff', 'soft', 'normal']),
        seams: v.optional(v.picklist(['clear', 'prefer'])),
        raised: v.optional(v.object({ foam: v.string(), thicknessMm: positive, neutralFraction: share })),
        colour: v.optional(v.string()),
        clay: v.optional(clayShapeSchema),
        clayCore: v.optional(clayCoreSchema),
      }),
    ),
    [],
  ),
  edgeWishes: v.optional(
    v.array(v.object({ edge: pair, holdLength: v.optional(v.boolean()), straight: v.optional(v.boolean()) })),
    [],
  ),
  scores: v.optional(
    withOwnIds(
      v.object({
        id: v.string(),
        edges: v.pipe(v.array(pair), v.minLength(1)),
        depthMm: positive,
        openMm: notNegative,
      }),
      'a scored line with an id of its own',
    ),
  ),
  tipHoles: v.optional(
    v.array(
      v.object({
        corner: count,
        diameterMm: v.pipe(finite, v.minValue(TIP_HOLE_MM.least), v.maxValue(TIP_HOLE_MM.most)),
      }),
    ),
  ),
  modelIs: v.picklist(['face', 'middle', 'back']),
  offMm: v.optional(v.pipe(finite, v.minValue(-MOST_OFF_MM), v.maxValue(MOST_OFF_MM))),
  layers: v.pipe(
    v.array(
      v.object({
        id: v.string(),
        foam: v.string(),
        thicknessMm: positive,
        neutralFraction: share,
        allowForShrinkage: v.optional(v.boolean(), false),
        staggerMm: v.optional(staggerMm),
      }),
    ),
    v.minLength(1),
    v.maxLength(MOST_LAYERS),
    v.checkItems((one, index, all) => firstById(one, index, all), 'a layer with an id of its own'),
  ),
  tracedSide: side,
  // Absent where nothing was said of who or what wears the part.
  tapes: v.optional(withOwnIds(tape, 'a tape with an id of its own')),
  core: v.optional(withOwnIds(v.union([coreModel, coreRod]), 'a core with an id of its own')),
  joints: v.optional(withOwnIds(bodyJoint, 'a joint with an id of its own')),
  gluing: v.optional(gluingSchema),
  fillets: v.optional(filletsSchema),
  worn: v.optional(
    v.object({
      girthMm: v.optional(positive),
      breadthMm: v.optional(positive),
      tape: v.optional(v.string()),
      coversFace: v.optional(v.boolean()),
      openings: v.optional(v.array(v.object({ vertex: count, use: v.picklist(OPENING_USES) }))),
    }),
  ),
});

/** Rules that a foam has of its own; each by its name. */
const foamRules = v.object(
  Object.fromEntries(
    FOAM_RULE_NAMES.map((name) => {
      const { least, most } = RULE_LIMITS[name];
      return [name, v.optional(v.pipe(finite, v.minValue(least), v.maxValue(most)))];
    }),
  ),
);

const printShare = v.pipe(finite, v.minValue(1 - MOST_CORRECTION_PCT / 100), v.maxValue(1 + MOST_CORRECTION_PCT / 100));
const mostLean = (MOST_LEAN_DEG * Math.PI) / 180;
const printerSchema = v.object({
  name: v.pipe(v.string(), v.minLength(1)),
  acrossShare: printShare,
  upShare: printShare,
  leanRad: v.pipe(finite, v.minValue(-mostLean), v.maxValue(mostLean)),
});

const document = v.object({
  schemaVersion: v.literal(SCHEMA_VERSION),
  name: v.string(),
  revision: v.pipe(count, v.minValue(1)),
  parts: v.pipe(v.array(sculpt), v.maxLength(MOST_SCULPTS)),
  atWork: v.optional(v.string()),
  plain: v.optional(plainSchema),
  joins: v.optional(joinsSchema),
  body: v.optional(bodySchema),
  foams: v.pipe(
    v.array(
      v.object({
        id: v.string(),
        name: v.string(),
        thicknessMm: positive,
        sheetWidthMm: positive,
        sheetHeightMm: positive,
        neutralFraction: share,
        densityKgM3: positive,
        stretchLimits: v.object({ noticePct: positive, tooMuchPct: positive }),
        bendLimits: v.optional(v.object({ noticePct: positive, tooMuchPct: positive })),
        rules: v.optional(foamRules),
        shrinkage: v.optional(v.object({ alongPct: shrinkPct, acrossPct: shrinkPct })),
        neutralTest: v.optional(
          v.object({
            lengthMm: positive,
            thicknessMm: positive,
            readings: v.array(v.object({ mandrelMm: positive, arcMm: positive })),
          }),
        ),
      }),
    ),
    v.minLength(1),
  ),
  paper: v.object({
    name: v.string(),
    widthMm: v.optional(positive),
    heightMm: v.optional(positive),
    orientation: v.picklist(['portrait', 'landscape']),
    marginMm: v.pipe(finite, v.minValue(0)),
    overlapMm: v.pipe(finite, v.minValue(0)),
    mirrored: v.optional(v.picklist(['once', 'each'])),
    ruled: v.optional(v.picklist(['print', 'tell'])),
    language: v.optional(v.picklist(PAPER_LANGUAGES)),
  }),
  printers: v.optional(v.array(printerSchema)),
  done: v.optional(
    v.array(
      v.object({
        piece: v.string(),
        printed: v.optional(v.string()),
        cut: v.optional(v.string()),
        bevelled: v.optional(v.string()),
        formed: v.optional(v.string()),
      }),
    ),
  ),
  doneSteps: v.optional(v.array(v.object({ id: v.string(), as: v.string() }))),
  printer: v.optional(v.string()),
  shop: v.optional(shopSchema),
  cutter: v.optional(cutterSchema),
  stock: v.optional(stockSchema),
  lengthUnit: v.picklist(['mm', 'in']),
});

const file = v.object({
  format: v.literal('foamloft-project'),
  project: document,
  versions: v.optional(versionsSchema, []),
  sources: v.record(hash, v.object({ fileName: v.string(), base64: v.string() })),
});

/**
 * Writes the document and its source files as one JSON text: plain to read, stable to compare.
 * @param sources bytes by hash; those the document does not name are left out. A sculpt that is missing is our
 *                mistake and throws; a core may have been missing before.
 */
export function writeProjectFile(project: Project, sources: OpenedProject['sources']): string {
  const kept: Record<string, { fileName: string; base64: string }> = {};
  for (const { hash } of sourcesOfProject(project)) {
    const source = sources.get(hash);
    if (source !== undefined) kept[hash] = { fileName: source.fileName, base64: base64FromBytes(source.bytes) };
  }
  const missing = neededSources(project).find(({ hash }) => kept[hash] === undefined);
  if (missing !== undefined) throw new Error(`writeProjectFile: no bytes for ${missing.hash}`);
  const versions = writtenVersions(project, inOrder);
  return `${JSON.stringify(
    {
      format: 'foamloft-project',
      project: inOrder(documentOf(project)),
      ...(versions.length === 0 ? {} : { versions }),
      sources: kept,
    },
    null,
    1,
  )}\n`;
}

/**
 * A document with its fields in the order in which a file that is read gives them: the same state is the same text, whatever way it came about.
 * One that is not as it should be is written as it is: nothing that a maker did is held back.
 */
function inOrder(own: Document): Document {
  const known = ordered.get(own);
  if (known !== undefined) return known;
  const read = v.safeParse(document, own);
  const made = read.success ? orderedLike(own, read.output) : own;
  ordered.set(own, made);
  return made;
}

const ordered = new WeakMap<Document, Document>();

/**
 * Reads a project file. Documents of older versions are brought on first; every value is checked, and so is every source file against its hash. A
 * note tells of fields that are not known.
 * Fails with `project/not-json`, `project/not-ours`, `project/newer`, `project/broken` or `project/source`.
 */
export async function readProjectFile(
  text: string,
  fileName: string,
  table = MIGRATIONS,
): Promise<Result<OpenedProject>> {
  const json = readJson(text, fileName, () =>
    fail(
      'project/not-json',
      `${fileName} is not a whole project file (its text ends early or is damaged): open an older copy.`,
    ),
  );
  if (!json.ok) return json;
  const head = v.safeParse(
    v.looseObject({ format: v.literal('foamloft-project'), project: v.looseObject({ schemaVersion: v.number() }) }),
    json.value,
  );
  if (!head.success)
    return fail(
      'project/not-ours',
      `${fileName} is a JSON file but not a Foamloft project: choose a file ending in ${PROJECT_SUFFIX}.`,
    );
  if (head.output.project.schemaVersion > SCHEMA_VERSION) {
    return fail('project/newer', `${fileName} was saved by a newer Foamloft: update this one, then open it again.`);
  }
  const whole = { ...head.output, project: migrated(head.output.project, table) };
  const parsed = v.safeParse(file, whole, { abortEarly: true });
  if (!parsed.success) {
    const [issue] = parsed.issues;
    return fail('project/broken', `${fileName} cannot be used: ${brokenPlace(issue)}.`);
  }
  const checked = checkedDocument(parsed.output.project, fileName);
  if (!checked.ok) return checked;
  const kept = await readVersions(parsed.output.versions, head.output.project, checked.value, (changed, name) =>
    versionIn(migrated(changed as RawDocument, table), name, fileName),
  );
  if (!kept.ok) return kept;
  const project = withVersions(checked.value, kept.value);
  const sources = new Map<string, { fileName: string; bytes: Uint8Array }>();
  for (const [name, source] of Object.entries(parsed.output.sources)) {
    const bytes = bytesFromBase64(source.base64);
    if (bytes === null || (await contentHash(bytes)) !== name) {
      return fail(
        'project/source',
        `In ${fileName} the model ${source.fileName} is damaged: open an older copy of the project.`,
      );
    }
    sources.set(name, { fileName: source.fileName, bytes });
  }
  const missing = neededSources(project).find(({ hash: needed }) => !sources.has(needed));
  if (missing !== undefined) {
    return fail(
      'project/source',
      `${fileName} does not hold its model ${missing.fileName}: open an older copy of the project.`,
    );
  }
  return ok({ project, sources }, unknownFieldsTold(unknownFields(whole.project, parsed.output.project), fileName));
}

/** A version put together from what the file holds of it. */
function versionIn(raw: unknown, name: string, fileName: string): Result<Project> {
  const where = `${fileName}, kept version “${name}”,`;
  const parsed = v.safeParse(document, raw, { abortEarly: true });
  if (parsed.success) return checkedDocument(parsed.output, where);
  return fail('project/broken', `${where} cannot be used: ${brokenPlace(parsed.issues[0])}.`);
}

/** A document in which everything that is named is also there. */
function checkedDocument(output: v.InferOutput<typeof document>, fileName: string): Result<Project> {
  const project = output as unknown as Project;
  const standing = brokenParts(project);
  if (standing !== null) return fail('project/broken', `${fileName} cannot be used: ${standing}`);
  const named = [
    ...project.parts.flatMap(({ layers, pieceSettings, regions }) => [
      ...layers,
      ...pieceSettings,
      ...regions.flatMap(({ raised, clayCore }) => [
        ...(raised === undefined ? [] : [raised]),
        ...(clayCore?.foams ?? []).map((foam) => ({ foam })),
      ]),
    ]),
    ...(project.plain ?? []).flatMap(({ foams }) => foams.map((foam) => ({ foam }))),
  ];
  const held = new Set(project.foams.map(({ id }) => id));
  const unknown = named.find(({ foam: id }) => id !== undefined && !held.has(id));
  if (unknown !== undefined)
    return fail(
      'project/broken',
      `${fileName} cannot be used: it names the foam ${unknown.foam} but does not hold it.`,
    );
  const { stock = {} } = project;
  const unheld = [...(stock.sheets ?? []), ...(stock.fills ?? [])].find(({ foam: named }) => !held.has(named));
  if (unheld !== undefined)
    return fail(
      'project/broken',
      `${fileName} cannot be used: its stock names the foam ${unheld.foam} but the file does not hold it.`,
    );
  const { printer, printers = [] } = project;
  if (printer !== undefined && !printers.some(({ name }) => name === printer))
    return fail(
      'project/broken',
      `${fileName} cannot be used: it prints for ${printer} but does not hold how that printer prints.`,
    );
  const uncoloured = unknownColour(project);
  if (uncoloured !== null)
    return fail(
      'project/broken',
      `${fileName} cannot be used: it paints with the colour ${uncoloured} but does not hold it.`,
    );
  const doubled = project.parts.map(({ regions }) => doubledId(regions)).find((id) => id !== null) ?? null;
  if (doubled !== null)
    return fail(
      'project/broken',
      `${fileName} cannot be used: two of its areas have the id ${doubled}, so that neither can be told from the other; give one of them an id of its own in the file.`,
    );
  return ok(project);
}

/** The first id that several carry, or null. */
function doubledId(list: readonly { readonly id: string }[]): string | null {
  return list.find((one, i) => !firstById(one, i, list))?.id ?? null;
}

/** What is wrong with its list of parts, as the end of a sentence; null where nothing is. */
function brokenParts({ parts, plain = [], atWork }: Project): string | null {
  if (parts.length + plain.length === 0) return 'it has no part.';
  const doubled = doubledId([...parts, ...plain]);
  if (doubled !== null)
    return `two of its parts have the id ${doubled}; give one of them an id of its own in the file.`;
  const layer = parts.map(({ layers }) => doubledId(layers)).find((id) => id !== null) ?? null;
  if (layer !== null)
    return `two sheets of one of its sculpts have the id ${layer}; give one of them an id of its own in the file.`;
  if (atWork !== undefined && !parts.some(({ id }) => id === atWork))
    return `it works on the part ${atWork} and does not hold it.`;
  return null;
}
