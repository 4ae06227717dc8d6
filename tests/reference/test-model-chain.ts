import { readFileSync } from 'node:fs';
import type { TestModel } from './seams/test-models.ts';
import { runChain, type ChainInput, type ChainOutput } from './run-chain.ts';

const fileOf = (name: string): URL => new URL(name, import.meta.url);

export const modelBytes = ({ modelFile }: TestModel): Uint8Array => readFileSync(fileOf(modelFile));

/** The seams kept beside a test model. */
export function seamsOf({ seamFile }: TestModel): [number, number][] {
  return (JSON.parse(readFileSync(fileOf(seamFile), 'utf8')) as { edges: [number, number][] }).edges;
}

/** The chain on a test model in 6 mm foam whose middle the model is: lengths are then the model's own. */
export async function runModel(model: TestModel, change: Partial<ChainInput> = {}): Promise<ChainOutput> {
  return runChain({
    fileName: `${model.name}.obj`,
    bytes: modelBytes(model),
    seams: seamsOf(model),
    scale: model.scale,
    thicknessMm: 6,
    modelIs: 'middle',
    neutralFraction: 0.5,
    ...change,
  });
}
