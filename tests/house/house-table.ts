// The rules on who may know whom, as tables. Paths are below src/.

/** What a folder may import besides itself. `types` may be imported as types alone. */
export interface FolderRow {
  readonly folder: string;
  readonly may: readonly string[];
  readonly types?: readonly string[];
  /** Data files it may import, from the top of the project; a folder ends in a slash. */
  readonly data?: readonly string[];
}

const CORE = ['base', 'geom', 'mesh', 'model'];
const STEPS = [
  'read',
  'seams',
  'shell',
  'cut',
  'flatten',
  'shapes',
  'stack',
  'build-up',
  'clay-core',
  'artwork',
  'wrap-art',
  'trim',
  'inserts',
  'assembly',
  'foam',
  'dryfit',
  'wear',
  'shop',
  'nest',
  'tile',
  'write',
  'read-back',
].map((name) => `steps/${name}`);

export const FOLDERS: readonly FolderRow[] = [
  { folder: 'base', may: [] },
  { folder: 'geom', may: ['base'] },
  { folder: 'mesh', may: ['base', 'geom'] },
  { folder: 'model', may: ['base', 'geom', 'mesh'], data: ['shared/'] },
  ...STEPS.map((folder) => ({ folder, may: CORE })),
  { folder: 'project', may: CORE },
  { folder: 'pipeline', may: [...CORE, ...STEPS, 'project'] },
  { folder: 'worker', may: [...CORE, ...STEPS, 'project', 'pipeline'] },
  { folder: 'viewport', may: CORE },
  {
    folder: 'app',
    may: ['base', 'project', 'viewport', 'worker/client.ts'],
    types: [
      'model',
      'worker/workshop-api.ts',
      'worker/marking-api.ts',
      'worker/proposing-api.ts',
      'worker/drawing-api.ts',
      'worker/sheet-search-api.ts',
      'worker/shop-api.ts',
      'worker/finish-api.ts',
      'worker/files-api.ts',
      'worker/parts-api.ts',
      'worker/compare-api.ts',
    ],
    data: ['shared/', 'samples/', 'package.json'],
  },
  { folder: 'cli', may: ['base', 'project', 'pipeline'], types: ['model'], data: ['package.json'] },
];

/** The one place where an outside package comes in. `at`: a folder, or a file, where `*` stands for any letters. */
export interface DoorRow {
  readonly package: string;
  readonly at: readonly string[];
  /** The only names that may be taken, where it is not the whole package. */
  readonly names?: readonly string[];
}

export const DOORS: readonly DoorRow[] = [
  { package: 'three', at: ['viewport'] },
  {
    package: 'three', // its maths and its buffers, as three-mesh-bvh wants them; never its renderer
    at: ['geom/bvh.ts'],
    names: [
      'Box3',
      'BufferAttribute',
      'BufferGeometry',
      'DoubleSide',
      'Line3',
      'Matrix4',
      'Ray',
      'Sphere',
      'Triangle',
      'Vector3',
    ],
  },
  { package: 'three-mesh-bvh', at: ['geom/bvh.ts'] },
  { package: 'earcut', at: ['geom/triangulate.ts'] },
  { package: 'robust-predicates', at: ['geom/predicates.ts'] },
  { package: 'clipper2-ts', at: ['geom/polygon-boolean.ts', 'geom/whole-union.ts'] },
  { package: 'jspdf', at: ['steps/write/pdf*.ts'] },
  { package: 'pdfjs-dist', at: ['steps/read-back/read-pdf.ts', 'steps/read-back/pdf-worker.d.ts'] },
  { package: 'comlink', at: ['worker'] },
  { package: 'valibot', at: ['project', 'steps/read'] },
  { package: 'idb', at: ['app/files/shelves.ts'] },
  { package: 'fflate', at: ['app', 'cli', 'steps/write', 'steps/artwork/read-png.ts'] },
  { package: 'jpeg-js', at: ['steps/artwork/read-jpeg.ts'] },
  { package: 'opentype.js', at: ['steps/write/png-font.ts'] },
  { package: 'lit', at: ['app'] },
  { package: 'workbox-precaching', at: ['app/offline/keeper-worker.ts'] },
  { package: '@fontsource-variable/atkinson-hyperlegible-next', at: ['app'] },
];

/** Where modules of Node may be used. */
export const NODE_FOLDERS: readonly string[] = ['cli'];

/** Where the clock, unseeded chance and the console may be used: at the edges, never in the core. */
export const IMPURE_FOLDERS: readonly string[] = ['app', 'cli'];

/** Endings of files that are imported, and where. */
export const ENDINGS: readonly { readonly ending: string; readonly at?: readonly string[] }[] = [
  { ending: '.ts' },
  { ending: '.json' },
  { ending: '.css', at: ['app'] },
  { ending: '.css?inline', at: ['app'] },
];
