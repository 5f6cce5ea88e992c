/** What a plan says about a verdict, for every place that shows one. */
import { createContext } from 'react';
import type { Verdict } from '../core/figure';

/** The sentence after a verdict's reason; '' where there is nothing to say. */
export type AdviceOf = (verdict: Verdict) => string;

/** Without a plan: what to look up or to test. */
export const Advice = createContext<AdviceOf>(({ fix }) => fix);
