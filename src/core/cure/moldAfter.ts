/** What an oven program does to the mold. */

/** 'kept': cool enough that the stone stays stone; a free-standing post-cure goes on from it. 'used up': one part. */
export type MoldAfter = 'kept' | 'worn' | 'used up';

/**
 * Stone held in an oven of no more than this keeps its crystal water for the hours of a cure, °C (common practice). Its own
 * vapor holds all of it up to 107 °C; the law of powder in open air is published for 95 to 170 °C and says nothing here.
 */
export const keepsStoneUpToC = 80;
/** Over this share of the stone turned in the worst case, the mold is not for a second part, % (common practice). */
const singleUsePercent = 10;

/** @param worstLossPercent share of the stone that turns back to plaster when nothing holds its water */
export function moldAfter(hottestDialC: number, worstLossPercent: number): MoldAfter {
  if (hottestDialC <= keepsStoneUpToC) return 'kept';
  return worstLossPercent > singleUsePercent ? 'used up' : 'worn';
}
