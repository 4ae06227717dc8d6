// The package's main file is the reader itself; the name its types export is not there.
import DxfParser, { type ICircleEntity, type IEntity, type IInsertEntity, type ITextEntity } from 'dxf-parser';

/** A line or word as it stands in a DXF file once blocks are put in, mm. */
export interface DxfThing {
  readonly kind: 'line' | 'circle' | 'text';
  /** Block it came from; empty for what stands by itself. */
  readonly block: string;
  readonly layer: string;
  /** Packed x y: corners of a line, centre of a circle, place of a word. */
  readonly points: readonly number[];
  readonly closed: boolean;
  readonly radius?: number;
  readonly text?: string;
  readonly turnDeg?: number;
}

/** Reads a DXF file with a reader from outside, in the order of the file. */
export function readDxf(text: string): {
  readonly header: Readonly<Record<string, unknown>>;
  readonly layers: readonly string[];
  readonly things: readonly DxfThing[];
} {
  const dxf = new DxfParser().parseSync(text);
  if (dxf === null) throw new Error('the DXF file could not be read');
  const things = dxf.entities.flatMap((entity) => {
    if (entity.type !== 'INSERT') return [thing(entity, '')];
    const { name, position, rotation, xScale, yScale } = entity as IInsertEntity;
    if (position.x !== 0 || position.y !== 0 || (rotation ?? 0) !== 0 || (xScale ?? 1) !== 1 || (yScale ?? 1) !== 1)
      throw new Error(`block ${name} is put in elsewhere than at the origin`);
    return dxf.blocks[name].entities.map((inner) => thing(inner, name));
  });
  return { header: dxf.header, layers: Object.keys(dxf.tables.layer.layers), things };
}

function thing(entity: IEntity, block: string): DxfThing {
  const { layer } = entity;
  if (entity.type === 'CIRCLE') {
    const { center, radius } = entity as ICircleEntity;
    return { kind: 'circle', block, layer, points: [center.x, center.y], closed: true, radius };
  }
  if (entity.type === 'TEXT') {
    const { startPoint, text, rotation = 0 } = entity as ITextEntity;
    return { kind: 'text', block, layer, points: [startPoint.x, startPoint.y], closed: false, text, turnDeg: rotation };
  }
  if (entity.type !== 'POLYLINE') throw new Error(`unexpected ${entity.type}`);
  const { vertices, shape } = entity as IEntity & { vertices: { x: number; y: number }[]; shape?: boolean };
  return { kind: 'line', block, layer, points: vertices.flatMap(({ x, y }) => [x, y]), closed: shape === true };
}
