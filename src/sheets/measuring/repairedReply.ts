import type { MeasuredShape, RepairedWalls } from '../../jobs/protocol';

/** The measurement with the walls of closing as the repaired stone leaves them; the part itself stays as it was drawn. */
export function withRepairedWalls(reply: MeasuredShape, { closing, wallMm }: RepairedWalls): MeasuredShape {
  return {
    ...reply,
    summary: { ...reply.summary, closing },
    maps: { ...reply.maps, closing: { ...reply.maps.closing, wallMm } },
  };
}
