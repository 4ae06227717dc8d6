import type { PullWay } from '../model/springing.ts';
import { spoken } from './language/spoken.ts';

const WAYS: Readonly<Record<PullWay, string>> = {
  opensFace: 'wants to open at the face',
  opensBack: 'wants to open at the back',
  apart: 'is pulled apart',
  slides: 'wants to slide along itself',
  lifts: 'wants to lift off on one side',
};

/** Texts of what springs back. Part of the words of the window. */
export const SPRING_WORDS = spoken('spring', {
  heading: 'Warm or tape these joints first',
  seam: (letter: string) => `Seam ${letter}`,
  pull: (newtonPerCm: string) => `${newtonPerCm}\u00a0N/cm`,
  letGo: (length: string) => `let go, its edges stand up to ${length} off`,
  way: (way: PullWay) => WAYS[way],
  more: (n: number) => `${n} more`,
  guide:
    'A guide: foam of a usual stiffness, bent cold, all elastic and held in shape. Warm foam pulls far less. Grooved pieces bend in their grooves and are left out.',
});
