/** No poured stone stands that is thinner than this; what the parting leaves thinner is a flake. Our own judgement. */
export const leastStoneMm = 0.05;
