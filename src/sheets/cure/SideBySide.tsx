import { useState } from 'react';
import type { CureComparison, MoldVariant } from '../../core/cure/compareCure';
import { freePostCure, usualPostCure } from '../../core/cure/freePostCure';
import type { CureChoices } from '../../core/cure/predictCure';
import { supplierCure } from '../../core/cure/dose';
import type { MoldAfter } from '../../core/cure/moldAfter';
import type { ProgramFound } from '../../core/cure/programFinder';
import { formatNumber } from '../../core/units/formatNumber';
import type { OvenStageInput } from '../../steps/inputs/program';
import { celsius, clockHours, hoursMinutes } from '../../steps/cure/say';
import { Button } from '../../ui/Button';
import { DataTable } from '../../ui/DataTable';
import { Note } from '../../ui/Note';
import { SectionHead } from '../../ui/SectionHead';

export interface SideBySideProps {
  /** What is compared; null while it cannot be. */
  readonly choices: CureChoices | null;
  readonly disabled: boolean;
  /** Wall of the cured part, mm; null while no stack is known. */
  readonly wallMm: number | null;
  readonly onCompare: (choices: CureChoices) => Promise<CureComparison | null>;
  readonly onTake: (stages: OvenStageInput[]) => void;
}

/** Programs that spare the stone beside those that go to 120 °C, and the same program in other molds. */
export function SideBySide({ choices, disabled, wallMm, onCompare, onTake }: SideBySideProps) {
  const [answer, setAnswer] = useState<{ key: string; comparison: CureComparison } | null>(null);
  const key = JSON.stringify(choices);
  const compare = async () => {
    if (choices === null) return;
    const comparison = await onCompare(choices);
    if (comparison !== null) setAnswer({ key, comparison });
  };
  const shown = answer?.key === key ? answer.comparison : null;
  return (
    <section aria-label="Programs side by side">
      <SectionHead title="Programs side by side" remark="in coarse cells" />
      <div className="button-row below-table">
        <Button disabled={choices === null} onClick={() => void compare()}>
          Compare programs and molds
        </Button>
      </div>
      {shown === null ? null : <Variants variants={shown.variants} />}
      {shown === null || choices === null ? null : shown.programs.length === 0 ? (
        <Note>Enter the supplier&apos;s cures, and programs that really cure stand here.</Note>
      ) : (
        <>
          <Programs programs={shown.programs} disabled={disabled} onTake={onTake} />
          <PostCureNote choices={choices} wallMm={wallMm} />
        </>
      )}
    </section>
  );
}

/** "120/108/86": the three cases in their order. */
const three = (values: readonly (number | null)[], words: (value: number) => string) =>
  values.map((value) => (value === null ? '–' : words(value))).join('/');

function Variants({ variants }: { readonly variants: readonly MoldVariant[] }) {
  return (
    <DataTable
      caption="The same program in other molds: stone keeps its water/holds it back/lets it go"
      columns={[
        { id: 'name', header: 'Mold', cell: ({ name }: MoldVariant) => name },
        {
          id: 'peak',
          header: 'Coldest place, °C',
          numeric: true,
          cell: ({ peaksC }) => three(peaksC, (value) => formatNumber(value, 0)),
        },
        {
          id: 'dose',
          header: 'Dose',
          numeric: true,
          cell: ({ doses }) => three(doses, (value) => formatNumber(value, 1)),
        },
        {
          id: 'first',
          header: 'First dwell at, h:min',
          numeric: true,
          cell: ({ firstDwellS }) => three(firstDwellS, clockHours),
        },
      ]}
      rows={variants}
      rowKey={({ name }) => name}
    />
  );
}

interface ProgramsProps {
  readonly programs: readonly ProgramFound[];
  readonly disabled: boolean;
  readonly onTake: (stages: OvenStageInput[]) => void;
}

function Programs({ programs, disabled, onTake }: ProgramsProps) {
  const take = ({ name, program }: ProgramFound) =>
    program === null ? (
      'no'
    ) : (
      <Button
        aria-label={`Take over: ${name}`}
        disabled={disabled}
        onClick={() =>
          onTake(
            program.stages.map(({ targetC, rampKPerMin, dwellS }) => ({
              targetC,
              rampKPerMin,
              dwellHours: dwellS / 3600,
            })),
          )
        }
      >
        Take
      </Button>
    );
  return (
    <DataTable
      caption="Held until the coldest place has its minimum in all three cases; stone turned if it keeps its water/holds it back/lets it go"
      columns={[
        {
          id: 'name',
          header: 'Program',
          cell: ({ name, extrapolated }: ProgramFound) =>
            extrapolated ? `${name}, outside the supplier’s range` : name,
        },
        {
          id: 'hours',
          header: 'Hours in all',
          numeric: true,
          cell: ({ totalS }) => (totalS === null ? 'over 36' : formatNumber(totalS / 3600, 1)),
        },
        {
          id: 'peak',
          header: 'Stone peaks at',
          numeric: true,
          cell: ({ tries }) => celsius(most(tries.map((one) => one.stonePeakC))),
        },
        {
          id: 'lost',
          header: 'Stone turned, %',
          numeric: true,
          cell: ({ tries }) =>
            three(
              tries.map((one) => one.crystalWaterLostPercent),
              (value) => formatNumber(value, 0),
            ),
        },
        { id: 'mold', header: 'The mold', cell: ({ mold }) => moldWords[mold] },
        { id: 'take', header: 'Use it', cell: take },
      ]}
      rows={programs}
      rowKey={({ name }) => name}
    />
  );
}

const moldWords: Readonly<Record<MoldAfter, string>> = {
  kept: 'kept; post-cure free-standing',
  worn: 'loses some of its surface',
  'used up': 'used up: one part',
};

const most = (values: readonly number[]) => values.reduce((high, one) => Math.max(high, one), -Infinity);

/** Radiation on a thin shell in the oven, W/(m² K), about. */
const radiationWPerM2K = 8;

function PostCureNote({
  choices,
  wallMm,
}: {
  readonly choices: CureChoices;
  readonly wallMm: number | null;
}) {
  if (wallMm === null) return null;
  const { program, laminate, surface, supplier } = choices;
  const film = surface.filmWPerM2K + radiationWPerM2K;
  const after = freePostCure(usualPostCure, program.roomC, wallMm, laminate, film, supplierCure(supplier));
  return (
    <Note>
      After a cool program the demolded part can be cured on, free-standing:{' '}
      {formatNumber(usualPostCure.rampKPerMin, 1)} K/min to {celsius(usualPostCure.targetC)} and an hour there
      (common practice; the supplier&apos;s sheet rules) take {hoursMinutes(after.totalS)} and add a dose of{' '}
      {formatNumber(after.dose ?? 0, 1)}. No stone is in the way.
    </Note>
  );
}
