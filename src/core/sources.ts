/** The one registry of sources that figures and docstrings cite by key. */
import { publishedSources } from './publishedSources';

export interface Source {
  /** Short form for a figure's working, e.g. on paper. */
  readonly short: string;
  readonly full: string;
  /** Where it was read; left out where the work itself was not opened. */
  readonly address?: string;
}

export const sources = {
  ...publishedSources,
  fiberVolumeNotes: {
    short: 'lecture notes on fiber volume fraction',
    full: 'Lecture notes on fiber volume fraction and laminate thickness: Vf from mass fractions and densities; n plies held in a gap.',
  },
  plyVolumeSum: {
    short: 'sum of fiber and resin volume',
    full: 'Cured ply thickness as the sum of fiber and resin volume per area (no bleed, no voids); exact arithmetic.',
  },
  divergenceTheorem: {
    short: 'divergence theorem over the facets',
    full: 'Volume, centroid and area summed over facets (divergence theorem); exact for the facets of a closed surface.',
  },
  rayWall: {
    short: 'ray along the inward normal',
    full: 'Distance from the facet center along the inward normal to the first surface met; geometry of the mesh.',
  },
  ballWall: {
    short: 'largest touching ball',
    full: 'Diameter of the largest ball inside the material that touches the facet center; geometry of the mesh.',
  },
  draftHandbook: {
    short: 'composites trade handbook: draft',
    full: 'Composites trade handbook page on mold draft: 1 to 3 degrees, aim for 3 or more, never below 1.',
    address:
      'https://laminateengineering.com/the-composite-dfm-handbook-engineering-for-performance-and-profit/',
  },
  kaw2006: {
    short: 'Kaw, Mechanics of Composite Materials, 2nd ed.',
    full: 'Kaw, A. K., Mechanics of Composite Materials, 2nd edition, CRC Press 2006: lamination theory, thermal forces and moments, strength of a lamina.',
  },
  mallick2008: {
    short: 'Mallick, Fiber-Reinforced Composites, 3rd ed.',
    full: 'Mallick, P. K., Fiber-Reinforced Composites: Materials, Manufacturing, and Design, 3rd edition, CRC Press 2008: lamination theory, examples 3.7 and 3.15.',
  },
  timoshenko1925: {
    short: 'Timoshenko 1925, two-layer strip',
    full: 'Timoshenko, S., Analysis of bi-metal thermostats, J. Opt. Soc. Am. 11 (1925) 233-255 (formula from memory, derived again from force and moment balance).',
  },
  timoshenkoPlates: {
    short: 'plate theory: D = E t³ / 12 (1 − ν²)',
    full: 'Bending stiffness per width of a thin uniform plate, D = E t³ / (12 (1 − ν²)); textbook plate theory (from memory).',
  },
  hyer1981: {
    short: 'Hyer 1981, thin unsymmetric laminates',
    full: 'Hyer, M. W., Some observations on the cured shape of thin unsymmetric laminates, J. Compos. Mater. 15 (1981) 175-194 (from memory): cylinders instead of the saddle of the theory.',
  },
  springInForm: {
    short: 'corner spring-in, arc geometry',
    full: 'Spring-in of a corner from in-plane and through-thickness strains; form as in Nelson & Cairns 1989 and Radford & Rennick 2000 (citations from memory), thermal term derived again from the geometry of an arc.',
  },
  halpinTsai: {
    short: 'Halpin-Tsai and rule of mixtures',
    full: 'Halpin-Tsai relations for transverse and shear modulus, rule of mixtures along the fiber; textbook micromechanics (from memory).',
  },
  schapery: {
    short: 'Schapery 1968, expansion of a ply',
    full: 'Schapery, R. A., Thermal expansion coefficients of composite materials based on energy principles, J. Compos. Mater. 2 (1968) 380-404 (from memory).',
  },
  tsaiWu1971: {
    short: 'Tsai and Wu 1971',
    full: 'Tsai, S. W. and Wu, E. M., A general theory of strength for anisotropic materials, J. Compos. Mater. 5 (1971) 58-80 (from memory).',
  },
  voidContentStandard: {
    short: 'void content as in ASTM D2734',
    full: 'Void content from measured and calculated density, form as in ASTM D2734 (from memory).',
  },
  materialsFromMemory: {
    short: 'typical material constants, from memory',
    full: 'Typical handbook constants of metals, plastics, epoxy and carbon fiber, written from memory; your own data sheet replaces them.',
  },
  gypsumBalance: {
    short: 'mass and volume balance of the mix',
    full: 'Mass and volume balance of hemihydrate, water and dihydrate with their molar masses; exact arithmetic. Density of gypsum from the NIOSH Pocket Guide to Chemical Hazards, of alpha-hemihydrate as two published tables bear out (2.744 to 2.775 g/cm³). Within 2 % of published makers’ tables of plasters and gypsum cements, wet and dry.',
    address: publishedSources.makersGypsumTables.address,
  },
  coatLimitsFromMemory: {
    short: 'heat that sealers and releases bear, from memory',
    full: 'Heat that typical sealers and release agents bear, from memory; no supplier’s sheet was opened. The sheet of the very can replaces it.',
  },
  gypsumTextbook: {
    short: 'dental-materials textbook, gypsum, Table 8.2',
    full: 'Dental-materials textbook chapter on gypsum products, its Table 8.2: water/powder ratio 0.40 to 0.50 for plaster, 0.25 to 0.30 for stone, 0.19 to 0.24 for die stone.',
    address: 'https://pocketdentistry.com/8-gypsum-materials/',
  },
  gypsumTypesFromMemory: {
    short: 'usual times of gypsum, from memory',
    full: 'Usual times and details of the gypsum types, from memory and no requirements of ISO 6873. The bag rules; the standard lets a setting time be off by 20 % of what the bag says.',
  },
  waterNoKnob: {
    short: 'Prosthesis 2 (2020) 266-276, abstract',
    full: 'Prosthesis 2 (2020) 266-276 (abstract): half as much water again hardly changes setting expansion and modulus of types 3, 4 and 5 and takes 26 to 52 % of their strength.',
  },
  settingHeatConstants: {
    short: 'heat of setting: published enthalpies, other constants from memory',
    full: 'Heat of hydration 117.5 (alpha) or 131.9 J/g (beta) from published enthalpies of formation (thermo.com.V8.R6.230; a second database gives 112 for alpha); heat capacities, conductivity of damp stone and air film from memory. The adiabatic rise is an upper bound.',
    address: publishedSources.gypsumEnthalpies.address,
  },
  archimedes: {
    short: 'Archimedes',
    full: 'Uplift of a body held under a liquid: weight of the liquid it displaces less its own weight.',
  },
  expansionsFromMemory: {
    short: 'thermal expansion of stone and laminate, partly from memory',
    full: 'Thermal expansion of set gypsum 15 to 18e-6/K, from memory for dense stone (gypsum board 9.0e-6/°F, which is 16.2e-6/K, published), and of a woven carbon laminate about 3e-6/K from memory (2.1e-6/K in a maker’s table).',
    address: 'https://tothesource.com/glossary-of-terms/2021/01/20/thermal-expansion',
  },
  dryingGuide: {
    short: "a maker's drying guide for gypsum molds",
    full: "A gypsum maker's drying guide: strength rises little until 93 % of the free moisture has gone; inside of the dryer 49 °C, entering air at most 66 °C.",
  },
  gutowski1987: {
    short: 'Gutowski et al. 1987, aligned fiber bed',
    full: 'Gutowski, T. G., Morigaki, T. and Cai, Z., The consolidation of laminate composites, J. Compos. Mater. 21 (1987) 172-188 (formula and constants from memory): aligned tows.',
  },
  lomov2010: {
    short: 'Lomov et al. 2010, woven carbon',
    full: 'Lomov, S. V. et al., Compos. Sci. Technol. 70 (2010) 315-325, abstract: as-received woven carbon reaches a fiber volume fraction of 0.52 at 0.05 MPa. The exponent of the power law through it (0.06) is common practice.',
  },
  fiberBedScatter: {
    short: 'Yong et al. 2026, compaction benchmark',
    full: 'Yong et al., Composites A 200 (2026), abstract: the same fabric in 22 laboratories, coefficient of variation of the stress at fixed thickness 42 % dry and 46 % wet.',
  },
  rigidCavity: {
    short: 'volume balance of a rigid cavity',
    full: 'Volume of a rigid cavity against the volume of fiber and resin laid in; exact arithmetic. Void fraction by density has the same form (ASTM D2734); fiber volume from the lecture notes on fiber volume fraction.',
  },
  slotFlow: {
    short: 'flow in a slot; consolidation of a saturated strip',
    full: 'Laminar flow of a viscous resin in the slot between two flat lands, and consolidation of a saturated strip by Darcy flow; derived, no source.',
  },
  wallPractice: {
    short: 'common practice for walls round a stack',
    full: 'Wall a few percent under the void-free thickness; voids up to 1 % good, 2.5 % to be looked at, 5 % bad; woven fiber up to 0.53 good and 0.55 to be looked at, aligned 0.60 and 0.62. Common practice, no source.',
  },
  closingBalance: {
    short: 'balance of forces along the pull',
    full: 'Force balance of a rigid mold half on a bed of fibers, clamp springs and lands that only push: the least of a convex energy; derived, no source.',
  },
  rigidStroke: {
    short: 'rigid stroke, normal component',
    full: 'Gap change of a wall under a rigid closing stroke: stroke times the sine of the draft; geometry.',
  },
  carmanKozeny: {
    short: 'Carman-Kozeny and Darcy flow',
    full: 'Carman-Kozeny permeability of a fiber bed and the one-dimensional Darcy front (constants from memory).',
  },
  leeLoosSpringer1982: {
    short: 'Lee, Loos and Springer 1982, viscosity',
    full: 'Lee, W. I., Loos, A. C. and Springer, G. S., J. Compos. Mater. 16 (1982) 510: viscosity of an amine-cured epoxy prepreg (parameters from memory).',
  },
  kardos1986: {
    short: 'Kardos et al. 1986, moisture voids',
    full: 'Kardos, J. L., Dudukovic, M. P. and Dave, R., Void growth and resin transport during processing of thermosetting-matrix composites, Adv. Polym. Sci. 80 (1986) 101 (coefficients from memory; they are the heat of evaporation and the boiling point of water within 0.5 %). Prepregs kept at 70 to 90 % relative humidity got more voids in vacuum bags and none under autoclave pressure (Grunenfelder and Nutt, Compos. Sci. Technol. 70 (2010) 2304-2309, abstract).',
    address: 'https://scribd.com/document/453174335/void-formation',
  },
  stoneCrushing: {
    short: 'crushing limit of type 3 dental stone',
    full: 'Compressive strength of type 3 dental stone of at least 20.0 MPa at 1 h: ISO 6873:2013, Table 1 (read as an extract of its public preview).',
    address: publishedSources.iso6873.address,
  },
  springPractice: {
    short: 'hand spring clamps, common practice',
    full: 'Hand spring clamps press 50 to 300 N each; common practice, no source. A scale under the jaw replaces it.',
  },
  stoneHeatFromMemory: {
    short: 'heat constants of set stone, from memory',
    full: 'Heat capacity 1080 J/(kg K) and conductivity 0.8 (dry) to 1.0 W/(m K) (damp) of set gypsum stone, from memory; plausible 0.7 to 1.0. Published values on both sides: gypsum plaster 0.51 at 1200 kg/m³ (DIN 4108-4, quoted) and 0.48 at 1440, gypsum rock 0.75 to 1.3 at about 2300; a line through them gives 0.7 to 0.85 for stone of 1967. Gypsum board conducts slightly less at 100 °C than at room temperature (Fire and Materials 34 (2010) 237-250, abstract).',
    address: 'https://matmake.com/properties/thermal-conductivity-of-rocks.html',
  },
  strydom1995: {
    short: 'Strydom et al. 1995, dehydration of gypsum, abstract',
    full: 'Strydom et al., Thermochim. Acta 269-270 (1995) 631-638, abstract: gypsum powder heated at 5 K/min loses its first water between 95 and 170 °C, with 100.5 kJ/mol from a tenth to seven tenths and 392 ± 100 over the first tenth, which so starts much later; 377 to 420 J/g and 13.7 to 16.5 % of impure gypsum. How fast dense set stone does is not known: a band is shown.',
    address: 'https://doi.org/10.1016/0040-6031(95)02521-9',
  },
  moldConduction: {
    short: 'heat conduction through the closed mold',
    full: 'Transient conduction in three dimensions through stone and laminate by the alternating-direction scheme of Douglas and Gunn, Numer. Math. 6 (1964) 428-453, with air film, radiation, evaporation, dehydration and heat of reaction; energy balance, checked against exact series of blocks (Carslaw and Jaeger, Conduction of Heat in Solids).',
  },
  supplierDose: {
    short: 'dose from the supplier’s cures',
    full: 'Share of the supplier’s minimum cure: its cures joined as if the rate followed Arrhenius between them, summed along the laminate’s temperature. Holds near the supplier’s own temperatures only.',
  },
  diBenedetto: {
    short: 'DiBenedetto 1987, Tg from degree of cure',
    full: 'DiBenedetto, A. T., Prediction of the glass transition temperature of polymers, J. Polym. Sci. B 25 (1987) 1949-1969 (from memory); constants are your own.',
  },
  prepregGuide: {
    short: 'a prepreg processing guide',
    full: 'A supplier’s prepreg processing guide: thaw sealed for 6 to 24 h, workshop under 70 % relative humidity (15 to 20 °C in its 2018 issue), demold only once cooled below 50 °C.',
    address: 'https://studylib.net/doc/18538456/prepreg-processing-guide',
  },
  airFilms: {
    short: 'air films: heat-transfer textbook and common practice',
    full: 'Free convection in gases 2 to 25, forced 25 to 250 W/(m² K) (Cengel, heat-transfer textbook); a small fan oven 10 to 30 (common practice).',
  },
  waterVapor: {
    short: 'vapor pressure and heat of evaporation of water',
    full: 'Magnus form of the saturation pressure, set to 1 atm at 100 °C, within 3 % of steam tables (IAPWS R7-97), and a straight line for the heat of evaporation, within 0.3 %; vapor leaves a wet face through the same air film that brings heat (Chilton and Colburn; Lewis number from memory), which meets the wet bulb of a worked example of the ASHRAE Handbook.',
    address: publishedSources.steamTables.address,
  },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof sources;
