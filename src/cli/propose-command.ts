import { basename, dirname } from 'node:path';
import { formatPlain } from '../base/format-length.ts';
import type { Finding } from '../base/finding.ts';
import { propose } from '../pipeline/propose/propose.ts';
import type { Proposal } from '../pipeline/propose/proposal.ts';
import { proposalReport, seamFileText } from '../pipeline/proposal-files.ts';
import { seamGround, type SeamGround } from '../pipeline/seam-ground.ts';
import type { Project } from '../project/project.ts';
import { Refused } from './exit.ts';
import { changePart, openInput, seamsFrom } from './open-input.ts';
import { writeAll } from './output-folder.ts';
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
  const { project: found, sources, assumed } = await openInput(file, choices.scale);
  const seams = choices.from === undefined ? null : await seamsFrom(choices.from, found);
  const project = wished(seams === null ? found : changePart(found, seams), choices);
  const work = stoppableWork();
  try {
    const made = await seamGround(project, sources, choices, work);
    if (!made.ok) throw Refused.from(made.problem, choices.from === undefined ? file.name : basename(choices.from));
    const ground = made.value;
    const end = endOf(choices.end);
    const proposal = await propose(
      {
        mesh: ground.sculpt.mesh,
        positions: ground.positions,
        limits: ground.limits,
        start: ground.seams,
        dial: choices.pieces,
        seed: choices.seed,
        ...ground.wishes,
      },
      work,
      (better) => tell(`${end.told(better)}: ${figures(better)}\n`),
      () => work.isStopped() || end.isOver(),
    );
    await writeFile(choices.out, seamFileText(ground, proposal));
    if (choices.report !== undefined)
      await writeFile(choices.report, `${JSON.stringify(proposalReport(ground, proposal))}\n`);
    return summary(ground, proposal, assumed, choices);
  } finally {
    work.end();
  }
}

function wished(project: Project, { scale, thicknessMm }: ProposeChoices): Project {
  const [part] = project.parts;
  return changePart(project, {
    ...(scale === undefined ? {} : { scale }),
    layers: wishedLayers(part.layers, project.foams, {
      ...(thicknessMm === undefined ? {} : { thicknessMm }),
      shrinks: false,
    }),
  });
}

/** When the search ends, and how far it is when something better was found. Where moves are counted no clock is looked at. */
function endOf(end: ProposeEnd): { isOver: () => boolean; told: (better: Proposal) => string } {
  if ('moves' in end) {
    let asked = 0;
    return {
      isOver: () => {
        asked += 1;
        return asked > end.moves;
      },
      told: ({ moves }) => `${moves} moves`,
    };
  }
  // Counted from the start of the process, as the maker waits.
  return {
    isOver: () => performance.now() >= 1000 * end.seconds,
    told: ({ moves }) => `${(performance.now() / 1000).toFixed(2)} s, ${moves} moves`,
  };
}

/** Figures of all pieces in one line. */
function figures({ pieces, lengthMm, lengthOverRootArea, dartCount, perPiece }: Proposal): string {
  const [stretch, squash] = [perPiece.map(({ stretch99 }) => stretch99), perPiece.map(({ squash99 }) => squash99)].map(
    (each) => each.reduce((most, pct) => Math.max(most, pct), 0),
  );
  const darts = dartCount === 0 ? '' : `, ${counted(dartCount, 'dart')}`;
  return (
    `${counted(pieces, 'piece')}${darts}, seams ${lengthMm.toFixed(1)} mm ` +
    `(${lengthOverRootArea.toFixed(3)} of the root of the area), 99 % under ${stretch.toFixed(2)} % stretch and ${squash.toFixed(2)} % squash`
  );
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

async function writeFile(path: string, text: string): Promise<void> {
  await writeAll(dirname(path), new Map([[basename(path), text]]));
}

function summary(ground: SeamGround, proposal: Proposal, assumed: readonly Finding[], choices: ProposeChoices): string {
  const told = [...assumed, ...ground.findings].filter(({ severity }) => severity !== 'note');
  const pieces = proposal.perPiece.map(({ areaMm2, stretch99, squash99, dartCount, isFeasible, flat }, i) => {
    const darts = dartCount === 0 ? '' : `, ${counted(dartCount, 'dart')}`;
    const laid =
      flat === null
        ? 'cannot be laid flat'
        : `99 % under ${stretch99.toFixed(2)} % stretch and ${squash99.toFixed(2)} % squash`;
    return `piece ${i + 1}: ${formatPlain(areaMm2 / 100)} cm²${darts}, ${laid}${isFeasible ? '' : ', beyond a limit'}`;
  });
  return [
    `${figures(proposal)}, ${proposal.moves} moves, written to ${choices.out}`,
    ...pieces,
    ...told.map(({ severity, text }) => `${severity}: ${text}`),
    ...proposal.reasons.map(({ piece, text }) => `warning: piece ${piece + 1}: ${text}`),
    '',
  ].join('\n');
}
