import type { ProjectInputs } from '../../steps/inputs/project';
import { stoneRows } from '../../steps/mold/stoneTable';
import { DataTable } from '../../ui/DataTable';

/** The five gypsum types and the maker's own, to choose by. */
export function StoneTable({ inputs }: { readonly inputs: Pick<ProjectInputs, 'mold' | 'cure'> }) {
  return (
    <>
      <DataTable
        caption="Stones side by side"
        columns={[
          { id: 'name', header: 'Stone', cell: ({ name }) => name },
          { id: 'heat', header: 'Heat it bears', cell: ({ heat }) => heat },
          { id: 'strength', header: 'Strength, 1 h, wet', cell: ({ strength }) => strength },
          { id: 'expansion', header: 'Expansion, 2 h', cell: ({ expansion }) => expansion },
          { id: 'settingHeat', header: 'Setting heat', cell: ({ settingHeat }) => settingHeat },
          { id: 'price', header: 'Price', cell: ({ price }) => price },
          { id: 'repair', header: 'Repaired with', cell: ({ repair }) => repair },
        ]}
        rows={stoneRows(inputs)}
        rowKey={({ name }) => name}
        marked={({ own }) => own}
      />
      <p className="quiet">
        Strength and expansion: ISO 6873 (published; type 5 up to what it grows to over days). Setting heat:
        published enthalpies, the rise with heat capacities from memory. Heat, price and repair: common
        practice. All five are the same mineral and turn to weak plaster at the same heat; the denser ones
        hold their steam and spall more easily when damp. Your bag’s own sheet rules.
      </p>
    </>
  );
}
