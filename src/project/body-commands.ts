import { checkBodyMeasure, checkBodyTie, type BodyMeasure, type BodyTie } from '../model/body-measures.ts';
import { onSculpt, type Command } from './commands.ts';

export {
  BODY_MEASURES,
  kindOfMeasure,
  MOST_EASE_MM,
  MOST_MEASURE_MM,
  MOST_SHARE,
  type BodyMeasure,
  type BodyPlace,
  type BodyTie,
} from '../model/body-measures.ts';

/** Writes a measure into the table of the body, or over the one of its name; every part that is tied to it follows. @throws RangeError */
export function setBodyMeasure(measure: BodyMeasure): Command {
  checkBodyMeasure(measure);
  return {
    label: 'measure the body',
    mergeKey: `body ${measure.name}`,
    apply(project) {
      const { body = [] } = project;
      const old = body.find(({ name }) => name === measure.name);
      if (old?.mm === measure.mm) return project;
      return {
        ...project,
        body: old === undefined ? [...body, measure] : body.map((one) => (one === old ? measure : one)),
      };
    },
  };
}

/** Takes a measure out of the table. One that a part is tied to stays: untie the part first. */
export const removeBodyMeasure = (name: string): Command => ({
  label: 'forget a measure of the body',
  apply(project) {
    const { body = [], ...rest } = project;
    const isTied = project.parts.some(({ scale }) => scale?.by === 'body' && scale.measure === name);
    if (isTied || body.every((one) => one.name !== name)) return project;
    const left = body.filter((one) => one.name !== name);
    return left.length === 0 ? rest : { ...rest, body: left };
  },
});

/** The size of the sculpt at work follows a measure from now on. @throws RangeError */
export function tieToBody(tie: BodyTie, mergeKey?: string): Command {
  checkBodyTie(tie);
  return onSculpt('size by the body', (part) => ({ ...part, scale: { by: 'body', ...tie } }), mergeKey);
}

/** The sculpt at work keeps the size it has now and follows no measure any more. @param longestMm its longest side now, mm, > 0, else RangeError. */
export function untieFromBody(longestMm: number): Command {
  if (!(longestMm > 0)) throw new RangeError(`${longestMm} mm long`);
  return onSculpt('keep the size', (part) =>
    part.scale?.by === 'body' ? { ...part, scale: { by: 'size', axis: 'longest', mm: longestMm } } : part,
  );
}
