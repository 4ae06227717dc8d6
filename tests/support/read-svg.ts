import { SaxesParser } from 'saxes';

/** A path of straight lines as it stands in an SVG file. */
export interface SvgPath {
  /** Ids of the groups round it, outermost first. */
  readonly groups: readonly string[];
  readonly name: string;
  /** Packed x, y in user units, y down. */
  readonly points: readonly number[];
  readonly closed: boolean;
}

/** Reads paths made of M, L and Z out of an SVG file with a strict XML parser, and how many mm a user unit is. */
export function readSvg(text: string): { readonly unitMm: number; readonly paths: readonly SvgPath[] } {
  const parser = new SaxesParser({});
  const groups: string[] = [];
  const paths: SvgPath[] = [];
  let unitMm = NaN;
  parser.on('opentag', ({ name, attributes }) => {
    const of = (key: string): string => (attributes as Record<string, string | undefined>)[key] ?? '';
    if (name === 'svg') unitMm = parseFloat(of('width')) / Number(of('viewBox').split(/\s+/)[2]);
    if (name === 'g') groups.push(of('id'));
    if (name === 'path') {
      const d = of('d');
      const points = (d.match(/-?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number);
      paths.push({ groups: [...groups], name: of('class'), points, closed: /z$/i.test(d) });
    }
  });
  parser.on('closetag', ({ name }) => {
    if (name === 'g') groups.pop();
  });
  parser.on('error', (error) => {
    throw error;
  });
  parser.write(text).close();
  return { unitMm, paths };
}
