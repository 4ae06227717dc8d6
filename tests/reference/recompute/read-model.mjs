/**
 * A reader of OBJ and STL of its own, as small as the check needs: corners in file order and polygons as they stand.
 * It shares no line with the product, so that one can be held against the other.
 */

/**
 * @param {Uint8Array} bytes
 * @returns {{ positions: number[][], faces: number[][] }} corners in the file's unit, polygons as corner numbers from 0. STL corners are
 *   numbered by first appearance, equal float32 triples being one corner.
 */
export function readModelFile(bytes) {
  if (isBinaryStl(bytes)) return readBinaryStl(bytes);
  const text = new TextDecoder().decode(bytes);
  return /^\s*solid\b/.test(text) && /\bvertex\b/.test(text) ? readAsciiStl(text) : readObj(text);
}

/** A binary STL says its own size: 84 bytes of head and 50 for each facet. */
function isBinaryStl(bytes) {
  if (bytes.length < 84) return false;
  return bytes.length === 84 + 50 * new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
}

function readObj(text) {
  const positions = [];
  const faces = [];
  for (const line of text.replace(/\\\r?\n/g, ' ').split(/\r?\n/)) {
    const [word, ...rest] = line.replace(/#.*/, '').trim().split(/\s+/);
    if (word === 'v') positions.push(rest.slice(0, 3).map(Number));
    if (word === 'f') {
      faces.push(
        rest.map((corner) => {
          const n = Number.parseInt(corner, 10);
          return n < 0 ? positions.length + n : n - 1;
        }),
      );
    }
  }
  return { positions, faces };
}

function readBinaryStl(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const soup = [];
  for (let at = 84; at < bytes.length; at += 50) {
    for (let k = 0; k < 3; k += 1) soup.push([0, 4, 8].map((step) => view.getFloat32(at + 12 + 12 * k + step, true)));
  }
  return joinSoup(soup);
}

function readAsciiStl(text) {
  const soup = [...text.matchAll(/\bvertex\s+(\S+)\s+(\S+)\s+(\S+)/g)].map((m) => [m[1], m[2], m[3]].map(Number));
  return joinSoup(soup);
}

function joinSoup(soup) {
  const numbers = new Map();
  const positions = [];
  const corners = soup.map((point) => {
    const key = point.map((x) => x + 0).join(' ');
    let number = numbers.get(key);
    if (number === undefined) {
      number = positions.length;
      numbers.set(key, number);
      positions.push(point);
    }
    return number;
  });
  return { positions, faces: Array.from({ length: corners.length / 3 }, (_, f) => corners.slice(3 * f, 3 * f + 3)) };
}
