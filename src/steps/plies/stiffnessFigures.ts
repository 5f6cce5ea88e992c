/** How stiff the cured wall is: moduli of the stack as if it were one material, and plates that bend as easily. */
import type { Figure } from '../../core/figure';
import { effectiveModuli } from '../../core/laminate/effectiveModuli';
import {
  bendingStiffnessNmm,
  compareWithPlates,
  referenceMaterials,
  type ReferenceMaterial,
} from '../../core/laminate/referencePlates';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { laidAngleDeg } from '../inputs/ply';
import { bandOf, stackLaminate, type KnownLaminate, type LaminateState } from './stackLaminate';

interface StiffnessSpec {
  readonly spec: FigureSpec;
  readonly of: (state: LaminateState) => number;
  readonly relation: string;
}

const heldFlat = ({ laminate }: LaminateState) => effectiveModuli(laminate).heldFlat;
const flexural = ({ laminate }: LaminateState) => effectiveModuli(laminate).flexural;

const modulus = (id: string, label: string): FigureSpec => ({
  id: `plies.${id}`,
  label,
  unit: 'GPa',
  decimals: 1,
  source: 'kaw2006',
});
const ratio = (id: string, label: string): FigureSpec => ({
  id: `plies.${id}`,
  label,
  unit: '',
  decimals: 3,
  source: 'kaw2006',
});
const bending = (id: string, label: string): FigureSpec => ({
  id: `plies.${id}`,
  label,
  unit: 'N·mm',
  decimals: 0,
  source: 'kaw2006',
});

const stiffnessSpecs: readonly StiffnessSpec[] = [
  {
    spec: modulus('ex', 'Modulus along the part, Ex'),
    of: (one) => heldFlat(one).exGPa,
    relation: 'Ex = 1 / (h a11), a = A⁻¹',
  },
  {
    spec: modulus('ey', 'Modulus across the part, Ey'),
    of: (one) => heldFlat(one).eyGPa,
    relation: 'Ey = 1 / (h a22), a = A⁻¹',
  },
  {
    spec: modulus('gxy', 'Shear modulus, Gxy'),
    of: (one) => heldFlat(one).gxyGPa,
    relation: 'Gxy = 1 / (h a66), a = A⁻¹',
  },
  {
    spec: ratio('nuXy', 'Poisson’s ratio, nu xy'),
    of: (one) => heldFlat(one).nuXy,
    relation: 'nu xy = −a12 / a11, a = A⁻¹',
  },
  {
    spec: ratio('nuYx', 'Poisson’s ratio, nu yx'),
    of: (one) => heldFlat(one).nuYx,
    relation: 'nu yx = −a12 / a22, a = A⁻¹',
  },
  {
    spec: modulus('flexuralEx', 'Bending modulus along'),
    of: (one) => flexural(one).exGPa,
    relation: 'E = 12 / (h³ d11), d of the whole compliance',
  },
  {
    spec: modulus('flexuralEy', 'Bending modulus across'),
    of: (one) => flexural(one).eyGPa,
    relation: 'E = 12 / (h³ d22), d of the whole compliance',
  },
  {
    spec: bending('bendingXNmm', 'Bending stiffness per width, along'),
    of: ({ laminate }) => bendingStiffnessNmm(laminate).xNmm,
    relation: '(D − B A⁻¹ B)11',
  },
  {
    spec: bending('bendingYNmm', 'Bending stiffness per width, across'),
    of: ({ laminate }) => bendingStiffnessNmm(laminate).yNmm,
    relation: '(D − B A⁻¹ B)22',
  },
];

const versusIds = { steel: 'Steel', aluminum: 'Aluminum', printedPlastic: 'PrintedPlastic' } as const;

function versusSpec({ key, label }: ReferenceMaterial): FigureSpec {
  return {
    id: `plies.bendingVs${versusIds[key]}`,
    label: `Bends as stiffly as ${label} of the same wall, times`,
    unit: '×',
    decimals: 2,
    status: 'from memory',
    source: 'timoshenkoPlates',
  };
}

export function stiffnessFigures(context: StepContext): readonly Figure[] {
  const answer = stackLaminate(context);
  if (!answer.known)
    return [...stiffnessSpecs.map(({ spec }) => spec), ...referenceMaterials.map(versusSpec)].map((spec) =>
      unknownFigure(spec, answer.reason),
    );
  const working = howKnown(answer);
  return [
    ...stiffnessSpecs.map(({ spec, of, relation }) => {
      const band = answer.typical ? bandOf(answer, of) : null;
      return {
        ...figure(
          answer.typical ? { ...spec, status: 'from memory' as const } : spec,
          of(answer),
          `${relation} = ${formatNumber(of(answer), spec.decimals)}${spec.unit === '' ? '' : ` ${spec.unit}`}`,
          ...working,
          ...secondHalfLine(answer, of, spec),
        ),
        ...(band === null ? {} : { band }),
      };
    }),
    ...referenceMaterials.map((material) => versusFigure(answer, material)),
  ];
}

function howKnown({ stack, typical, laminate }: KnownLaminate): readonly string[] {
  const angles = stack.plies.map(({ ply }) => formatNumber(laidAngleDeg(ply), 0)).join('/');
  return [
    `Lamination theory, plies at ${angles}° from the show face, ${formatNumber(laminate.thicknessMm, 3)} mm cured; coat and patches left out, each ply alike on both faces.`,
    typical
      ? 'Constants of the plies are typical ones for standard-modulus carbon in epoxy, from memory; the band is theirs. Your data sheet on the card replaces them.'
      : 'Constants of the plies as on their cards.',
  ];
}

function secondHalfLine(
  { secondHalf }: KnownLaminate,
  of: (state: LaminateState) => number,
  { decimals, unit }: FigureSpec,
): readonly string[] {
  return secondHalf === null
    ? []
    : [`In the half with the mirrored pieces: ${formatNumber(of(secondHalf), decimals)} ${unit}`.trim()];
}

function versusFigure(answer: KnownLaminate, material: ReferenceMaterial): Figure {
  const { laminate } = answer;
  const ratioOf = (state: LaminateState) => {
    const own = bendingStiffnessNmm(state.laminate).xNmm;
    const found = compareWithPlates(own, laminate.thicknessMm).find(
      (one) => one.material.key === material.key,
    );
    return { ratio: found?.stiffnessRatio ?? 0, equalMm: found?.equalThicknessMm ?? 0 };
  };
  const here = ratioOf(answer);
  const [low, high] = bandOf(answer, (state) => ratioOf(state).ratio) ?? [here.ratio, here.ratio];
  const [softGPa, stiffGPa] = material.bandGPa;
  return {
    ...figure(
      versusSpec(material),
      here.ratio,
      `Along the part, against a plate of ${formatNumber(laminate.thicknessMm, 2)} mm: ${material.label} E ${formatNumber(material.eGPa, 1)} GPa, from memory.`,
      `As stiff as ${material.label} of ${formatNumber(here.equalMm, 2)} mm.`,
    ),
    band: [(low * material.eGPa) / stiffGPa, (high * material.eGPa) / softGPa],
  };
}
