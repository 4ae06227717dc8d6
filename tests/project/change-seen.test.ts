import { describe, expect, it } from 'vitest';
import { changeAsSeen } from '../../src/project/change-seen.ts';
import type { Project } from '../../src/project/project.ts';

/** The merge knows nothing of the fields of a project: any JSON stands for one. */
const after = (seen: object, now: object, apply: (project: Record<string, unknown>) => object): unknown =>
  changeAsSeen(
    { label: 'change', apply: (project) => apply(project as never) as unknown as Project },
    seen as unknown as Project,
  ).apply(now as unknown as Project);

const set = (fields: object) => (project: object) => ({ ...project, ...fields });

describe('a change as it was seen', () => {
  it('leaves what has changed since beside what it changes', () => {
    const wish = { core: { pipe: 'a' }, profile: [{ at: 0 }, { at: 300 }], windings: [] };
    const now = { wish: { ...wish, profile: [{ at: 0 }, { at: 200 }] } };
    expect(after({ wish }, now, () => ({ wish: { ...wish, core: { pipe: 'b' } } }))).toEqual({
      wish: { ...now.wish, core: { pipe: 'b' } },
    });
  });

  it('holds against a later one to the same value', () => {
    expect(after({ mm: 6, revision: 1 }, { mm: 10, revision: 2 }, set({ mm: 15 }))).toEqual({ mm: 15, revision: 2 });
  });

  it('is made although it would have changed nothing then', () => {
    expect(after({ mm: 6 }, { mm: 10 }, (project) => (project.mm === 6 ? project : { mm: 6 }))).toEqual({ mm: 6 });
  });

  it('knows things of a list by their ids, added, taken away and changed', () => {
    const [a, b, c] = ['a', 'b', 'c'].map((id) => ({ id, mm: 1 }));
    const seen = { parts: [a, b] };
    const now = { parts: [{ ...a, mm: 2 }, b, c] };
    expect(after(seen, now, () => ({ parts: [a] }))).toEqual({ parts: [{ ...a, mm: 2 }, c] });
    expect(after(seen, now, () => ({ parts: [{ ...a, name: 'n' }, b] }))).toEqual({
      parts: [{ ...a, mm: 2, name: 'n' }, b, c],
    });
    expect(after(seen, now, () => ({ parts: [b, a] }))).toEqual({ parts: [b, { ...a, mm: 2 }, c] });
  });

  it('is made to what is there where two added one id, or two lists without ids changed', () => {
    const add = (project: { parts?: readonly object[] }) => {
      const parts = project.parts ?? [];
      return { parts: [...parts, { id: `part-${String(parts.length)}`, name: 'mine' }] };
    };
    expect(after({ parts: [] }, { parts: [{ id: 'part-0', name: 'theirs' }] }, add)).toEqual({
      parts: [
        { id: 'part-0', name: 'theirs' },
        { id: 'part-1', name: 'mine' },
      ],
    });
    const push = ({ edges }: Record<string, unknown>) => ({ edges: [...(edges as number[]), 9] });
    expect(after({ edges: [1] }, { edges: [1, 2] }, push)).toEqual({ edges: [1, 2, 9] });
  });

  it('mixes no two kinds of one thing', () => {
    const seen = { scale: { kind: 'unit', unit: 'mm' }, by: { pitchMm: 25 } };
    const now = { scale: { kind: 'size', mm: 100 }, by: { overlapMm: 5 } };
    expect(after(seen, now, set({ scale: { kind: 'unit', unit: 'in' } }))).toEqual({
      ...now,
      scale: { kind: 'unit', unit: 'in' },
    });
    expect(after(seen, now, set({ by: { pitchMm: 30 } }))).toEqual({ ...now, by: { pitchMm: 30 } });
  });

  it('takes away what was seen, and leaves what came since', () => {
    const { plain: _, ...rest } = { name: 'a', plain: [1] };
    expect(after({ name: 'a', plain: [1] }, { name: 'b', plain: [1] }, () => rest)).toEqual({ name: 'b' });
  });
});
