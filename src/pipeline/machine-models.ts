import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import { writeFlatObj, writeObj, type FlatSurface } from '../steps/write/obj.ts';
import { solidOfPlate, type Solid } from '../steps/write/solid.ts';
import { writeStl } from '../steps/write/stl.ts';
import type { LayerOutcome, Outcome } from './outcome.ts';
import { propSteps } from './prop.ts';
import { inAssembly } from './sculpts-in-place.ts';

/** Solid models of the finished prop. */
export interface ModelChoice {
  readonly stl?: boolean;
  readonly obj?: boolean;
  /** Written a second time so many times smaller, to print small; left out: in true size alone. */
  readonly timesSmaller?: number;
}

/**
 * The finished prop, put together and thick, as STL and OBJ in true size: every piece a closed body. A wall of several sheets comes whole and
 * sheet by sheet, a prop of several sculpts whole and sculpt by sculpt. With OBJ also the pieces on the sculpt, laid flat in their texture coordinates.
 */
export const modelFiles = (outcome: Outcome, choice: ModelChoice): ReadonlyMap<string, Uint8Array | string> =>
  runAtOnce(modelFileSteps(outcome, choice));

/** The same, file by file. */
export function* modelFileSteps(
  outcome: Outcome,
  { stl = false, obj = false, timesSmaller }: ModelChoice,
): Stepwise<ReadonlyMap<string, Uint8Array | string>> {
  const files = new Map<string, Uint8Array | string>();
  if (!stl && !obj) return files;
  for (const times of timesSmaller === undefined || timesSmaller === 1 ? [1] : [1, timesSmaller]) {
    const end = times === 1 ? '' : `-1-to-${times}`;
    for (const { name, solids } of yield* bodySteps(outcome, 1 / times)) {
      yield;
      const about = `${outcome.project.name}: the finished prop, lengths in mm${times === 1 ? '' : `, 1 to ${times}`}`;
      if (stl) files.set(`${name}${end}.stl`, writeStl(solids));
      if (obj) files.set(`${name}${end}.obj`, writeObj(solids, about));
    }
  }
  yield;
  if (obj) files.set('flat-pieces.obj', writeFlatObj(flatSurfaces(outcome), flatWords(outcome)));
  return files;
}

const flatWords = ({ project }: Outcome): string =>
  `${project.name}: pieces on the surface they keep their length on, lengths in mm; vt is the flat piece in mm`;

/** The prop whole, and each sculpt and each sheet of its walls by itself where there are several. Sculpts stand in their places. */
function* bodySteps(
  outcome: Outcome,
  share: number,
): Stepwise<readonly { readonly name: string; readonly solids: readonly Solid[] }[]> {
  const { sculpts } = outcome;
  const solids: { readonly sculpt: number; readonly sheet: number; readonly solid: Solid }[] = [];
  for (const [sculpt, own] of sculpts.entries()) {
    const prop = yield* propSteps({ ...own, project: outcome.project });
    const { pieces } = own;
    if (prop === null || pieces === null) throw new Error('modelFiles: the chain has not run to its end');
    const place = inAssembly(sculpts, own.part);
    for (const plate of prop.plates) {
      const { number, name } = pieces[plate.piece];
      solids.push({ sculpt, sheet: plate.sheet, solid: solidOfPlate(place(plate), `${number} ${name}`, share) });
    }
  }
  const sheets = [...new Set(solids.map(({ sheet }) => sheet))].sort((a, b) => a - b);
  const body = (name: string, isOf: (one: (typeof solids)[number]) => boolean) => ({
    name,
    solids: solids.filter(isOf).map(({ solid }) => solid),
  });
  return [
    body('prop', () => true),
    ...(sculpts.length < 2 ? [] : sculpts.map((_, i) => body(`prop-sculpt-${i + 1}`, ({ sculpt }) => sculpt === i))),
    ...(sheets.length < 2 ? [] : sheets.map((n) => body(`prop-sheet-${n}`, ({ sheet }) => sheet === n))),
  ];
}

function flatSurfaces({ sculpts }: Outcome): readonly FlatSurface[] {
  return sculpts.flatMap(({ layers, raised }) => [...layers, ...raised]).flatMap(surfacesOfLayer);
}

function surfacesOfLayer({ cut, flats, hinges, pieces }: LayerOutcome): readonly FlatSurface[] {
  if (cut === null || flats === null) return [];
  return (pieces ?? []).map(({ patch, number, name, uv }) => {
    const { triangles, meshVertices } = cut.patches[patch];
    const corners = (hinges[patch] ?? null)?.corners ?? null;
    const { neutralPositions } = cut.shells[patch];
    const own = Float64Array.from(
      { length: 3 * meshVertices.length },
      (_, i) => neutralPositions[3 * meshVertices[Math.floor(i / 3)] + (i % 3)],
    );
    return { name: `${number} ${name}`, points: corners ?? own, isByCorner: corners !== null, triangles, flat: uv };
  });
}
