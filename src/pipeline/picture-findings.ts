import type { Finding } from '../base/finding.ts';
import { formatNumber } from '../base/format-length.ts';
import type { CheckedLength, PhotoReport, PictureTrace } from '../model/picture-trace.ts';

const mm = (value: number): string => `${formatNumber(value, value < 1 ? 3 : 2)} mm`;

const finding = (
  code: string,
  severity: Finding['severity'],
  text: string,
  figure?: { value: number; limit?: number; unit?: string },
): Finding => ({ code: `artwork/${code}`, severity, text, ...figure, where: {} });

/** Share of a known length that it may be found off, and mm, before it is a warning. */
const CHECK_SHARE = 0.01;
const CHECK_MM = 0.5;
/** Share that shapes may differ by, and how many times what hands leave. */
const ASPECT_SHARE = 0.01;
const ASPECT_DEVIATIONS = 3;
/** A shape known no better than this, as a share, tells nothing. */
const ASPECT_UNKNOWN = 0.1;

/** What is to be told of how a picture was traced. */
export function traceFindings(trace: PictureTrace, isLimitGiven: boolean, doesTouchEdge: boolean): Finding[] {
  const findings: Finding[] = [
    finding(
      'picture-threshold',
      'note',
      trace.isThresholdGiven
        ? `Lines lie where grey is ${formatNumber(trace.thresholdPct, 1)} %, as given.`
        : `Lines lie where grey is ${formatNumber(trace.thresholdPct, 1)} %, half-way between the dark and the light of the picture.`,
      { value: trace.thresholdPct, unit: '%' },
    ),
    finding(
      'picture-trace',
      'note',
      `Curves are no farther than ${mm(trace.deviationMm)} from the line in the picture; corners stand out of what it rounds off by ${mm(trace.cornerMm)} at most.`,
      { value: trace.deviationMm, limit: trace.limitMm, unit: 'mm' },
    ),
  ];
  if (trace.isTwoTone)
    findings.push(
      finding(
        'picture-two-tone',
        'note',
        isLimitGiven
          ? 'The picture has no half tones at its edges, so its lines are known to half a pixel: save it with smooth edges, or larger.'
          : `The picture has no half tones at its edges, so its lines are known to half a pixel, and curves may be ${mm(trace.limitMm)} from them: save it with smooth edges, or larger.`,
      ),
    );
  if (trace.joinedLines > 0)
    findings.push(
      finding(
        'picture-joined',
        'note',
        `${trace.joinedLines} ${trace.joinedLines === 1 ? 'line' : 'lines'} no curve could follow within ${mm(trace.limitMm)}: places of the picture are joined straight there. Allow more, or smooth the picture.`,
        { value: trace.joinedLines },
      ),
    );
  if (trace.specks > 0)
    findings.push(
      finding(
        'picture-specks',
        'note',
        `${trace.specks} ${trace.specks === 1 ? 'spot or hole' : 'spots or holes'} smaller than ${formatNumber(trace.specksMm2, 2)} mm² ${trace.specks === 1 ? 'was' : 'were'} left out.`,
        { value: trace.specks },
      ),
    );
  if (doesTouchEdge)
    findings.push(
      finding(
        'picture-edge',
        'warning',
        'A shape runs off the picture and ends straight at its edge: leave a margin round it, or crop.',
      ),
    );
  return [...findings, ...trace.checks.map(checkFinding)];
}

function checkFinding({ givenMm, foundMm }: CheckedLength): Finding {
  const off = foundMm - givenMm;
  const isFar = Math.abs(off) > Math.max(CHECK_MM, CHECK_SHARE * givenMm);
  return finding(
    'picture-check',
    isFar ? 'warning' : 'note',
    `A known length of ${mm(givenMm)} is found ${off < 0 ? 'shorter' : 'longer'} by ${mm(Math.abs(off))}${isFar ? ': check the known places and lengths.' : '.'}`,
    { value: off, unit: 'mm' },
  );
}

/** What is to be told of a photograph that was set straight. */
export function photoFindings({ places, rmsMm, isExact, camera }: PhotoReport): Finding[] {
  const worst = Math.max(...places.map(({ residualMm }) => residualMm));
  const findings = [
    isExact
      ? finding(
          'photo-straight',
          'note',
          'The photograph was set straight by four places, which always fit: give more places or known lengths to see how well.',
        )
      : finding(
          'photo-straight',
          'note',
          `The photograph was set straight by ${places.length} places; they are off by ${mm(rmsMm)} on the whole, ${mm(worst)} at most.`,
          { value: worst, unit: 'mm' },
        ),
    finding(
      'photo-lens',
      'note',
      'The bend of the lens is not corrected: take pictures from farther off, the work in their middle.',
    ),
  ];
  if (camera === null) return findings;
  const { givenAspect, impliedAspect, aspectDeviation } = camera;
  if (impliedAspect === null || aspectDeviation === null || aspectDeviation > ASPECT_UNKNOWN * givenAspect)
    return [
      ...findings,
      finding(
        'photo-aspect',
        'note',
        'The picture does not tell whether width and height were given rightly: check a known length each way.',
      ),
    ];
  const off = impliedAspect / givenAspect - 1;
  const isFar = Math.abs(off) > Math.max(ASPECT_SHARE, (ASPECT_DEVIATIONS * aspectDeviation) / givenAspect);
  return [
    ...findings,
    finding(
      'photo-aspect',
      isFar ? 'warning' : 'note',
      `Width to height was given as ${formatNumber(givenAspect, 4)}; a camera that looks through the middle of the picture would have seen ${formatNumber(impliedAspect, 4)} (pointing leaves ±${formatNumber(aspectDeviation, 4)})${isFar ? ': check the given sizes and places, and that the picture is not cropped.' : '.'}`,
      { value: impliedAspect, limit: givenAspect },
    ),
  ];
}
