import type { LaminatePlace } from '../../../core/cure/laminatePlace';
import type { Vec3 } from '../../../core/mesh/types';
import { ChoiceField } from '../../../ui/ChoiceField';
import { NumberField } from '../../../ui/NumberField';
import type { OvenRunLog } from '../../../workbook';
import { placeNames } from './fitWorking';

export interface LogPlaceProps {
  readonly log: OvenRunLog;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<OvenRunLog>) => void;
}

const axes = ['x', 'y', 'z'] as const;
const noAir = 'none';

const axisSpec = (axis: (typeof axes)[number]) =>
  ({
    kind: 'number',
    label: `Thermocouple ${axis}`,
    unit: 'mm',
    meaning: "In the part's own axes, as its file has them after unit and scale.",
    default: 0,
    min: -2000,
    max: 2000,
    decimals: 1,
  }) as const;

const withKind = (kind: LaminatePlace['kind']): LaminatePlace =>
  kind === 'point' ? { kind, atMm: [0, 0, 0] } : { kind };

const withAxis = ([x, y, z]: Vec3, axis: number, mm: number): Vec3 => [
  axis === 0 ? mm : x,
  axis === 1 ? mm : y,
  axis === 2 ? mm : z,
];

/** Which column is what, and where the thermocouple at the laminate sits. */
export function LogPlace({ log, disabled, onChange }: LogPlaceProps) {
  const { columns, laminate, air, place } = log;
  const named = columns.map(({ name }, at) => ({ value: String(at), label: name }));
  return (
    <>
      <ChoiceField
        disabled={disabled}
        label="At the laminate"
        meaning="The column of the thermocouple that touches the laminate; dose and fit are taken from it."
        choices={named}
        value={String(laminate)}
        onChange={(at) => onChange({ laminate: Number(at), air: air === Number(at) ? null : air })}
      />
      <ChoiceField
        disabled={disabled}
        label="Where it sits"
        meaning="The prediction is read at the same place, in the chart and in the fit. Coldest and hottest are those of the prediction."
        choices={Object.entries(placeNames).map(([value, label]) => ({
          value: value as LaminatePlace['kind'],
          label,
        }))}
        value={place.kind}
        onChange={(kind) => onChange({ place: withKind(kind) as OvenRunLog['place'] })}
      />
      {place.kind === 'point'
        ? axes.map((axis, at) => (
            <NumberField
              key={axis}
              disabled={disabled}
              spec={axisSpec(axis)}
              value={place.atMm[at] ?? 0}
              onChange={(mm) => {
                if (mm !== null)
                  onChange({
                    place: {
                      kind: 'point',
                      atMm: [...withAxis(place.atMm, at, mm)] as [number, number, number],
                    },
                  });
              }}
            />
          ))
        : null}
      <ChoiceField
        disabled={disabled}
        label="In the oven's air"
        meaning="The column of a thermocouple that hangs in the air beside the mold. The fit then heats the mold with the air as it was, and finds how much this sensor reads too high."
        choices={[
          { value: noAir, label: 'none: air as predicted' },
          ...named.filter(({ value }) => value !== String(laminate)),
        ]}
        value={air === null ? noAir : String(air)}
        onChange={(at) => onChange({ air: at === noAir ? null : Number(at) })}
      />
    </>
  );
}
