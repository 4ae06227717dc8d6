export interface Dependency {
  readonly name: string;
  readonly path: string;
  readonly version: string;
  readonly licence: string;
  readonly isForTools: boolean;
  readonly isOptional: boolean;
  readonly resolved: string | null;
  readonly integrity: string | null;
  readonly hasInstallScript: boolean;
  readonly deprecated: string | null;
}
export interface Advisory {
  readonly id: string;
  readonly package: string;
  readonly below: string;
  readonly what: string;
  readonly standing?: string;
}
export function readDependencies(lock: { readonly packages: object }): Dependency[];
export function isAllowed(licence: string, isForTools: boolean): boolean;
export function faultsOf(dependencies: readonly Dependency[]): string[];
export function noticesFor(
  dependencies: readonly Dependency[],
  advisories: readonly Advisory[],
): (Advisory & { readonly version: string })[];
export function isBelow(version: string, limit: string): boolean;
export function otherRegistries(): string[];
