/** Inputs that stood elsewhere in an earlier version, by their former path: where they are now, and what became of them. */
export const movedInputs: Readonly<Record<string, string>> = {
  'plies.cureTemperatureC':
    'plies.stressFreeC. It follows from the oven program, cure.stages, until something is entered',
  'mold.gelC': 'cure.gelC. It follows from the oven program, cure.stages, until something is entered',
  'closing.flowTemperatureC':
    'closing.gelTimeAtC, the temperature that the data sheet gives beside closing.timeToGelMin. Where the resin flows follows from the oven program, cure.stages',
  'closing.cureTemperatureC': 'cure.stages, the oven program that it follows from',
};
