import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Fail, type Result } from '../../base/result.ts';
import type { Work } from '../../base/work.ts';
import { ByteScanner } from './byte-scanner.ts';
import { coordinateFault } from './coordinate-fault.ts';
import { GroupNames } from './group-names.ts';
import { GrowingNumbers } from './growing.ts';
import { MOST_TRIANGLES } from './limits.ts';
import { PointTable } from './point-table.ts';
import type { RawModel } from './raw-model.ts';
import { NAME_BYTES, readText, type TextReader } from './read-text.ts';

/**
 * Reads an ASCII STL: facets of three `vertex` lines between `facet` and `endfacet`, in one or more named solids; words in either case.
 * The stored normals are not used. A file may end without `endsolid`; one that ends inside a facet is cut short.
 * @param from first byte after a byte order mark.
 */
export async function readAsciiStl(bytes: Uint8Array, from: number, work: Work): Promise<Result<RawModel>> {
  return await readText(new AsciiReader(bytes, from), from, bytes.length, work);
}

class AsciiReader implements TextReader {
  readonly #scanner: ByteScanner;
  readonly #table: PointTable;
  readonly #corners: GrowingNumbers;
  readonly #groupOfFace: GrowingNumbers;
  readonly #facetLines: GrowingNumbers;
  readonly #groups = new GroupNames();
  /** Line of the facet that is open, or 0. */
  #openFacet = 0;
  #cornersHere = 0;
  #isSolidOpen = false;

  constructor(bytes: Uint8Array, from: number) {
    this.#scanner = new ByteScanner(bytes, from);
    // Usual files spend some 250 bytes on a facet.
    const facets = Math.ceil(bytes.length / 250);
    this.#table = new PointTable(Math.ceil(facets / 1.8));
    this.#corners = new GrowingNumbers(3 * facets);
    this.#groupOfFace = new GrowingNumbers(facets);
    this.#facetLines = new GrowingNumbers(facets);
  }

  get at(): number {
    return this.#scanner.at;
  }

  get isAtEnd(): boolean {
    return this.#scanner.isAtEnd;
  }

  readTo(to: number): Fail | null {
    const scanner = this.#scanner;
    while (scanner.at < to && !scanner.isAtEnd) {
      if (!scanner.skipBlanks()) {
        scanner.nextLine();
        continue;
      }
      const fault = this.#statement(scanner.word().toLowerCase());
      if (fault !== null) return fault;
    }
    return null;
  }

  #statement(word: string): Fail | null {
    if (word === 'vertex') return this.#vertex();
    if (word === 'facet') return this.#facet();
    if (word === 'endfacet') return this.#endFacet();
    if (word === 'solid') {
      this.#groups.set('object', this.#scanner.rest(NAME_BYTES));
      this.#isSolidOpen = true;
    } else if (word === 'endsolid') {
      this.#scanner.nextLine();
      this.#isSolidOpen = false;
    }
    return null;
  }

  #facet(): Fail | null {
    if (this.#openFacet !== 0) return this.#badFacet('is not closed before the next one');
    this.#openFacet = this.#scanner.line;
    this.#cornersHere = 0;
    // The normal, which nobody needs: three numbers that may be anything.
    for (let i = 0; i < 4 && this.#scanner.skipBlanks(); i += 1) this.#scanner.skipWord();
    return null;
  }

  #vertex(): Fail | null {
    const scanner = this.#scanner;
    const { line } = scanner;
    const xyz = [0, 0, 0];
    for (let axis = 0; axis < 3; axis += 1) {
      xyz[axis] = scanner.number();
      if (scanner.kind === 'none' && !hasMore(scanner)) return this.#cutShort();
      const fault = coordinateFault(scanner, xyz[axis], `on line ${line}`);
      if (fault !== null) return fault;
    }
    this.#cornersHere += 1;
    if (this.#openFacet === 0) {
      return fail('read/stl-facet', `The vertex on line ${line} stands outside of any facet: export the sculpt again.`);
    }
    if (this.#cornersHere > 3) return this.#badFacet('has more than three corners');
    this.#corners.push(this.#table.numberOf(xyz[0], xyz[1], xyz[2]));
    return null;
  }

  #endFacet(): Fail | null {
    if (this.#openFacet === 0 || this.#cornersHere < 3) return this.#badFacet('has fewer than three corners');
    this.#facetLines.push(this.#openFacet);
    this.#groupOfFace.push(this.#groups.current + 1);
    this.#openFacet = 0;
    if (this.#facetLines.length > MOST_TRIANGLES) {
      return fail(
        'read/too-large',
        `The file has more than ${MOST_TRIANGLES} triangles, more than fits: reduce the mesh in your modelling program first.`,
      );
    }
    return null;
  }

  #badFacet(what: string): Fail {
    return fail(
      'read/stl-facet',
      `The facet on line ${this.#openFacet || this.#scanner.line} ${what}: export the sculpt again.`,
    );
  }

  #cutShort(): Fail {
    const whole = this.#facetLines.length;
    return fail(
      'read/stl-truncated',
      `The file is cut short: it ends inside a facet on line ${this.#scanner.line}, after ${whole} whole ${whole === 1 ? 'one' : 'ones'}, so copy or export it again.`,
    );
  }

  finish(): Result<RawModel> {
    if (this.#openFacet !== 0) return this.#cutShort();
    const faceCount = this.#facetLines.length;
    if (faceCount === 0)
      return fail('read/no-faces', 'The file is an ASCII STL without a facet: export the sculpt again.');
    const lines = this.#facetLines.view();
    return ok({
      format: 'stl',
      points: this.#table.points,
      colours: null,
      cornersInFile: 3 * faceCount,
      faceStarts: new Uint32Array(faceCount + 1).map((_, f) => 3 * f),
      faceCorners: this.#corners.view(),
      groupNames: this.#groups.names,
      groupOfFace: new Int32Array(this.#groupOfFace.view()).map((index) => index - 1),
      placeOfFace: (f) => `line ${lines[f]}`,
      findings: this.#isSolidOpen ? [noEnd(faceCount)] : [],
    });
  }
}

/** True when anything but blanks is left in the file. */
function hasMore(scanner: ByteScanner): boolean {
  for (let at = scanner.at; at < scanner.bytes.length; at += 1) if (scanner.bytes[at] > 32) return true;
  return false;
}

const noEnd = (facets: number): Finding => ({
  code: 'read/stl-no-end',
  severity: 'warning',
  text: `The file stops after ${facets} facets without the closing word endsolid: check that no part of the sculpt is missing.`,
  where: {},
});
