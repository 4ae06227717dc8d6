import { Complaint } from './complaint.mjs';

/** The oldest Node of each line that Vite runs on; lines above the last are all new enough. Odd lines between are not. */
const OLDEST = [
  { major: 20, minor: 19 },
  { major: 22, minor: 12 },
];

/** @param {string} version  as in `process.versions.node`, for example 20.19.0 */
export function isNodeNewEnough(version) {
  const [major, minor] = version.split('.').map(Number);
  const line = OLDEST.find((oldest) => oldest.major === major);
  return line ? minor >= line.minor : major > OLDEST[OLDEST.length - 1].major;
}

export function checkNode(version = process.versions.node) {
  if (isNodeNewEnough(version)) return;
  throw new Complaint(
    `Foamloft needs Node 20.19 or newer (or 22.12 or newer), and this is ${version}: install a newer one.`,
    2,
  );
}
