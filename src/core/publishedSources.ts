/**
 * Sources that were opened for the values they back, each with the address it was read at. What was read only in part (an
 * abstract, an extract, another page's quote) says so.
 */
export const publishedSources = {
  iso6873: {
    short: 'ISO 6873:2013, Table 1',
    full: 'ISO 6873:2013, Dentistry: gypsum products, Table 1 (read as an extract of its public preview). Linear setting expansion at 2 h, %: type 1 0.00 to 0.15, type 2 for mounting 0.00 to 0.05 and for models 0.06 to 0.30, type 3 0.00 to 0.20, type 4 0.00 to 0.15 and at 24 h 0.00 to 0.18, type 5 0.16 to 0.30. Compressive strength at 1 h, MPa: type 1 4.0 to 8.0, type 2 at least 9.0, type 3 20.0, types 4 and 5 35.0. Type 1 sets in 2.5 to 5.0 min. Setting times within 20 % of the maker’s own; mixed and tested at 23 ± 2 °C and 50 ± 10 % relative humidity.',
    address:
      'https://github.com/vinirosadent/Lectures/blob/16b3f2fc9234a3fa4950b947155197b113e10079/lectures/09-gypsum-products/_sources/iso-6873-2013-extract.md',
  },
  plasterTimes2020: {
    short: 'Darmawan et al. 2020, setting of plasters, abstract',
    full: 'Darmawan et al., J. Dent. Res. Dent. Clin. Dent. Prospects 14 (2020) 167, abstract: at W/P 0.50 dental plaster sets first at 16.2 ± 1.4 and finally at 24.3 ± 0.9 min, orthodontic plaster at 24.5 and 33.4, construction plaster at 10.4 and 16.0 min (Gillmore needles).',
    address: 'https://doi.org/10.34172/joddd.2020.036',
  },
  delayedExpansion: {
    short: 'J. Prosthet. Dent. 88 (2002) and 108 (2012), expansion over days, abstracts',
    full: 'Delayed linear expansion of improved dental stone, J. Prosthet. Dent. 88 (2002), abstract: six stones of types 4 and 5 go on growing to 96 h and stand at 0.14 ± 0.008 to 0.35 ± 0.013 % at 120 h. Michalakis et al., J. Prosthet. Dent. 108 (2012), abstract: growth peaks at 72 to 96 h at 22 °C and 50 % relative humidity, then all shrink, also when kept at 40 °C and under 20 %. Michalakis et al., J. Prosthet. Dent. 102 (2009) 313-318, abstract: plaster that is wetted again goes on to 0.57 ± 0.02 % at 96 h, so keep set plaster away from water.',
    address: 'https://doi.org/10.1067/mpr.2002.127653',
  },
  gypsumEnthalpies: {
    short: 'thermo.com.V8.R6.230, enthalpies of gypsum',
    full: 'Lawrence Livermore National Laboratory, thermo.com.V8.R6.230 (8 March 2000), as carried in llnl.dat of a public water-chemistry code, entries Gypsum, Bassanite and CaSO4:0.5H2O(beta): enthalpies of formation at 25 °C −2022.69, −1576.89 and −1574.8 kJ/mol. So 117.5 (alpha) and 131.9 J/g (beta) on setting, 482.5 and 494.7 kJ/kg to drive 1½ water off as vapor. A second database (ThermoChimie v10a) gives 112.4 J/g for alpha. Its molar volume of the hemihydrate, 52.31 cm³/mol, puts the powder at 2.775 g/cm³; a maker’s dry densities ask for 2.744 to 2.761.',
    address: 'https://github.com/usgs-coupled/phreeqc3/blob/8176af0/database/llnl.dat',
  },
  gypsumEquilibrium: {
    short: 'Tang et al. 2019 and Fabuss et al. 1964, gypsum to hemihydrate',
    full: 'Tang, Gao, Liu, Chen and Zhao, Dehydration pathways of gypsum and the rehydration mechanism of soluble anhydrite, ACS Omega (2019), eq. 27, plotted against measured points: in balance with vapor of 1 atm at 106.5, of 12.35 kPa at 66.3 and of 2.34 kPa at 40.2 °C. The transition in water was measured at 99 °C (alpha) and 103 °C (beta) (Fabuss and co-workers, about 1964, abstract), which puts 1 atm at about 100 °C. The two published lines differ by about 6 K: 100 to 109 °C at 1 atm. Under little vapor (1 to 500 Pa) no hemihydrate forms at all: gypsum goes straight to soluble anhydrite and loses 20.9 % instead of 15.7 (Badens et al., abstract; others quoted in Tang et al.).',
    address: 'https://staging.scite.ai/authors/b-m-fabuss-M2V3kd',
  },
  steamTables: {
    short: 'steam tables (IAPWS R7-97)',
    full: 'International Association for the Properties of Water and Steam, release R7-97, verification values, and a saturation table by temperature made from such tables: pressures and heats of evaporation of water. The Magnus form used here lies within 3 % of them from 20 to 100 °C, the straight line for the heat of evaporation within 0.3 %.',
    address: 'https://people.ohio.edu/trembly/mechanical/thermo/property_tables/H2O/H2O_TempSat1.html',
  },
  makersGypsumTables: {
    short: 'makers’ tables of plasters and gypsum cements',
    full: 'A supplier’s table of plasters and gypsum cements (water per 100 of powder, wet and dry density in lb/ft³) and a maker’s table with setting expansions, copied on a page of 18 November 2009.',
    address: 'http://www.plaster.com/mixing.html',
  },
  printPlastics: {
    short: 'data sheets of printed plastics',
    full: 'Data sheets and help tables of printed plastics (ASTM D648, ISO 75). PLA: heat deflection 53 °C at 0.455 MPa and 51 at 1.82, Vicat 54, Tg 53 °C, 1.264 g/cm³, expansion 101e-6/K; a second maker 57.8 and 52, Vicat 62.7, Tg 60.6 °C, 1.31 g/cm³. ABS: 90 °C at 0.45 MPa and 76 at 1.81; another grade 95; ASA 100.',
    address: 'https://pro3dcomposites.com/materials/pla/',
  },
  wovenPly: {
    short: 'a maker’s table of carbon-fiber laminates',
    full: 'Mechanical properties of carbon fibre composite materials, a maker’s table: standard-modulus carbon fabric in epoxy cured at 120 °C, fiber fraction 0.50: E 70 GPa both ways, G12 5 GPa, ν12 0.10, expansion 2.1e-6/K, strengths 600 and 570 MPa along, 90 MPa in shear. Its own unidirectional ply (135 GPa at 0.60) implies about 61 GPa for the fabric: 70 is a generous catalog value.',
    address: 'http://performance-composites.com/carbonfibre/mechanicalproperties_2.asp',
  },
  coatSpreading: {
    short: 'spreading rate from solids and dry film',
    full: 'Spreading rate, m²/L = 10 × volume solids in % / dry film in µm, as on makers’ sheets: 78 % solids cover 39.0 m²/L at 20 µm and 31.2 at 25 µm (two-part clear coat); 100 µm wet at 50 % solids dry to 50 µm (glossary of a maker of wood coatings).',
    address: 'https://www.hesse-lignal.de/en_GB/service/glossary/glossary.html',
  },
  epoxyRecoat: {
    short: 'epoxy recoating guides of a maker',
    full: 'Final fairing and finishing, page 15, and Prepare surfaces for epoxy recoating, guides of a maker of epoxy: recoat while a finger leaves a print and nothing comes off; once cured wash with water and an abrasive pad and sand glossy areas with 80 grit. Before a gloss coat end at 220 to 400 grit; finer may give too little hold.',
    address: 'https://epoxyworks.com/prepare-surfaces-for-epoxy-recoating',
  },
  silicaRule: {
    short: 'rule on respirable crystalline silica, as reported',
    full: 'OSHA rule on respirable crystalline silica as reported in the trade press: action level 25 and limit 50 µg per cubic meter of air over an eight-hour shift (0.025 and 0.05 mg/m³). Local rules come first.',
    address: 'https://concreteproducts.com/index.php/tag/silica-exposure-rule/',
  },
} as const;
