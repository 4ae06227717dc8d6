import { formatMm } from '../base/format-length.ts';
import { placed4, placedPoints4, turned4, undone4 } from '../geom/matrix4.ts';
import { scale3, unit3, vec3 } from '../geom/vec.ts';
import type { TravelJoin } from '../project/joins.ts';
import { holesOnPieces } from '../steps/assembly/holes-on-pieces.ts';
import { planeAcross, reachFrom } from '../steps/assembly/run-through.ts';
import { extentAlong, planTravel } from '../steps/assembly/travel-joints.ts';
import type { AssemblyLines } from './assembly-lines.ts';
import type { StandingPart } from './assembly-parts.ts';

/** Plans where the prop comes apart, and draws the cuts on every piece they run over. */
export function cutToTravel(join: TravelJoin, all: readonly StandingPart[], into: AssemblyLines): void {
  const parts = all.filter(({ id, body }) => body !== null && (join.parts?.includes(id) ?? true));
  const [first] = parts;
  if (parts.length === 0) {
    const name = join.parts?.join(', ') ?? 'the prop';
    return into.tell(
      'warning',
      'assembly/no-form',
      `Nothing of ${name} has a form that could be parted to travel.`,
      join.parts?.[0] ?? '',
    );
  }
  const way = unit3(vec3(...join.along));
  const extents = parts.map(({ body, matrix }) =>
    extentAlong(placedPoints4(matrix, body?.positions ?? new Float64Array(0)), way),
  );
  const foot = extents.reduce((least, { fromMm }) => Math.min(least, fromMm), Infinity);
  const top = extents.reduce((most, { toMm }) => Math.max(most, toMm), -Infinity);
  const { bagMm, whole, joint, massKg, gripMm } = join;
  const planned = planTravel({
    lengthMm: top - foot,
    bagMm,
    joint,
    ...(whole === undefined ? {} : { whole }),
    ...(massKg === undefined ? {} : { massKg }),
    ...(gripMm === undefined ? {} : { gripMm }),
  });
  if (!planned.ok) return into.tell('error', planned.problem.code, planned.problem.text, first.id);
  const plan = planned.value;
  let [count, lengthMm] = [0, 0];
  plan.joints.forEach(({ atMm }, i) => {
    const name = `Travel joint J${i + 1}`;
    parts.forEach((part, p) => {
      const at = foot + atMm;
      if (at <= extents[p].fromMm || at >= extents[p].toMm) return;
      const back = undone4(part.matrix);
      const point = placed4(back, scale3(way, at));
      if (part.hosts.length === 0)
        return into.tell(
          'note',
          'assembly/no-ground',
          `${name} runs through ${part.name}, on whose pieces it cannot be drawn: saw it there ${formatMm(atMm)} from the foot of the prop, when it is put together.`,
          part.id,
        );
      for (const host of part.hosts) {
        const reach = reachFrom(point, host.shell.face.positions) + reachFrom(point, host.shell.back.positions);
        const plane = planeAcross(point, turned4(back, way), reach);
        const found = holesOnPieces(
          host,
          { name, surface: plane, wall: { kind: 'surface' } },
          'joint',
          part.bevelLimitDeg,
        );
        into.add(found.lines);
        count += found.lines.size;
        lengthMm += found.holes.reduce((sum, hole) => sum + hole.lengthMm, 0);
        const steep = found.findings.filter(({ code }) => code === 'assembly/too-steep');
        into.hand(
          part.id,
          steep.map((told) => ({ ...told, where: {} })),
        );
      }
    });
  });
  into.hand(first.id, plan.findings);
  for (const { text } of plan.joints)
    into.steps.push({
      work: 'join',
      pieces: [],
      text,
      glueMm2: 0,
      cautions: joint.kind === 'magnets' ? ['magnets'] : [],
    });
  into.joins.push({ join: join.id, count, lengthMm, bevelDeg: null, travel: plan });
}
