/** The safety lines of card and phases. They defer to data sheets, local rules and licensed trades. */
import type { BenchPhase } from '../steps/bench/blank';

/** One footer, on the first page. */
export const overrules = 'Data sheets, local rules and licensed trades overrule this sheet.';

/** The block of the card: what may hurt at any time. */
export const beforeAnything =
  'Uncured resin can make you allergic for life: nitrile gloves, no bare skin. Never cast stone round a hand. Damp stone bursts: dry by weight first. An oven of its own, vented, never for food; stay with its whole first run. Lithium cells out before heat, clamps or glue.';

export const phaseCautions: Readonly<Record<BenchPhase, string>> = {
  print:
    'Sand and scrape wet or under extraction, fitted particle respirator, eye protection; cut away from the hand. Solvents of sealers, fillers and release agents: air the room, gloves, no flame. Two-part sprays may hold isocyanates: only with the supplied air that their data sheet asks for.',
  pour: 'Powder and dust of dry stone can carry crystalline silica: open bags low, fitted particle respirator, scrape damp, wipe up wet. Setting stone burns: never round a hand or finger. No slurry into a drain: let it set in the bowl. Stone edges cut: wooden wedges, eye protection, fingers out of the gap.',
  layup:
    'Nitrile gloves when laying, closing and wiping; wash with soap, never with solvent. Fresh blades: cut away from the hand; cut fiber and resin flash are needle-sharp. Carbon conducts: keep it off boards and live parts. Clamps slip and stone breaks: face aside, eye protection, never reach between the halves.',
  oven: 'All solvent gone, no rags near. No drilling, rewiring or defeating the door switch; a separate over-temperature cut-out; changes by a licensed electrician. Thermocouple leads clear of carbon and live parts. Fumes go outside. No thick lumps or piles of offcuts heated. Hot stone and clamps: gloves for heat, no face over the door, a sign that says hot. Nitrile gloves when wiping off resin.',
  finish:
    'Resin flash is needle-sharp. Cut and sand wet or under extraction with a fitted particle respirator, never under-cured resin. Cells out before heat, clamps or glue, and the way to them never glued shut. Carbon conducts: insulate boards, isolate aluminum and steel; test the range, a changed transmitter may need new approval. Coats: air the room, gloves; two-part sprays may hold isocyanates. Waste in a sealed bag, by its data sheet.',
};
