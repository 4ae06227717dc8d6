import { layerId, type LayerId } from '../base/ids.ts';
import { onSculpt, type Command } from './commands.ts';
import { MOST_LAYERS } from './project-file.ts';
import type { LayerChoice, SculptPart } from './project.ts';
import { isStagger } from './stagger-limits.ts';

export type WallSide = 'inside' | 'outside';

/** Puts one more sheet on a side of the wall, of the foam that lies there; nothing where the wall has {@link MOST_LAYERS}. */
export const addLayer = (side: WallSide): Command =>
  onSculpt('add a sheet', (part) => {
    const { layers } = part;
    if (layers.length >= MOST_LAYERS) return part;
    const beside = side === 'inside' ? layers[0] : layers[layers.length - 1];
    const added = { ...beside, id: freeLayerId(layers) };
    return { ...part, layers: side === 'inside' ? [added, ...layers] : [...layers, added] };
  });

/** Takes a sheet out of the wall; the last one stays, as does the wall where none has that id. */
export const removeLayer = (id: LayerId): Command =>
  onSculpt('take a sheet away', (part) => {
    const layers = part.layers.filter((layer) => layer.id !== id);
    return layers.length === 0 || layers.length === part.layers.length ? part : { ...part, layers };
  });

/** Changes a sheet's place with the next one toward a side of the wall; nothing where there is none. */
export const moveLayer = (id: LayerId, toward: WallSide): Command =>
  onSculpt(`move a sheet ${toward === 'inside' ? 'inward' : 'outward'}`, (part) => swapped(part, id, toward));

/**
 * Lays the seams of a sheet beside those of the sheet that is seen.
 * @param mm  0: over one another. Nothing happens where it is out of {@link isStagger}, or no sheet has that id.
 */
export const setStagger = (id: LayerId, mm: number): Command =>
  onSculpt('stagger the seams', (part) => {
    const now = part.layers.find((layer) => layer.id === id);
    if (now === undefined || (mm !== 0 && !isStagger(mm)) || (now.staggerMm ?? 0) === mm) return part;
    const { staggerMm: _, ...plain } = now;
    const changed = mm === 0 ? plain : { ...plain, staggerMm: mm };
    return { ...part, layers: part.layers.map((layer) => (layer === now ? changed : layer)) };
  });

function swapped(part: SculptPart, id: LayerId, toward: WallSide): SculptPart {
  const from = part.layers.findIndex((layer) => layer.id === id);
  const to = toward === 'inside' ? from - 1 : from + 1;
  if (from < 0 || to < 0 || to >= part.layers.length) return part;
  const layers = [...part.layers];
  [layers[from], layers[to]] = [layers[to], layers[from]];
  return { ...part, layers };
}

/** `layer-1`, `layer-2` …: the first that is free. */
export function freeLayerId(layers: readonly LayerChoice[]): LayerId {
  for (let i = 1; ; i += 1) if (!layers.some(({ id }) => id === `layer-${i}`)) return layerId(`layer-${i}`);
}
