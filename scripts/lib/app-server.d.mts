export interface AppServer {
  /** With a slash at its end. */
  readonly url: string;
  close(): Promise<void>;
}
export function serveApp(firstPort: number, folder?: string): Promise<AppServer>;
export function policyOf(page: string): string;
export function fileAsked(address: string, files: ReadonlySet<string>): string | null;
export function isForThisMachine(host: string | undefined): boolean;
