/** The pages of the guide, in the order of its navigation. */
export interface Entry {
  readonly file: string;
  /** In the navigation. */
  readonly short: string;
  readonly title: string;
  /** What it holds, in a sentence. */
  readonly about: string;
}

export const ENTRIES: readonly Entry[] = [
  {
    file: 'index.html',
    short: 'Start',
    title: 'Guide to Croftsheet',
    about: 'What to read first, and where to look things up.',
  },
  {
    file: 'family.html',
    short: 'At home',
    title: 'At the kitchen table',
    about: 'The first evening, the Sundays after it, and the year.',
  },
  {
    file: 'blogger.html',
    short: 'On your blog',
    title: 'A sheet on your blog',
    about: 'Two lines to paste, your readers’ own numbers, and what a careful site asks about.',
  },
  {
    file: 'developer.html',
    short: 'In your build',
    title: 'Croftsheet in your own build',
    about: 'Installing, entries, types, events, frameworks, servers, and books in Node.',
  },
  {
    file: 'gallery.html',
    short: 'Ready sheets',
    title: 'Ten sheets to paste',
    about: 'Each one works where it stands; copy it and write your own numbers into it.',
  },
  {
    file: 'elements.html',
    short: 'Elements',
    title: 'Every element',
    about: 'What each element shows, what it heeds, what it says, and an example that runs.',
  },
  {
    file: 'functions.html',
    short: 'Functions',
    title: 'Every formula function',
    about: 'Arguments with their units, errors, sources, and examples whose numbers you can change.',
  },
  {
    file: 'columns.html',
    short: 'Columns',
    title: 'Every column',
    about: 'What people write into each sheet, what is worked out from it, and how.',
  },
  {
    file: 'units.html',
    short: 'Units',
    title: 'Every unit and container',
    about: 'Names that are understood, sizes, and where each size comes from.',
  },
  {
    file: 'problems.html',
    short: 'Problems',
    title: 'Every problem code',
    about: 'What each code means that a refusal, a cell or a file can carry.',
  },
  {
    file: 'changes.html',
    short: 'Changes',
    title: 'Changes',
    about: 'What each version has that the one before had not.',
  },
];

export const entryOf = (file: string): Entry => {
  const found = ENTRIES.find((entry) => entry.file === file);
  if (!found) throw new Error(`The guide has no page ${file}.`);
  return found;
};
