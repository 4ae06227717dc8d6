import type { RoomField } from '../model/room-field.ts';
import { roomOfTriangle } from './room-field.ts';
import type { BendField } from '../model/bend-field.ts';
import { isMeasure, type Colouring } from './bench-contract.ts';
import type { BenchColours } from './bench-theme.ts';
import type { SolidDisplay } from './display.ts';
import { bytesOf } from './sheets-view.ts';
import { signedStretch, stretchColour } from './stretch-colours.ts';

/** Quiet grounds to tell pieces apart, sRGB, of like lightness on charcoal: moss, slate, rust, plum, olive, teal, clay, heather. */
const PIECE_GROUNDS = [
  [94, 108, 78],
  [83, 101, 122],
  [133, 86, 68],
  [112, 84, 110],
  [116, 107, 66],
  [70, 112, 110],
  [138, 103, 82],
  [97, 94, 126],
] as const;

/** Foam under coloured seams and where there is no figure: a quiet grey, so that both ends of the scale stand out, sRGB. */
const QUIET_GROUND = [206, 203, 196] as const;

/** How areas of the sculpt give, as numbers per triangle. */
export const GIVES = { rest: 0, stiff: 1, soft: 2 } as const;

/** Tones of areas that give otherwise than the rest, sRGB, and how much of them is mixed in: chalk for stiff, rust for what will be warmed. */
const GIVE_TONES: readonly (readonly [number, number, number])[] = [
  [0, 0, 0],
  [236, 228, 210],
  [158, 84, 60],
];
const TONE_SHARE = [0, 0.3, 0.55];

/** What is measured, and the figures at the ends of the scale. */
export interface Measures {
  readonly limitPct: number;
  /** Round the cores, for the colouring `room`; one of another sculpt is out of date and passed over. */
  readonly room: RoomField | null;
  /** For the colouring `bend`; of other pieces it is out of date and passed over. */
  readonly bends: BendField | null;
  readonly bendLimitPct: number;
}

/**
 * Colours foam and sculpt triangle by triangle, both alike where a measure is shown.
 * @param paints 0xrrggbb per triangle of the sculpt, -1 for none; a list of another length is out of date and passed over.
 * @param gives see {@link GIVES}, per triangle of the sculpt; a list of another length is out of date and passed over.
 */
export function paintSolid(
  solid: SolidDisplay,
  colouring: Colouring,
  { limitPct, room, bends, bendLimitPct }: Measures,
  colours: BenchColours,
  gives: Uint8Array,
  paints: Int32Array,
): void {
  const { form, body, pieces } = solid;
  const { sculpt } = solid.base;
  const count = sculpt.triangles.length / 3;
  const foam = bytesOf(colours.foam, 1);
  const clay = bytesOf(colours.sculpt, 1);
  for (let t = 0; t < count; t += 1) {
    body?.paint(t, foam[0], foam[1], foam[2]);
    form.paint(t, clay[0], clay[1], clay[2]);
  }
  if (body === null && sculpt.colours !== null && colouring === 'plain') paintFileColours(solid, sculpt.colours);
  if (colouring === 'room') paintRoom(solid, room);
  else if (colouring === 'paint') paintPaints(solid, paints);
  else if (colouring === 'bend') paintBends(solid, bends, bendLimitPct);
  else if (pieces !== null && colouring !== 'plain') {
    const scale = scaleBytes();
    for (const patch of pieces.patches) {
      const { stretchPct, squashPct, meshTriangles } = patch;
      for (let i = 0; i < meshTriangles.length; i += 1) {
        const t = meshTriangles[i];
        let rgb: readonly number[];
        if (colouring === 'fit' || colouring === 'pull') rgb = QUIET_GROUND;
        else if (colouring === 'pieces') rgb = PIECE_GROUNDS[Math.max(0, patch.piece) % PIECE_GROUNDS.length];
        else if (stretchPct === null || squashPct === null) continue;
        else rgb = scale[scalePlace(signedStretch(stretchPct[i], squashPct[i]) / limitPct)];
        body?.paint(t, rgb[0], rgb[1], rgb[2]);
        form.paint(t, rgb[0], rgb[1], rgb[2]);
      }
    }
  }
  if (!isMeasure(colouring) && colouring !== 'paint' && 3 * gives.length === sculpt.triangles.length)
    paintGives(solid, gives);
  form.painted();
  body?.skins.painted();
}

/** Each triangle by the least room of its corners; a quiet grey where no core is beside it. */
function paintRoom({ form, body, base }: SolidDisplay, room: RoomField | null): void {
  const { triangles, positions } = base.sculpt;
  const field = room !== null && 3 * room.atVertices.length === positions.length ? room : null;
  const scale = scaleBytes();
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const mm = field === null ? NaN : roomOfTriangle(field.atVertices, triangles, t);
    const [r, g, b] = field === null || Number.isNaN(mm) ? QUIET_GROUND : scale[scalePlace(mm / field.limitMm)];
    body?.paint(t, r, g, b);
    form.paint(t, r, g, b);
  }
}

/** Each triangle by how its skins are strained; a quiet grey where they are not. */
function paintBends({ form, body, pieces }: SolidDisplay, bends: BendField | null, limitPct: number): void {
  const scale = scaleBytes();
  for (const [i, { meshTriangles }] of (pieces?.patches ?? []).entries()) {
    const field = bends?.patches[i] ?? null;
    const known = field?.strainPct.length === meshTriangles.length ? field.strainPct : null;
    for (let k = 0; k < meshTriangles.length; k += 1) {
      const [r, g, b] = known === null ? QUIET_GROUND : scale[scalePlace(known[k] / limitPct)];
      body?.paint(meshTriangles[k], r, g, b);
      form.paint(meshTriangles[k], r, g, b);
    }
  }
}

/** Each triangle as it is painted; what is not stays as it is. */
function paintPaints({ form, body, base }: SolidDisplay, paints: Int32Array): void {
  if (3 * paints.length !== base.sculpt.triangles.length) return;
  for (let t = 0; t < paints.length; t += 1) {
    if (paints[t] < 0) continue;
    const [r, g, b] = [paints[t] >> 16, (paints[t] >> 8) & 255, paints[t] & 255];
    body?.paint(t, r, g, b);
    form.paint(t, r, g, b);
  }
}

function paintGives({ form, body }: SolidDisplay, gives: Uint8Array): void {
  for (let t = 0; t < gives.length; t += 1) {
    const [tone, share] = [GIVE_TONES[gives[t]], TONE_SHARE[gives[t]]];
    if (share === 0) continue;
    form.tone(t, tone, share);
    body?.skins.tone(t, tone, share);
  }
}

/** Steps of the scale of stretch on each side of 0: finer than a screen shows. */
const SCALE_STEPS = 200;

const scaleBytes = (): readonly (readonly number[])[] =>
  Array.from({ length: 2 * SCALE_STEPS + 1 }, (_, i) =>
    stretchColour(i - SCALE_STEPS, SCALE_STEPS).map((c) => Math.round(255 * c)),
  );

const scalePlace = (share: number): number => Math.round(SCALE_STEPS * (1 + Math.max(-1, Math.min(1, share))));

function paintFileColours({ form, base }: SolidDisplay, colours: Float32Array): void {
  const { triangles } = base.sculpt;
  for (let c = 0; c < triangles.length; c += 1) {
    for (let k = 0; k < 3; k += 1) form.colours[4 * c + k] = Math.round(255 * colours[3 * triangles[c] + k]);
  }
}
