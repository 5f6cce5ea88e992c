/** One layer of cloth on its surface: the net, its cells, and how much it has to shear. */
import { cellsOf, type Cell } from './cells';
import { region, type DrapeSurface } from './drapeSurface';
import { layNet, type LayChoices } from './layNet';
import type { Net } from './net';
import { shearedThickness } from './weaveLimits';
import { cutCells, type CutCells, type KeptSide } from './outline';

export interface Drape extends CutCells {
  readonly surface: DrapeSurface;
  readonly net: Net;
  readonly cells: readonly Cell[];
}

export function drapePly(surface: DrapeSurface, choices: LayChoices, kept: KeptSide | null): Drape {
  const net = layNet(surface, choices);
  const cells = cellsOf(net, choices.cutRad);
  return { surface, net, cells, ...cutCells(net, cells, kept) };
}

export interface ShearFigures {
  /** Of the surface, by cells: kept area times the cosine of the shear. */
  readonly coveredMm2: number;
  readonly largestShearDeg: number;
  /** Of the covered area. */
  readonly shareOverWarning: number;
  /** Mean over the covered area. */
  readonly meanThickness: number;
  readonly largestThickness: number;
}

export function shearFigures({ net, cells, keptShare }: Drape, warningDeg: number): ShearFigures {
  const warningRad = (warningDeg * Math.PI) / 180;
  let [coveredMm2, overMm2, clothMm2, largest] = [0, 0, 0, 0];
  cells.forEach(({ shearRad }, index) => {
    const clothHere = keptShare[index]! * net.stepMm ** 2;
    if (clothHere <= 0) return;
    const areaMm2 = clothHere * Math.cos(shearRad);
    coveredMm2 += areaMm2;
    clothMm2 += clothHere;
    if (Math.abs(shearRad) > warningRad) overMm2 += areaMm2;
    largest = Math.max(largest, Math.abs(shearRad));
  });
  return {
    coveredMm2,
    largestShearDeg: (largest * 180) / Math.PI,
    shareOverWarning: coveredMm2 > 0 ? overMm2 / coveredMm2 : 0,
    meanThickness: coveredMm2 > 0 ? clothMm2 / coveredMm2 : 1,
    largestThickness: shearedThickness(largest),
  };
}

/** What is to be covered: face, covers of holes, and allowance. */
export function wantedMm2({ frame, region: regions }: DrapeSurface): number {
  let sum = 0;
  for (let facet = 0; facet < regions.length; facet++)
    if (regions[facet] !== region.beyond) sum += 0.5 * frame[3 * facet]! * frame[3 * facet + 2]!;
  return sum;
}
