import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { length3, pointAt3, rad, sub3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { FoamRules, PieceSetting } from '../../model/foam-settings.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';
import { chooseBendStyle, kerfedChoice, type BendChoice } from './bend-style.ts';
import { bevelsBetween, squareBevels, type BevelSide, type ChainBevels } from './chain-bevels.ts';
import { panelCorners, type PanelCorner } from './panel-corners.ts';
import { kerfTurn, type KerfTurn } from './kerf-turn.ts';
import { findPanels, type Panels } from './panels.ts';
import { settingsOfPatches } from './piece-names.ts';
import { surfaceSteps, type PieceSurface } from './piece-surface.ts';

/** How a patch's piece bends: what follows from the sculpt and the maker's wish alone, before it is laid flat. */
export interface PatchBend {
  readonly surface: PieceSurface;
  readonly panels: Panels;
  readonly choice: BendChoice;
  /** How far it has turned at each place, where it bends by kerfs. */
  readonly kerf?: KerfTurn;
  /** Where it is one flat panel, those of its corners that it shares with more panels than meet in one point. */
  readonly corners: readonly PanelCorner[];
}

/** How all pieces of a part bend, and how their seams lean. */
export interface PartBends {
  /** One per patch. */
  readonly patches: readonly PatchBend[];
  /** One per chain: half its fold. */
  readonly bevels: readonly ChainBevels[];
}

export const partBends = (...given: Parameters<typeof partBendSteps>): PartBends => runAtOnce(partBendSteps(...given));

/** The same in stretches. */
export function* partBendSteps(
  mesh: Mesh,
  patches: readonly Patch[],
  chains: readonly SeamChain[],
  pieceSettings: readonly PieceSetting[],
  rules: FoamRules,
): Stepwise<PartBends> {
  const wishes = settingsOfPatches(mesh, patches, pieceSettings);
  const bends: PatchBend[] = [];
  for (const [i, patch] of patches.entries()) bends.push(yield* bendOf(mesh, patch, rules, wishes[i]));
  const bevels: ChainBevels[] = [];
  for (const chain of chains) {
    yield;
    bevels.push(bevelsOfChain(mesh, chain, bends));
  }
  return { patches: bends, bevels };
}

/** How the piece of one patch alone bends. */
export const patchBend = (
  mesh: Mesh,
  patch: Patch,
  rules: FoamRules,
  pieceSettings: readonly PieceSetting[],
): PatchBend => runAtOnce(bendOf(mesh, patch, rules, settingsOfPatches(mesh, [patch], pieceSettings)[0]));

function* bendOf(mesh: Mesh, patch: Patch, rules: FoamRules, wish: Partial<PieceSetting>): Stepwise<PatchBend> {
  yield;
  const surface = yield* surfaceSteps(mesh, patch);
  yield;
  const panels = findPanels(surface, rad(rules.foldLimitDeg));
  yield;
  const point = (corner: number) => pointAt3(mesh.positions, patch.meshVertices[patch.triangles[corner]]);
  const lengthOf = (h: number): number => length3(sub3(point(h % 3 === 2 ? h - 2 : h + 1), point(h)));
  const corners = panelCorners(mesh, surface);
  if (wish.bendStyle === 'kerfed') {
    const kerf = kerfTurn(mesh, surface);
    const choice = kerfedChoice(kerf);
    return { surface, panels, choice, corners, ...(typeof kerf === 'string' ? {} : { kerf }) };
  }
  return { surface, panels, choice: chooseBendStyle(surface, panels, lengthOf, rules, wish.bendStyle), corners };
}

/** Open edges and laps are cut square (foam model 4). */
function bevelsOfChain(mesh: Mesh, chain: SeamChain, bends: readonly PatchBend[]): ChainBevels {
  if (chain.kind === 'open' || chain.kind === 'lap') return squareBevels(chain);
  const sides = chain.sides.map((side, which): BevelSide => {
    const { surface, panels, choice } = bends[side.patch];
    return { side, which: which === 0 ? 0 : 1, surface, panels, isSmooth: choice.style !== 'grooved' };
  });
  return bevelsBetween(mesh, chain, sides);
}
