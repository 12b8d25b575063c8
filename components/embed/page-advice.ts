/** What is said to whoever keeps the page where something on it cannot work; loaded only there. */

const ADVICE = {
  'in-paragraph': () =>
    'there is nothing inside. A browser puts a table out of the <p> that stands around this element: put a <div> around it instead, or nothing (in many editors, as a block of HTML).',
  empty: () => 'there is nothing inside, so nothing shows. Put a <table> into it, or name a file with src.',
  'no-head': () =>
    'its table has no head, so data-open and data-formula are not heeded: put its first row into <thead>, or make each of its cells a <th>.',
  spanned: (column: string) =>
    `a cell with rowspan or colspan stands in the column “${column}”, so readers cannot write into that column: give each row a cell of its own.`,
  total: (row: string) =>
    `its last row, “${row}”, looks like a total, and counts as one more row: put data-total on its <tr>, or the row into <tfoot>.`,
  alone: (title: string) =>
    `the file of “${title}” was saved with no column open, so it holds the table alone: readers cannot write into it, or open it as a grid. Save it again with the columns that they may try ticked.`,
} as const;

export type Advice = keyof typeof ADVICE;

/** Says it in the console, where readers see nothing of it. */
export function advise(host: HTMLElement, what: Advice, called: string): void {
  console.warn(`<croft-embed${host.id && ` id="${host.id}"`}>: ${ADVICE[what](called)}`);
}
