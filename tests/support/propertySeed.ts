/** A fresh seed for property tests, shown in their titles; `RUN_SEED` runs one again. */
import * as fc from 'fast-check';

export const propertySeed = Number(process.env['RUN_SEED'] ?? Date.now() % 2 ** 31);
fc.configureGlobal({ seed: propertySeed });
