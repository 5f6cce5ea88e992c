/** The air beside the mold as a thermocouple logged it, made into what the prediction heats the mold with. */
import { curveOf, endOf, valueAt, type Curve } from './curve';

/**
 * Logged where there is a log, less what its sensor reads too much; as predicted before the log starts and after it ends.
 * Across gaps the air runs straight from reading to reading.
 * @param offsetK by how much the sensor reads over the air
 */
export function loggedAir(logged: Curve, predicted: Curve, offsetK: number): Curve {
  const firstS = Math.max(0, logged.timesS[0]!);
  const lastS = endOf(logged);
  const inside = logged.timesS.flatMap((timeS, at): [number, number][] =>
    timeS > firstS ? [[timeS, logged.valuesC[at]! - offsetK]] : [],
  );
  const predictedWhere = (wanted: (timeS: number) => boolean) =>
    predicted.timesS.flatMap((timeS, at): [number, number][] =>
      wanted(timeS) ? [[timeS, predicted.valuesC[at]!]] : [],
    );
  return curveOf([
    ...predictedWhere((timeS) => timeS < firstS),
    [firstS, valueAt(logged, firstS) - offsetK],
    ...inside,
    ...predictedWhere((timeS) => timeS > lastS),
  ]);
}
