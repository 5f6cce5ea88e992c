import type { Figure } from '../../core/figure';
import { FigureGroups, type FigureGroup } from '../FigureGroups';

/** Behind one line each; every figure that is in no group stands open above them. */
const groups: readonly FigureGroup[] = [
  {
    title: 'Content and mass',
    shown: ['plies.partMassG', 'plies.moldedVoidPercent'],
    ids: [
      'plies.moldedThicknessMm',
      'plies.moldedVoidPercent',
      'plies.moldedFiberFraction',
      'plies.fiberMassFraction',
      'plies.densityGCm3',
      'plies.arealMassGsm',
      'plies.resinGsm',
      'plies.midSurfaceCm2',
      'plies.partMassG',
      'plies.resinMassG',
      'plies.resinLostG',
      'plies.patchAreaCm2',
      'plies.patchLaidMm',
      'plies.localVoidFreeMm',
      'plies.prepregGsm',
      'plies.prepregAreaCm2',
      'plies.prepregMassG',
      'plies.prepregBuyCm2',
    ],
  },
  {
    title: 'Stiffness',
    shown: ['plies.ex', 'plies.ey', 'plies.gxy'],
    ids: [
      'plies.ex',
      'plies.ey',
      'plies.gxy',
      'plies.nuXy',
      'plies.nuYx',
      'plies.flexuralEx',
      'plies.flexuralEy',
      'plies.bendingXNmm',
      'plies.bendingYNmm',
      'plies.bendingVsSteel',
      'plies.bendingVsAluminum',
      'plies.bendingVsPrintedPlastic',
    ],
  },
  {
    title: 'Warp and corners',
    shown: ['plies.bowMm', 'plies.springInDeg'],
    ids: ['plies.curvaturePerM', 'plies.bowMm', 'plies.springInDeg'],
  },
  {
    title: 'Strength, first look',
    shown: ['plies.firstFailureXNPerMm'],
    ids: ['plies.firstFailureXNPerMm', 'plies.firstFailureYNPerMm', 'plies.firstFailureBendingN'],
  },
  { title: 'Out-time', shown: ['plies.outTimeLeftH'], ids: ['plies.outTimeLeftH'] },
];

/** What the stack comes to: the thicknesses open, the rest by subject. */
export function PliesWorkedOut({ figures }: { readonly figures: readonly Figure[] }) {
  return <FigureGroups figures={figures} groups={groups} />;
}
