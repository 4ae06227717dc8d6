import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { turnedMesh, type ProfilePoint } from '../../mesh/turned-mesh.ts';
import type { BuildUp, BuildUpWish, BuiltLayer, SkinBand, StaveSet } from '../../model/build-up.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import { capDiscs, capRadius } from './cap-discs.ts';
import { choicesFault } from './choices-fault.ts';
import { cutCore, cutLength, standsOff } from './core-cut.ts';
import { layLayers } from './lay-layers.ts';
import { planLayers } from './plan-layers.ts';
import { volumeBetween, wholeOf, type Profile } from './profile.ts';
import { readProfile } from './read-profile.ts';
import { restOf, tapersOf } from './rests.ts';
import { seamPlaces } from './seam-angles.ts';
import { profileLine, sideView } from './side-view.ts';
import { makeSkin, type LooseBand } from './skin.ts';
import { makeStaves } from './staves.ts';
import { windStrip, type WoundStrip } from './wind.ts';
import { workSteps } from './work-steps.ts';

/**
 * A core with all that is built up on it: what is wound where, pieces with their marks, what is left to sand or fill, strips, and the order of the work.
 * @returns fails with a `core/…` problem that says what to change.
 */
export function makeBuildUp(wish: BuildUpWish): Result<BuildUp> {
  const cut = cutLength(wish.core);
  if (!cut.ok) return cut;
  const coreRadius = wish.core.diameterMm / 2;
  const fault = choicesFault(wish, cut.value);
  if (fault !== null) return fail('core/choice', fault);
  const face = readProfile(wish.profile, coreRadius, cut.value);
  if (!face.ok) return face;
  const core = cutCore(wish.core, cut.value, face.value);
  if (!core.ok) return core;
  const covered = coverFace(wish, face.value, coreRadius);
  if (!covered.ok) return covered;
  const { base, bands, staves } = covered.value;
  const plan = planLayers(base, coreRadius, wish.sheets, wish.rule, wish.weights);
  if (!plan.ok) return plan;
  const laid = layLayers(plan.value.layers, wish.seamTurnDeg);
  if (!laid.ok) return laid;
  const { layers } = laid.value;
  const skin = coverSeams(bands, layers, wish.seamTurnDeg);
  const coverPieces = covered.value.coverPieces.map((piece, i) =>
    skin.length === 0
      ? piece
      : { ...piece, notes: [...piece.notes, `Its seam stands at ${skin[i].seamDeg.toFixed(1)}°.`] },
  );
  const wound: WoundStrip[] = [];
  // Bare core that a strip runs over is wound as well as what is built up.
  const ground = withCore(face.value, coreRadius, cut.value);
  for (const [i, one] of wish.windings.entries()) {
    const made = windStrip(ground, one, i + 1);
    if (!made.ok) return made;
    wound.push(made.value);
  }
  const capRadii = [
    capRadius(wish.core.startCap, face.value, coreRadius, 0),
    capRadius(wish.core.endCap, face.value, coreRadius, cut.value),
  ] as const;
  const caps = capDiscs(wish.core, capRadii);
  const rest = restOf(base, layers, coreRadius);
  const sandMm3 = sum(layers.map((one) => one.sandMm3)) + sum(staves.map((one) => one.sandMm3));
  const fillMm3 = sum(layers.map((one) => one.fillMm3)) + plan.value.fillMm3 + sum(staves.map((one) => one.fillMm3));
  const solid = face.value.length === 0 ? 0 : volumeBetween(face.value, wholeOf(face.value), 0, Infinity);
  const coreWithin =
    face.value.length === 0 ? 0 : Math.PI * coreRadius ** 2 * (wholeOf(face.value).to - wholeOf(face.value).from);
  const pieces: readonly PlainDraft[] = [
    ...laid.value.pieces.flat(),
    ...coverPieces,
    ...caps,
    ...wound.flatMap(({ piece }) => piece ?? []),
  ];
  const findings: readonly Finding[] = [
    ...laid.value.findings,
    ...staveFindings(staves),
    ...wound.flatMap((one) => one.findings),
  ];
  const built = {
    core: core.value,
    rule: wish.rule,
    layers,
    skin,
    staves,
    tapers: tapersOf(face.value, layers),
    windings: wound.map(({ winding }) => winding),
    sandMm3,
    fillMm3,
    sandDepthMm: rest.sand,
    fillDepthMm: rest.fill,
    cost: plan.value.cost,
    solidMm3: solid,
    coreMm3: coreWithin,
  };
  const view = sideView(
    wish.core,
    built,
    face.value,
    wound.map(({ path }) => path),
    capRadii,
  );
  return ok({
    ...built,
    sideView: view,
    findings,
    work: {
      pieces,
      steps: workSteps(wish, built, laid.value.pieces, coverPieces, caps, wound),
      findings,
      form: formOf(wish, face.value, coreRadius, cut.value, capRadii),
    },
  });
}

interface Covered {
  readonly base: Profile;
  readonly bands: readonly LooseBand[];
  readonly staves: readonly StaveSet[];
  readonly coverPieces: readonly PlainDraft[];
}

/** What lies on top, and the profile that is left to layers. */
function coverFace(wish: BuildUpWish, face: Profile, coreRadius: number): Result<Covered> {
  if (wish.skin !== undefined) {
    const { sheetMm } = wish.skin;
    const k = wish.sheets.find(({ thicknessMm }) => thicknessMm === sheetMm)?.neutralFraction ?? 0.5;
    const made = makeSkin(face, coreRadius, wish.skin, k);
    if (!made.ok) return made;
    const { base, bands, pieces } = made.value;
    return ok({ base, bands, staves: [], coverPieces: pieces });
  }
  let base = face;
  const [staves, coverPieces]: [StaveSet[], PlainDraft[]] = [[], []];
  const inOrder = [...wish.staves].sort((a, b) => a.fromMm - b.fromMm);
  for (const [i, one] of inOrder.entries()) {
    if (i > 0 && one.fromMm < inOrder[i - 1].toMm)
      return fail(
        'core/staves',
        `Two sets of staves lie over one another at ${one.fromMm} mm: let one end where the other begins.`,
      );
    const made = makeStaves(base, coreRadius, one, wish.rule, i + 1);
    if (!made.ok) return made;
    base = made.value.base;
    staves.push(made.value.set);
    coverPieces.push(made.value.piece);
  }
  return ok({ base, bands: [], staves, coverPieces });
}

/** The seam of a band keeps away from those of the layers it lies on and from that of the band before it. */
function coverSeams(
  bands: readonly LooseBand[],
  layers: readonly BuiltLayer[],
  seamTurnDeg: number,
): readonly SkinBand[] {
  const placed: SkinBand[] = [];
  for (const band of bands) {
    const under = layers.filter(({ fromMm, toMm }) => fromMm < band.toMm && toMm > band.fromMm);
    // What another layer hides all along the band does not show through.
    const top = under.filter(
      (one) =>
        !under.some(
          ({ depth, fromMm, toMm }) =>
            depth > one.depth && fromMm <= Math.max(one.fromMm, band.fromMm) && toMm >= Math.min(one.toMm, band.toMm),
        ),
    );
    const beneath = [...top.flatMap(({ seamsDeg }) => seamsDeg), ...placed.slice(-1).map(({ seamDeg }) => seamDeg)];
    const first = (placed.at(-1)?.seamDeg ?? top[0]?.seamsDeg[0] ?? -seamTurnDeg) + seamTurnDeg;
    placed.push({ ...band, seamDeg: seamPlaces(first, 1, beneath)[0] });
  }
  return placed;
}

/** The profile with the bare core before and after it. */
function withCore(face: Profile, coreRadius: number, cut: number): Profile {
  const bare = (from: number, to: number): Profile => (to > from ? [{ from, to, c: [coreRadius, 0, 0, 0] }] : []);
  if (face.length === 0) return bare(0, cut);
  const { from, to } = wholeOf(face);
  return [...bare(0, from), ...face, ...bare(to, cut)];
}

const staveFindings = (staves: readonly StaveSet[]): readonly Finding[] =>
  staves
    .filter(({ tableTiltDeg }) => tableTiltDeg > 45)
    .map(({ count, tableTiltDeg }) => ({
      code: 'core/staves-steep',
      severity: 'warning' as const,
      text: `The long edges of ${count} staves lean ${tableTiltDeg.toFixed(1)}°, beyond what a saw table tilts: take more staves.`,
      value: tableTiltDeg,
      limit: 45,
      unit: '°',
      where: {},
    }));

/** The finished thing, caps and all, turned round z; null where nothing can be turned. */
function formOf(
  wish: BuildUpWish,
  face: Profile,
  coreRadius: number,
  cut: number,
  capRadii: readonly [number, number],
) {
  const points: ProfilePoint[] = [];
  const add = (lengthMm: number, radiusMm: number): void => {
    const last = points.at(-1);
    if (last?.lengthMm === lengthMm && Math.abs(last.radiusMm - radiusMm) < 1e-9) return;
    points.push({ lengthMm, radiusMm });
  };
  const [off, endOff] = [standsOff(wish.core.startCap), standsOff(wish.core.endCap)];
  if (off > 0) for (const x of [-off, 0]) add(x, capRadii[0]);
  add(0, coreRadius);
  for (const [x, r] of profileLine(face)) {
    if (points.at(-1)?.lengthMm !== x && x === face[0].from) add(x, coreRadius);
    add(x, r);
  }
  if (face.length > 0) add(wholeOf(face).to, coreRadius);
  add(cut, coreRadius);
  if (endOff > 0) for (const x of [cut, cut + endOff]) add(x, capRadii[1]);
  const mesh = turnedMesh(points);
  return mesh.ok ? mesh.value : null;
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);
