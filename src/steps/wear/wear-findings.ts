import type { Finding } from '../../base/finding.ts';
import { formatInches, formatMm } from '../../base/format-length.ts';
import { isCoreModel, type CoreFit } from '../../model/clearance.ts';
import type { JointFit } from '../../model/joint.ts';
import type { PuttingOn, TapeFit } from '../../model/girth.ts';
import type { Vec3 } from '../../geom/vec.ts';
import { coreModelFindings } from './core-findings.ts';

/** Less than this is no difference on a body, mm: a tape is read to it. */
const TAPE_READING_MM = 1;

const both = (mm: number): string => `${formatMm(mm)} (${formatInches(mm)})`;
const at = ({ x, y, z }: Vec3): readonly [number, number, number] => [x, y, z];

/** What is to be said of a tape. @param point of its plane, mm. */
export function tapeFindings(fit: TapeFit, point: Vec3, part: string): readonly Finding[] {
  const { tape, back, missingMm } = fit;
  const where = { part, point: at(point) };
  if (back === null)
    return [
      {
        code: 'wear/tape-misses',
        severity: 'warning',
        text: `The tape ${tape.name} lies beside the part: move its plane until it cuts the part.`,
        where,
      },
    ];
  const findings: Finding[] = [];
  if (missingMm >= TAPE_READING_MM && tape.bodyGirthMm !== undefined) {
    const ease = tape.easeMm ?? 0;
    findings.push({
      code: 'wear/too-tight',
      severity: 'warning',
      text: `${tape.name}: the inside comes to ${both(back.girthMm)}, ${formatMm(missingMm)} less than the body’s ${formatMm(tape.bodyGirthMm)}${ease > 0 ? ` and ${formatMm(ease)} of ease` : ''}: make the part larger, take thinner foam, or let it open.`,
      value: back.girthMm,
      limit: tape.bodyGirthMm + ease,
      unit: 'mm',
      where,
    });
  }
  for (const [word, measured, body] of [
    ['broad', back.breadthMm, tape.bodyBreadthMm],
    ['long', back.lengthMm, tape.bodyLengthMm],
  ] as const) {
    if (body === undefined || body - measured < TAPE_READING_MM) continue;
    findings.push({
      code: 'wear/too-narrow',
      severity: 'warning',
      text: `${tape.name}: the inside is ${formatMm(measured)} ${word} where the body is ${formatMm(body)}: it is too tight that way whatever the girth says, so make the part ${word === 'broad' ? 'broader' : 'longer'} there.`,
      value: measured,
      limit: body,
      unit: 'mm',
      where,
    });
  }
  const bridgedMm = back.bridges.reduce((sum, { mm }) => sum + mm, 0);
  if (back.bridges.length > 0)
    findings.push({
      code: 'wear/tape-bridges',
      severity: 'note',
      text: `${tape.name}: the tape goes straight over ${back.bridges.length === 1 ? `an opening, ${formatMm(bridgedMm)} wide` : `${back.bridges.length} openings, ${formatMm(bridgedMm)} wide together`}: the foam ends there and does not hold the body.`,
      value: bridgedMm,
      unit: 'mm',
      where,
    });
  return findings;
}

/** What is to be said of a core. */
export function coreFindings(fit: CoreFit, part: string): readonly Finding[] {
  const { core, tightest, pierced } = fit;
  if (isCoreModel(core)) return coreModelFindings(fit, core, part);
  if (tightest === null)
    return [
      {
        code: 'wear/core-misses',
        severity: 'warning',
        text: `No foam lies along ${core.name}: check where its axis runs and how long it is.`,
        where: { part },
      },
    ];
  const where = { part, triangles: [tightest.triangle], point: at(tightest.point) };
  if (pierced > 0)
    return [
      {
        code: 'wear/core-pierces',
        severity: 'warning',
        text: `The axis of ${core.name} runs through the foam at ${pierced === 1 ? 'one place' : `${pierced} places`}: cut a hole of ${formatMm(core.diameterMm)} there, or give the length that lies inside.`,
        value: pierced,
        where,
      },
    ];
  const room = core.roomMm ?? 0;
  if (tightest.clearanceMm >= room) return [];
  const isInFoam = tightest.clearanceMm < 0;
  return [
    {
      code: 'wear/core-too-tight',
      severity: 'warning',
      text: isInFoam
        ? `${core.name} does not fit: at the tightest place it stands ${formatMm(tightest.clearanceMm)} deep in the foam, so make the part larger, move the axis, or take thinner foam.`
        : `${core.name} has ${formatMm(tightest.clearanceMm)} of room at the tightest place, less than the ${formatMm(room)} wanted.`,
      value: tightest.clearanceMm,
      limit: room,
      unit: 'mm',
      where,
    },
  ];
}

/** What is to be said of a joint. @param point of its axis, mm. */
export function jointFindings({ joint, bent }: JointFit, point: Vec3, part: string): readonly Finding[] {
  if (bent === null)
    return [
      {
        code: 'wear/joint-hangs-together',
        severity: 'warning',
        text: `${joint.name} cannot bend: all the foam lies on one side of it or hangs together across it. Move the joint between two things of the sculpt that do not touch; what touches there will be glued.`,
        where: { part, point: at(point) },
      },
    ];
  const full = Math.abs(joint.bendDeg);
  if (bent.freeDeg >= full) return [];
  return [
    {
      code: 'wear/joint-meets',
      severity: 'warning',
      text: `${joint.name}: foam meets foam after ${Math.floor(bent.freeDeg)}° of ${Math.round(full)}°: cut the edges back there, or leave more room at the joint.`,
      value: bent.freeDeg,
      limit: full,
      unit: 'deg',
      where: { part, point: at(bent.point) },
    },
  ];
}

/** What is to be said of putting the part on. @param letters  of the chains of the cut. */
export function puttingOnFindings(way: PuttingOn, part: string): readonly Finding[] {
  return [...lackFindings(way, part), ...wayInFindings(way, part)];
}

const lackFindings = ({ lacks }: PuttingOn, part: string): readonly Finding[] =>
  lacks.map((use) => ({
    code: use === 'sight' ? 'wear/no-sight' : 'wear/no-air',
    severity: 'warning',
    text:
      use === 'sight'
        ? 'It covers the face, and no opening is said to be for sight: say which one is looked through, or cut one; nobody should walk or work blind in it.'
        : 'It covers the face, and no opening is said to be for air: say where the wearer breathes, or cut openings near mouth and nose.',
    where: { part },
  }));

function wayInFindings({ openings, goesOn, splitAt }: PuttingOn, part: string): readonly Finding[] {
  if (goesOn !== false) return [];
  const widest = openings.find(({ narrowest }) => narrowest !== null) ?? openings[0];
  const names = splitAt?.letters ?? [];
  const seams = `seam${names.length === 1 ? '' : 's'} ${names.join(', ')}`;
  // The largest opening is the way in: others at the place worn are windows.
  const slitMm = openings.at(0)?.slitMm ?? 0;
  const remedy =
    slitMm > 0
      ? `it is open up the side by ${formatMm(slitMm)} where it is worn, so it goes on only as far as the foam lets itself be spread there; try that with the paper mock-up, or make the slit wider`
      : splitAt === null
        ? 'part it from rim to rim and leave that seam to a fastening'
        : splitAt.kind === 'side'
          ? `leave ${seams} open and close it with a fastening, or widen the opening`
          : `let it come apart along ${seams}, or widen the opening`;
  const told = widest as (typeof openings)[number] | undefined;
  const narrow = told?.narrowest ?? null;
  const what =
    told === undefined
      ? 'It is closed all round'
      : narrow === null
        ? `The largest opening has a girth of ${formatMm(told.girthMm)} and is ${formatMm(told.breadthMm)} wide`
        : `Behind the opening it narrows to a girth of ${formatMm(narrow.girthMm)} and a width of ${formatMm(narrow.breadthMm)}`;
  return [
    {
      code: 'wear/does-not-go-on',
      severity: 'warning',
      text: `${what}, too little for what must pass: ${remedy}.`,
      ...(told === undefined ? {} : { value: narrow?.girthMm ?? told.girthMm, unit: 'mm' }),
      where: { part, ...(told === undefined ? {} : { point: at(narrow?.point ?? told.centre) }) },
    },
  ];
}
