import { spawn } from 'node:child_process';

/** Whether somebody sits before this machine's screen: a terminal, and neither an automatic run nor a session from afar. */
export function hasSomebodyToShow(env = process.env, isTerminal = process.stdout.isTTY === true) {
  if (!isTerminal || env.CI || env.SSH_CONNECTION || env.SSH_TTY) return false;
  return process.platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** Opens an address in the default browser; when that does not work, the printed address is enough. */
export function openBrowser(address) {
  const [program, words] = {
    darwin: ['open', [address]],
    win32: ['cmd', ['/c', 'start', '', address]],
  }[process.platform] ?? ['xdg-open', [address]];
  const child = spawn(program, words, { stdio: 'ignore', detached: true });
  child.once('error', () => {});
  child.unref();
}
