/** Working value of a facet that no rule has settled yet. */
export const pending = 255;
/** Working value beside the kinds: part of a wall, show or core by its side. */
export const wall = 254;
