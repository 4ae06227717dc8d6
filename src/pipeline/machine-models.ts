import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import { writeFlatObj, writeObj, type FlatSurface } from '../steps/write/obj.ts';
import { solidOfPlate, type Solid } from '../steps/write/solid.ts';
import { writeStl } from '../steps/write/stl.ts';
import type { LayerOutcome, Outcome } from './outcome.ts';
import { propSteps } from './prop.ts';

/** Solid models of the finished prop. */
export interface ModelChoice {
  readonly stl?: boolean;
  readonly obj?: boolean;
  /** Written a second time so many times smaller, to print small; left out: in true size alone. */
  readonly timesSmaller?: number;
}

/**
 * The finished prop, put together and thick, as STL and OBJ in true size: every piece a closed body. A wall of several sheets comes whole and
 * sheet by sheet. With OBJ also the pieces on the sculpt, laid flat in their texture coordinates.
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

/** The prop whole, and each sheet of its wall by itself where there are several. */
function* bodySteps(
  outcome: Outcome,
  share: number,
): Stepwise<readonly { readonly name: string; readonly solids: readonly Solid[] }[]> {
  const prop = yield* propSteps(outcome);
  const { pieces } = outcome;
  if (prop === null || pieces === null) throw new Error('modelFiles: the chain has not run to its end');
  const solids = prop.plates.map((plate) => ({
    sheet: plate.sheet,
    solid: solidOfPlate(plate, `${pieces[plate.piece].number} ${pieces[plate.piece].name}`, share),
  }));
  const sheets = [...new Set(solids.map(({ sheet }) => sheet))].sort((a, b) => a - b);
  const whole = { name: 'prop', solids: solids.map(({ solid }) => solid) };
  if (sheets.length === 1) return [whole];
  return [
    whole,
    ...sheets.map((sheet) => ({
      name: `prop-sheet-${sheet}`,
      solids: solids.filter((one) => one.sheet === sheet).map(({ solid }) => solid),
    })),
  ];
}

function flatSurfaces({ layers, raised }: Outcome): readonly FlatSurface[] {
  return [...layers, ...raised].flatMap(surfacesOfLayer);
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
