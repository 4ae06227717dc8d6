import type { Finding } from '../../base/finding.ts';
import type { FoamId } from '../../base/ids.ts';
import { Memo } from '../../base/memo.ts';
import type { Result } from '../../base/result.ts';
import type { Work } from '../../base/work.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { SourceModel } from '../../model/source-model.ts';
import type { PlainPiece } from '../../model/plain-piece.ts';
import type { PlainPart } from '../../project/plain-part.ts';
import type { Project } from '../../project/project.ts';
import { plainSources } from '../../project/sources.ts';
import { plainPieces } from '../../steps/foam/plain-pieces.ts';
import { readModel } from '../../steps/read/read-model.ts';
import type { AssembledPlain } from '../assembly.ts';
import type { ClayArea } from '../clay-core-stage.ts';
import { remembered } from '../remembered.ts';
import type { TrimSculptOf } from '../trim-sculpt.ts';
import { foamForThickness } from './foam-for-thickness.ts';
import { wallMmOf } from './insert-part.ts';
import type { PlainGround } from './plain-ground.ts';
import { plainWorkOf } from './plain-work-of.ts';
import type { NamedStrips, PlainMade, PlainOutcome } from './plain-outcome.ts';

/** Parts whose last results are kept: a prop has a few dozen, and a maker goes a few steps back and forth. */
const KEPT = 256;

/** Models that are kept, of parts that are made of one; more where the project has more. */
const KEPT_MODELS = 16;

/** Whole lists of parts that are kept. */
const KEPT_LISTS = 8;

/** Makes the parts of a project that no sculpt is parted for. */
export class PlainStage {
  readonly #sourceOf: PlainGround['sourceOf'];
  readonly #models = new Map<string, Result<SourceModel>>();
  readonly #works = new Memo<unknown[], Result<PlainMade>>(KEPT);
  readonly #pieces = new Memo<unknown[], readonly PlainPiece[]>(KEPT);
  readonly #outcomes = new Memo<unknown[], PlainOutcome>(KEPT);
  readonly #lists = new Memo<unknown[], readonly PlainOutcome[]>(KEPT_LISTS);
  readonly #piecesOf = new Memo<unknown[], readonly PlainPiece[]>(KEPT_LISTS);

  /** @param sourceOf  the files that parts are made from, by hash. */
  constructor(sourceOf: PlainGround['sourceOf']) {
    this.#sourceOf = sourceOf;
  }

  /** Reads the models that parts are made of, as far as they are here. @throws Cancelled when the work was called off. */
  async read({ plain = [] }: Project, work: Work): Promise<void> {
    const needed = new Set<string>();
    for (const part of plain) {
      if (part.kind !== 'stack' || part.source === undefined) continue;
      const { hash, fileName } = part.source;
      needed.add(hash);
      const source = this.#sourceOf(hash);
      if (source === undefined || this.#models.has(hash)) continue;
      this.#models.set(hash, await readModel(source.bytes, fileName, work));
    }
    for (const hash of this.#models.keys()) {
      if (this.#models.size <= KEPT_MODELS) break;
      if (!needed.has(hash)) this.#models.delete(hash);
    }
  }

  /**
   * The same list while nothing of it changes.
   * @param firstNumber of their first piece.
   * @param findings    what is found is added.
   * @param sculptOf    what strips lie on.
   * @param areas       of sculpts that are modelled in clay; their cores come last.
   */
  make(
    project: Project,
    firstNumber: number,
    findings: Finding[],
    sculptOf: TrimSculptOf,
    areas: readonly ClayArea[],
  ): readonly PlainOutcome[] {
    const { plain = [], foams } = project;
    let next = firstNumber;
    const all = plain.map((part) => {
      const own = part.foams.map((id) => foamOf(foams, id));
      const made = this.#workOf(project, part, own, sculptOf);
      if (!made.ok) {
        findings.push({
          code: made.problem.code,
          severity: 'error',
          text: `${part.name} cannot be made: ${made.problem.text}`,
          where: { part: part.id },
        });
        return remembered(this.#outcomes, [part, made], () => ({ part, work: null, pieces: [] }));
      }
      const work = made.value;
      for (const finding of [...work.findings, ...made.notes])
        findings.push({
          ...finding,
          text: `${part.name}: ${finding.text}`,
          where: { ...finding.where, part: part.id },
        });
      const one = this.#numbered(part, work, own, next, findings);
      next += one.pieces.length;
      return one;
    });
    const cores = areas.map(({ part, made }) => {
      const own = part.foams.map((id) => foamOf(foams, id));
      const one = this.#numbered(part, made.work, own, next, findings);
      next += one.pieces.length;
      return one;
    });
    return remembered(this.#lists, [...all, ...cores], () => [...all, ...cores]);
  }

  /** Its pieces, with numbers and foams. */
  #numbered(
    part: PlainOutcome['part'],
    work: PlainMade,
    own: readonly FoamSheet[],
    firstNumber: number,
    findings: Finding[],
  ): PlainOutcome {
    const [first] = own;
    const pieces = remembered(this.#pieces, [work, part, firstNumber, ...own], () =>
      plainPieces(part, work.pieces, firstNumber, (mm): FoamId => foamForThickness(own, mm) ?? first.id),
    );
    const foreign = [
      ...new Set(pieces.filter((piece) => foamForThickness(own, piece.thicknessMm) === null).map((p) => p.thicknessMm)),
    ];
    for (const mm of foreign)
      findings.push({
        code: 'plain/no-foam',
        severity: 'error',
        text: `${part.name} needs foam of ${mm} mm, and none of its foams is: add one.`,
        where: { part: part.id },
      });
    return remembered(this.#outcomes, [part, pieces], () => ({ part, work, pieces }));
  }

  /** Strips and artwork that lie on sculpts, as far as they can be made, before anything has a number. */
  laidStrips(project: Project, sculptOf: TrimSculptOf): readonly NamedStrips[] {
    const { plain = [], foams } = project;
    return plain.flatMap((part) => {
      if (!('on' in part)) return [];
      const own = part.foams.map((id) => foamOf(foams, id));
      const made = this.#workOf(project, part, own, sculptOf);
      const laid = made.ok ? (made.value.laid ?? made.value.engraved) : undefined;
      return laid === undefined ? [] : [{ name: part.name, laid }];
    });
  }

  /** Those that can be made, with their foams, before anything has a number. */
  works(project: Project, sculptOf: TrimSculptOf): readonly AssembledPlain[] {
    const { plain = [], foams } = project;
    return plain.flatMap((part): AssembledPlain[] => {
      const own = part.foams.map((id) => foamOf(foams, id));
      const made = this.#workOf(project, part, own, sculptOf);
      if (!made.ok) return [];
      const { letIn } = made.value;
      return [{ part, work: made.value, foams: own, ...(letIn === undefined ? {} : { letIn }) }];
    });
  }

  #workOf(project: Project, part: PlainPart, own: readonly FoamSheet[], sculptOf: TrimSculptOf): Result<PlainMade> {
    const on = 'on' in part ? sculptOf(part.on) : null;
    const wallMm = 'into' in part ? wallMmOf(project, part.into) : [];
    // A file that was missing may have come since.
    const missing = plainSources(part).map(({ hash }) => this.#sourceOf(hash) === undefined);
    const ground: PlainGround = {
      foams: own,
      on,
      wallMm,
      sourceOf: this.#sourceOf,
      modelOf: (hash) => this.#models.get(hash),
    };
    return remembered(this.#works, [part, on, ...own, ...wallMm, ...missing], () => plainWorkOf(part, ground));
  }

  /** The pieces of all of them, in one list that stays the same object while none of them changes. */
  piecesOf(all: readonly PlainOutcome[]): readonly PlainPiece[] {
    return remembered(this.#piecesOf, [all], () => all.flatMap((one) => one.pieces));
  }
}

function foamOf(foams: readonly FoamSheet[], id: FoamId): FoamSheet {
  const foam = foams.find((candidate) => candidate.id === id);
  if (foam === undefined) throw new Error(`plain: foam ${id} is not in the project`);
  return foam;
}
