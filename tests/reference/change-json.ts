/**
 * A JSON text's value with one place changed.
 * @param path    keys and indices parted by dots; an index of -1 is the last
 * @param change  gets what is there, gives what shall be; undefined takes it out
 */
export function changeJson(text: string, path: string, change: (old: unknown) => unknown): unknown {
  const value: unknown = JSON.parse(text);
  const steps = path.split('.');
  let holder: unknown = value;
  for (const step of steps.slice(0, -1)) holder = (holder as Record<string, unknown>)[keyIn(holder, step)];
  const last = keyIn(holder, steps[steps.length - 1]);
  const place = holder as Record<string, unknown>;
  const changed = change(place[last]);
  if (changed !== undefined) place[last] = changed;
  else if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else delete place[last];
  return value;
}

function keyIn(holder: unknown, step: string): string {
  if (step === '-1' && Array.isArray(holder)) return String(holder.length - 1);
  if (typeof holder !== 'object' || holder === null || !(step in holder)) throw new Error(`nothing is at ${step}`);
  return step;
}
