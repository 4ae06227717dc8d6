import { spoken } from './language/spoken.ts';

const count = (n: number): string => `${n}\u00a0${n === 1 ? 'layer' : 'layers'}`;

/** Texts about a core and what is built up on it. */
export const BUILD_UP_WORDS = spoken('build-up', {
  name: 'core',
  add: 'Build up a core',
  addWhy: 'Foam wrapped layer on layer on a pipe or rod.',
  core: 'Core',
  pipe: 'Pipe or rod',
  byDiameter: 'by its diameter',
  diameter: 'Diameter',
  long: 'Length over all',
  built: 'Built up on it',
  profile: 'Profile: length and radius, mm',
  profileMeans: 'As 0:26, 300:22: radius 26 at the start, 22 at 300. After ~ it goes on smoothly.',
  rule: 'Foam and profile',
  rules: { sand: 'to be sanded down to it', middle: 'half a sheet either way', fill: 'to be filled up to it' },
  wound: 'Wound strip',
  wind: 'Wind a strip round it',
  unwind: 'leave the strip out',
  width: 'Width',
  pitch: 'Pitch',
  overlap: 'Overlap',
  side: (core: string, layers: number) => `The core cut along its axis: ${core}, ${count(layers)}`,
  sideWords: 'Boxes are layers, the wide line is the finished surface.',
} as const);
