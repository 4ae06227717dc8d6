import type { PlainStep } from '../../model/plain-piece.ts';
import type { Stack, StackDowel, StackLayer, StackPiece } from '../../model/stack.ts';

/** Cautions beside the work, by their ids in shared/cautions.json. */
const GLUE = ['adhesive'] as const;
const SAND = ['dust', 'machines'] as const;

/** Rests under this are no work, mm³. */
const LEAST_REST_MM3 = 1;

/**
 * The order in which a stack is made: layer on layer from the first, dowels put in with the first layer they go through, then what is filled and sanded.
 * @param keyOf  the key of the piece that a layer's piece is cut from.
 */
export function stackSteps(stack: Stack, keyOf: (name: string) => string): readonly PlainStep[] {
  const { layers, dowels } = stack;
  const steps: PlainStep[] = [];
  for (const [i, layer] of layers.entries()) {
    if (i > 0) steps.push(...layerSteps(layer, layers[i - 1], dowels, keyOf));
    const begin = dowels.filter(({ fromLayer }) => fromLayer === layer.number);
    if (begin.length > 0) steps.push(dowelStep(begin, layer, keyOf));
  }
  steps.push(...coreStep(layers, keyOf), ...restSteps(stack, keyOf));
  return steps;
}

function layerSteps(
  { number, pieces, thicknessMm }: StackLayer,
  before: StackLayer,
  dowels: readonly StackDowel[],
  keyOf: (name: string) => string,
): readonly PlainStep[] {
  const onDowels = dowels.some(({ fromLayer, toLayer }) => fromLayer < number && toLayer >= number);
  const step = (own: readonly StackPiece[], text: string): PlainStep => ({
    work: 'stack',
    pieces: own.map(({ name }) => keyOf(name)),
    text,
    glueMm2: 2 * own.reduce((sum, { restsOn }) => sum + restsOn.reduce((all, one) => all + one.areaMm2, 0), 0),
    cautions: own.some(({ restsOn }) => restsOn.length > 0) ? GLUE : [],
  });
  const lying = pieces.filter(({ restsOn }) => restsOn.length > 0);
  const hanging = pieces.filter(({ restsOn }) => restsOn.length === 0);
  const many = lying.length === 1 ? 'layer' : 'the pieces of layer';
  return [
    ...(lying.length === 0
      ? []
      : [
          step(
            lying,
            `Glue ${many} ${lying.length === 1 ? lying[0].name : number} (${short(thicknessMm)} mm) on layer ${before.number}, up marks the same way, ${onDowels ? 'over the dowels' : 'inside the placing line'}.`,
          ),
        ]),
    ...(hanging.length === 0
      ? []
      : [
          step(
            hanging,
            `Keep ${hanging.map(({ name }) => name).join(', ')} at hand: nothing of layer ${before.number} lies under ${hanging.length === 1 ? 'it' : 'them'}, so ${hanging.length === 1 ? 'it is' : 'they are'} glued under the next layer.`,
          ),
        ]),
  ];
}

function dowelStep(dowels: readonly StackDowel[], layer: StackLayer, keyOf: (name: string) => string): PlainStep {
  const lengths = [...new Set(dowels.map(({ lengthMm, toLayer }) => `${short(lengthMm)} mm to layer ${toLayer}`))];
  return {
    work: 'insert',
    pieces: layer.pieces.map(({ name }) => keyOf(name)),
    text: `Stand ${dowels.length} ${dowels.length === 1 ? 'dowel' : 'dowels'} in layer ${layer.number}: ${lengths.join(', ')}.`,
    glueMm2: 0,
    cautions: [],
  };
}

function coreStep(layers: readonly StackLayer[], keyOf: (name: string) => string): readonly PlainStep[] {
  const cored = layers.flatMap(({ pieces }) => pieces.filter(({ holes }) => holes.some(({ kind }) => kind === 'core')));
  if (cored.length === 0) return [];
  const radius = cored[0].holes.find(({ kind }) => kind === 'core')?.radiusMm ?? 0;
  return [
    {
      work: 'slide',
      pieces: [...new Set(cored.map(({ name }) => keyOf(name)))],
      text: `Slide the stack on its core, through holes of ${short(2 * radius)} mm.`,
      glueMm2: 0,
      cautions: [],
    },
  ];
}

function restSteps({ layers }: Stack, keyOf: (name: string) => string): readonly PlainStep[] {
  const step = (work: 'fill' | 'sand', text: (volume: string, depth: string) => string): readonly PlainStep[] => {
    const own = layers.filter((layer) => layer[work].volumeMm3 > LEAST_REST_MM3);
    if (own.length === 0) return [];
    const volume = own.reduce((sum, layer) => sum + layer[work].volumeMm3, 0);
    const depth = Math.max(...own.map((layer) => layer[work].depthMm + layer[work].depthBoundMm));
    return [
      {
        work,
        pieces: [...new Set(own.flatMap(({ pieces }) => pieces.map(({ name }) => keyOf(name))))],
        text: text(`${(volume / 1000).toFixed(1)} cm³`, `${depth.toFixed(1)} mm`),
        glueMm2: 0,
        cautions: SAND,
      },
    ];
  };
  return [
    ...step('fill', (volume, depth) => `Fill the steps, ${volume}, at most ${depth} deep; sand when it is dry.`),
    ...step(
      'sand',
      (volume, depth) => `Sand the steps down to the lines of the finished surface: ${volume}, at most ${depth} deep.`,
    ),
  ];
}

const short = (mm: number): string => String(Number(mm.toFixed(2)) + 0);
