import { Memo } from '../base/memo.ts';
import type { PartId } from '../base/ids.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import { hiddenDirection } from '../model/hidden-side.ts';
import type { SeamChain } from '../model/seams.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { SculptPart } from '../project/project.ts';
import type { FlatGround } from '../steps/assembly/on-pieces.ts';
import type { TrimGround } from '../steps/trim/trim-ground.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import type { CutSculpt, LayerOutcome, SizedSculpt } from './outcome.ts';
import { remembered } from './remembered.ts';

/** Results kept: a maker goes a few steps back and forth over a few sculpts. */
const KEPT = 16;

/** A sculpt as it was parted, as far as strips are laid on it: the same object while none of it changes. */
export interface TrimSculpt {
  readonly sculpt: SizedSculpt;
  /** What was parted; vertices of the sculpt keep their numbers. */
  readonly mesh: Mesh;
  readonly chains: readonly SeamChain[];
  /** Of the sheet that is seen. */
  readonly shell: ShellLayer;
  /** Where the mesh was cut finer along paths. */
  readonly drawn: Pick<DrawnSurface, 'sourceOfTriangle' | 'placed'> | null;
  /** Its pieces of that sheet as they lie flat, as far as they can. */
  readonly grounds: readonly FlatGround[];
  /** The direction of the file that is up. */
  readonly up: SculptPart['upAxis'];
  /** Where nobody looks; null where all sides are seen. */
  readonly hidden: Vec3 | null;
}

/** Gives the sculpt of a part that strips lie on; null where the project has none of that id, or it was not parted. */
export type TrimSculptOf = (part: PartId) => TrimSculpt | null;

/** Remembers what strips are laid on. */
export class TrimSculpts {
  readonly #known = new Memo<unknown[], TrimSculpt>(KEPT);

  /** @param cut  the sheet that is seen. @param flats  its patches as they lie flat. */
  of(
    { hiddenSide, upAxis }: Pick<SculptPart, 'hiddenSide' | 'upAxis'>,
    sculpt: SizedSculpt,
    drawn: DrawnSurface | null,
    { mesh, chains, shell, patches }: CutSculpt,
    flats: LayerOutcome['flats'],
  ): TrimSculpt {
    const key = [
      sculpt.mesh,
      sculpt.model,
      mesh,
      chains,
      shell,
      drawn?.cut,
      drawn?.pathOfLine,
      ...(flats ?? []),
      hiddenSide,
      upAxis,
    ];
    return remembered(this.#known, key, () => ({
      sculpt,
      mesh,
      chains,
      shell,
      drawn,
      grounds: (flats ?? []).flatMap((flat, i) => (flat === null ? [] : [{ patch: patches[i], uv: flat.uv }])),
      up: upAxis,
      hidden: hiddenSide === undefined ? null : hiddenDirection(hiddenSide, upAxis),
    }));
  }
}

/**
 * The outside of the foam that is seen, and that moved outward to where a strip keeps its length.
 * @param neutralMm  how far, mm: neutral fraction of the strip times its thickness.
 */
export function groundOf({ mesh, shell }: TrimSculpt, neutralMm: number): TrimGround {
  const { facePositions, backPositions, thicknessMm } = shell;
  const { triangles } = mesh;
  const topology = topologyOf(mesh);
  const foot = { positions: facePositions, triangles, topology };
  if (neutralMm === 0) return { foot, neutral: foot };
  // Its vertices move on as they moved through the sheet, so that planes stay planes.
  const share = neutralMm / thicknessMm;
  const positions = facePositions.map((face, i) => face + share * (face - backPositions[i]));
  return { foot, neutral: { positions, triangles, topology } };
}
