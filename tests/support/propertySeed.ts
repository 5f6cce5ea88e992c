import * as fc from 'fast-check';

/** A fresh seed for property tests; suites print it in their title, and `RUN_SEED` runs it again. */
export const propertySeed = Number(process.env['RUN_SEED'] ?? Date.now() % 2 ** 31);
fc.configureGlobal({ seed: propertySeed });
