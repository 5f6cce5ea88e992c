/** The first page of a project. It is no step: it has no inputs and reports nothing of its own. */
export const decisionPage = {
  id: 'decision',
  title: 'Decision',
  question: 'May the stone be poured?',
} as const;
