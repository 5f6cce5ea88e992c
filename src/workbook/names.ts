/** Names as the maker sees them: some characters take no room, and two names can look the same. */
import * as z from 'zod/mini';

/** Longest name of an enclosure, a project or a card, so that one fits on the printed header. */
export const longestName = 120;
export const nameSchema = z.string().check(z.trim(), z.minLength(1), z.maxLength(longestName));

/** Blanks, zero-width characters, and signs that are drawn as nothing. */
const unseen = String.raw`\p{White_Space}\p{Default_Ignorable_Code_Point}\p{C}\u2800`;
const somethingSeen = new RegExp(`[^${unseen}]`, 'u');
const unseenAround = new RegExp(`^[${unseen}]+|[${unseen}]+$`, 'gu');
const unseenInside = new RegExp(`[${unseen}]+`, 'gu');

export const canBeSeen = (name: string): boolean => somethingSeen.test(name);

/** The name without what cannot be seen at its ends. */
export const trimmedName = (name: string): string => name.replaceAll(unseenAround, '');

/** Two names with the same look cannot be told apart on the page. */
export const lookOf = (name: string): string =>
  trimmedName(name).normalize('NFKC').replaceAll(unseenInside, ' ').toLowerCase();
