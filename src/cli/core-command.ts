import type { BuildUp, BuiltLayer, Winding } from '../model/build-up.ts';
import { buildUpJson } from '../pipeline/build-up-json.ts';
import { buildUpPiecesSvg, buildUpSideSvg } from '../pipeline/build-up-svg.ts';
import { buildUpOf, knownPipes, pipeNamed } from '../pipeline/build-up.ts';
import type { CoreOptions } from './core-options.ts';
import { Refused } from './exit.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';

/** Names of what is written. */
const FILES = { json: 'core.json', pieces: 'core-pieces.svg', side: 'core-side.svg' } as const;

/** `core --pipe "PVC 32" --length 900 …`: what is built up on a pipe or rod. @throws Refused @returns what is told. */
export async function coreCommand({ list, pipe, wish, out, json }: CoreOptions): Promise<string> {
  if (list || wish === undefined) return pipeList(json);
  if (out !== undefined) await checkFolder(out, Object.values(FILES), []);
  const named = pipe === undefined ? null : pipeNamed(pipe);
  if (named !== null && !named.ok) throw Refused.from(named.problem, 'core');
  const core =
    named === null
      ? wish.core
      : { ...wish.core, pipe: named.value.name, diameterMm: named.value.outsideMm, material: named.value.material };
  const made = buildUpOf({ ...wish, core });
  if (!made.ok) throw Refused.from(made.problem, 'core');
  const built = made.value;
  const jsonText = `${JSON.stringify(buildUpJson(built), null, 1)}\n`;
  const title = named === null ? `core ${short(core.diameterMm)} mm` : named.value.name;
  if (out !== undefined)
    await writeAll(
      out,
      new Map([
        [FILES.json, jsonText],
        [FILES.pieces, buildUpPiecesSvg(built, title)],
        [FILES.side, buildUpSideSvg(built, title)],
      ]),
    );
  return json ? jsonText : summary(built, title, out);
}

function pipeList(json: boolean): string {
  if (json) return `${JSON.stringify({ schemaVersion: 1, pipes: knownPipes() }, null, 1)}\n`;
  return knownPipes()
    .map(({ name, outsideMm, wallMm, standard, title }) => {
      const wall = wallMm === null ? '' : wallMm === 0 ? ', solid' : `, wall ${short(wallMm)}`;
      return `${name}: ${short(outsideMm)} mm outside${wall}; ${title}${standard === null ? '' : `, ${standard}`}\n`;
    })
    .join('');
}

function summary(built: BuildUp, title: string, out: string | undefined): string {
  const { core, layers, skin, staves, tapers, windings, findings, work } = built;
  return [
    `${title}: ${short(core.diameterMm)} mm outside, cut to ${short(core.cutMm)} mm`,
    ...core.marks.map(({ name, atMm }) => `mark ${short(atMm)}: ${name}`),
    ...core.seats.map(({ name, holeMm }) => `${name}: hole ${short(holeMm)} mm`),
    `${layers.length} layers; to sand ${cm3(built.sandMm3)}, at most ${short(built.sandDepthMm)} mm deep; to fill ${cm3(built.fillMm3)}, at most ${short(built.fillDepthMm)} mm`,
    ...layers.map(layerText),
    ...skin.map(
      ({ fromMm, toMm, thicknessMm, seamDeg, sector }, i) =>
        `skin ${i + 1}: ${short(thicknessMm)} mm, ${short(fromMm)} to ${short(toMm)}, seam ${short(seamDeg)}°${sector.angleDeg === 0 ? '' : `, arcs ${short(sector.outerMm)} and ${short(sector.innerMm)} mm, ${short(sector.angleDeg)}°`}`,
    ),
    ...staves.map(
      ({ count, fromMm, toMm, tableTiltDeg, taperDeg, widthMm, lengthMm }) =>
        `${count} staves ${short(fromMm)} to ${short(toMm)}: table ${short(tableTiltDeg)}°, taper ${short(taperDeg)}°, ${short(widthMm[0])} to ${short(widthMm[1])} mm wide, ${short(lengthMm)} mm long`,
    ),
    ...tapers.map(
      ({ fromMm, toMm, slopeDeg, sandMm3, staves: ways }) =>
        `taper ${short(fromMm)} to ${short(toMm)}: ${short(slopeDeg)}° from the axis; layers leave ${cm3(sandMm3)} to sand; sawn as ${ways.map(({ count, tableTiltDeg, taperDeg }) => `${count} staves: table ${short(tableTiltDeg)}°, taper ${short(taperDeg)}°`).join('; ')}`,
    ),
    ...windings.map(windingText),
    ...work.steps.map(({ text }, i) => `${i + 1}. ${text}`),
    ...findings.map(({ severity, text }) => `${severity}: ${text}`),
    ...(out === undefined ? [] : [`${Object.values(FILES).join(', ')} written to ${out}`]),
    '',
  ].join('\n');
}

function layerText({
  number,
  thicknessMm,
  fromMm,
  toMm,
  aroundMm,
  seamsDeg,
  sandMm3,
  fillMm3,
  seamBevelDeg,
}: BuiltLayer): string {
  const rest = [
    ...(seamBevelDeg > 0 ? [`seam edges ${short(seamBevelDeg)}° in under`] : []),
    ...(sandMm3 > 0.5 ? [`sand ${cm3(sandMm3)}`] : []),
    ...(fillMm3 > 0.5 ? [`fill ${cm3(fillMm3)}`] : []),
  ];
  return `layer ${number}: ${short(thicknessMm)} mm, ${short(fromMm)} to ${short(toMm)}, ${short(aroundMm)} mm round, seam ${seamsDeg.map((one) => `${short(one)}°`).join(', ')}${rest.map((one) => `, ${one}`).join('')}`;
}

function windingText(winding: Winding, i: number): string {
  const { leadDeg, pitchMm, overlapMm, turns, stripMm, cutMm, starts, edgeStretchPct, crossings } = winding;
  const lap = overlapMm[1] < -0.005 ? `gap ${range([-overlapMm[1], -overlapMm[0]])}` : `overlap ${range(overlapMm)}`;
  return [
    `strip ${i + 1}: lead ${range(leadDeg)}°, pitch ${range(pitchMm)} mm, ${lap} mm, ${short(turns)} turns, ${starts > 1 ? `${starts} strips, each ` : ''}${short(stripMm)} mm long, ${short(cutMm)} mm with its ends`,
    ...(edgeStretchPct > 0.05 ? [`  edges give ${short(edgeStretchPct)} %`] : []),
    ...crossings.map(
      ({ strip, atMm }) =>
        `  strip ${strip} crosses the line at ${atMm
          .slice(0, 40)
          .map((one) => one.toFixed(1))
          .join(', ')}${atMm.length > 40 ? ` and ${atMm.length - 40} more` : ''}`,
    ),
  ].join('\n');
}

const range = ([a, b]: readonly [number, number]): string =>
  short(a) === short(b) ? short(a) : `${short(a)} to ${short(b)}`;
const short = (value: number): string => String(Number(value.toFixed(2)) + 0);
const cm3 = (mm3: number): string => `${(mm3 / 1000).toFixed(1)} cm³`;
