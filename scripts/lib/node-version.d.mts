/** Whether the tools run on a Node of this version, for example 20.19.0. */
export function isNodeNewEnough(version: string): boolean;
