import type { Vec2 } from '../geom/vec.ts';
import type { PictureTrace } from '../model/picture-trace.ts';

/** Figures are written to a millionth of a mm. */
const figure = (value: number): number => Number(value.toFixed(6)) + 0;
const figureOrNull = (value: number | null): number | null => (value === null ? null : figure(value));
const point = ({ x, y }: Vec2): [number, number] => [figure(x), figure(y)];

/** How a picture was traced, as JSON beside its artwork: places of the picture in px, y down; all else in mm. */
export function traceJson({ checks, photo, ...trace }: PictureTrace): object {
  return {
    ...trace,
    thresholdPct: figure(trace.thresholdPct),
    mmPerPx: trace.mmPerPx?.map(figure) ?? null,
    limitMm: figure(trace.limitMm),
    deviationMm: figure(trace.deviationMm),
    cornerMm: figure(trace.cornerMm),
    checks: checks.map(({ a, b, givenMm, foundMm }) => ({
      a: point(a),
      b: point(b),
      givenMm: figure(givenMm),
      foundMm: figure(foundMm),
      residualMm: figure(foundMm - givenMm),
    })),
    photo:
      photo === null
        ? null
        : {
            rmsMm: figure(photo.rmsMm),
            isExact: photo.isExact,
            places: photo.places.map(({ px, mm, residualMm, residualPx }) => ({
              px: point(px),
              mm: point(mm),
              residualMm: figure(residualMm),
              residualPx: figure(residualPx),
            })),
            camera:
              photo.camera === null
                ? null
                : {
                    givenAspect: figure(photo.camera.givenAspect),
                    impliedAspect: figureOrNull(photo.camera.impliedAspect),
                    aspectDeviation: figureOrNull(photo.camera.aspectDeviation),
                    focalPx: figureOrNull(photo.camera.focalPx),
                  },
          },
  };
}
