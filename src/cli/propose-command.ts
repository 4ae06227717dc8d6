import { needSculptAtWork, withSculpt } from '../project/at-work.ts';
import { basename } from 'node:path';
import { formatPlain } from '../base/format-length.ts';
import type { Finding } from '../base/finding.ts';
import { beyondWhenMade, type BeyondWhenMade } from '../pipeline/made-check.ts';
import { propose } from '../pipeline/propose/propose.ts';
import type { Proposal, ProposalLimits } from '../pipeline/propose/proposal.ts';
import { proposalReport, seamFileText } from '../pipeline/proposal-files.ts';
import { seamGround, type SeamGround } from '../pipeline/seam-ground.ts';
import { setHiddenSide } from '../project/hidden-commands.ts';
import type { Project } from '../project/project.ts';
import { Refused } from './exit.ts';
import { changePart, openInput, seamsFrom } from './open-input.ts';
import { writeEach } from './output-folder.ts';
import { checkFile } from './output-place.ts';
import type { ProposeChoices, ProposeEnd } from './propose-options.ts';
import { readInput } from './read-input.ts';
import { stoppableWork } from './stoppable-work.ts';
import { wishedLayers } from './wall-option.ts';

/**
 * `seams MODEL|PROJECT --out FILE.json`: looks for seams until the time is up, the moves are made or the maker interrupts, and writes the best.
 * @param tell  gets a line for each improvement while it goes on.
 * @returns the lines that sum it up.
 */
export async function proposeCommand(choices: ProposeChoices, tell: (line: string) => void): Promise<string> {
  const file = await readInput(choices.input);
  await checkPlaces(choices);
  const { project: found, sources, assumed } = await openInput(file, choices.scale);
  const workable = withSculpt(found, file.name);
  if (!workable.ok) throw Refused.from(workable.problem, file.name);
  const seams = choices.from === undefined ? null : await seamsFrom(choices.from, found);
  const project = wished(seams === null ? found : changePart(found, seams), choices);
  const work = stoppableWork();
  try {
    const made = await seamGround(project, sources, choices, work);
    if (!made.ok) throw Refused.from(made.problem, choices.from === undefined ? file.name : basename(choices.from));
    const ground = made.value;
    const end = new SearchEnd(choices.end);
    const proposal = await propose(
      {
        mesh: ground.surface.mesh,
        positions: ground.positions,
        ...(ground.surfaceOf === undefined ? {} : { surfaceOf: ground.surfaceOf }),
        limits: ground.limits,
        start: ground.seams,
        dial: choices.pieces,
        seed: choices.seed,
        ...ground.wishes,
      },
      work,
      (better) => tell(`${end.told(better)}: ${figures(better)}\n`),
      () => work.isStopped() || end.isOver(),
      () => work.isStopped() || end.isLate(),
    );
    const report = (): string => `${JSON.stringify(proposalReport(ground, proposal))}\n`;
    await writeEach(
      new Map([
        [choices.out, seamFileText(ground, proposal)],
        ...(choices.report === undefined ? [] : ([[choices.report, report()]] as const)),
      ]),
    );
    const beyond = choices.kind === 'foam' ? await beyondWhenMade(project, sources, ground, proposal, work) : [];
    return summary(ground, proposal, [...assumed, ...ground.findings], beyond, choices.out);
  } finally {
    work.end();
  }
}

/** Looked at before the search, which may take long. @throws Refused */
async function checkPlaces({ input, from, out, report }: ProposeChoices): Promise<void> {
  const inputs = [input, ...(from === undefined ? [] : [from])];
  await checkFile({ path: out, option: '--out' }, inputs);
  if (report !== undefined) await checkFile({ path: report, option: '--report' }, [...inputs, out]);
}

function wished(found: Project, { scale, thicknessMm, hide }: ProposeChoices): Project {
  const project = hide === undefined ? found : setHiddenSide(hide).apply(found);
  const part = needSculptAtWork(project);
  return changePart(project, {
    ...(scale === undefined ? {} : { scale }),
    layers: wishedLayers(part.layers, project.foams, {
      ...(thicknessMm === undefined ? {} : { thicknessMm }),
      shrinks: false,
    }),
  });
}

/** A change may be ended until the time is over by so much. */
const LATE = 1.1;

/** When the search ends, and how far it is when something better was found. Where moves are counted no clock is looked at. */
class SearchEnd {
  readonly #end: ProposeEnd;
  #asked = 0;

  constructor(end: ProposeEnd) {
    this.#end = end;
  }

  isOver(): boolean {
    this.#asked += 1;
    // Counted from the start of the process, as the maker waits.
    return 'moves' in this.#end ? this.#asked > this.#end.moves : performance.now() >= 1000 * this.#end.seconds;
  }

  /** Asked in the midst of a change: a dense sculpt's lasts seconds. */
  isLate(): boolean {
    return 'seconds' in this.#end && performance.now() >= LATE * 1000 * this.#end.seconds;
  }

  told({ moves }: Proposal): string {
    return 'moves' in this.#end ? `${moves} moves` : `${(performance.now() / 1000).toFixed(2)} s, ${moves} moves`;
  }
}

/** Figures of all pieces in one line. */
function figures({ pieces, lengthMm, lengthOverRootArea, dartCount, perPiece }: Proposal): string {
  const [stretch, squash] = [perPiece.map(({ stretch99 }) => stretch99), perPiece.map(({ squash99 }) => squash99)].map(
    (each) => each.reduce((most, pct) => Math.max(most, pct), 0),
  );
  return (
    `${counted(pieces, 'piece')}${darts(dartCount)}, seams ${lengthMm.toFixed(1)} mm ` +
    `(${lengthOverRootArea.toFixed(3)} of the root of the area), ${strains(stretch, squash)}`
  );
}

const darts = (count: number): string => (count === 0 ? '' : `, ${counted(count, 'dart')}`);

/** 99th percentiles; what is a hair under nought is nought. */
const strains = (stretchPct: number, squashPct: number): string =>
  `99 % under ${Math.max(0, stretchPct).toFixed(2)} % stretch and ${Math.max(0, squashPct).toFixed(2)} % squash`;

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

function beyondText({ piece, stretch99, squash99 }: BeyondWhenMade, { stretchPct }: ProposalLimits): string {
  if (stretch99 === null || squash99 === null) return `piece ${piece + 1} cannot be made: part it by hand.`;
  return `piece ${piece + 1} is folded along grooves, and so made has ${strains(stretch99, squash99)}, more than ${formatPlain(stretchPct)}: part it at a fold.`;
}

/** Limits that are broken are told up to so many, the worst first. */
const MOST_REASONS = 12;

function summary(
  { limits }: SeamGround,
  proposal: Proposal,
  findings: readonly Finding[],
  beyond: readonly BeyondWhenMade[],
  out: string,
): string {
  const told = findings.filter(({ severity }) => severity !== 'note');
  const pieces = proposal.perPiece.map(({ areaMm2, stretch99, squash99, dartCount, isFeasible, flat }, i) => {
    const laid = flat === null ? 'cannot be laid flat' : strains(stretch99, squash99);
    return `piece ${i + 1}: ${formatPlain(areaMm2 / 100)} cm²${darts(dartCount)}, ${laid}${isFeasible ? '' : ', beyond a limit'}`;
  });
  const reasons = proposal.reasons.map(({ piece, text }) => `warning: piece ${piece + 1}: ${text}`);
  const rest = reasons.length - MOST_REASONS;
  return [
    `${figures(proposal)}, ${proposal.moves} moves, written to ${out}`,
    ...pieces,
    ...told.map(({ severity, text }) => `${severity}: ${text}`),
    ...beyond.map((each) => `warning: ${beyondText(each, limits)}`),
    ...reasons.slice(0, MOST_REASONS),
    ...(rest > 0 ? [`and ${rest} more, in the report`] : []),
    '',
  ].join('\n');
}
