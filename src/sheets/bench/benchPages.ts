/** Pages of a project that are no steps: they report nothing of their own. */
export const benchPage = {
  id: 'bench',
  title: 'Bench',
  question: 'What did I measure, and what follows from it?',
} as const;

export const livePage = { id: 'live', title: 'Live', question: 'What do I do now?' } as const;

/** In the contents, after the steps. */
export const benchPages = [benchPage, livePage] as const;
