import type { Look } from '../viewport/bench-contract.ts';

/** What can be looked at, in the order it is offered. */
export const LOOKS: readonly Look[] = ['foam', 'face', 'neutral', 'back', 'sculpt', 'prop'];
