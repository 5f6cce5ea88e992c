/** The cells of a net with their shear, in the order of their nodes. */
import { cellAt, cellShear, type CellNodes, type Net } from './net';

export interface Cell {
  readonly nodes: CellNodes;
  readonly shearRad: number;
}

/** @param mostRad where fronts meet, threads may close a cell that could not shear so far: none */
export function cellsOf(net: Net, mostRad: number): readonly Cell[] {
  const cells: Cell[] = [];
  for (let node = 0; node < net.count; node++) {
    const nodes = cellAt(net, node);
    if (nodes === null) continue;
    const shearRad = cellShear(net, nodes);
    if (Math.abs(shearRad) <= mostRad + 1e-9) cells.push({ nodes, shearRad });
  }
  return cells;
}
