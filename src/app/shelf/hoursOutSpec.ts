/** The field for the hours of one time out of the freezer. */
export const hoursOutSpec = {
  kind: 'number',
  label: 'Hours out this time',
  unit: 'h',
  default: null,
  min: 0.01,
  max: 10_000,
  decimals: 1,
  meaning: 'From taking the roll out of the freezer until it is back in, thawing included.',
} as const;
