/**
 * What the package offers by name: each entry defines its element and exports its class. `package.json` names the
 * same ones under `exports`; a test holds the two together.
 */
export const ELEMENT_ENTRIES = {
  'croft-book': 'components/book/croft-book.ts',
  'croft-book-menu': 'components/book-menu/croft-book-menu.ts',
  'croft-embed': 'components/embed/croft-embed.ts',
  'croft-figures-day': 'components/sheet/figures-day.ts',
  'croft-formulas': 'components/formulas/croft-formulas.ts',
  'croft-functions': 'components/functions/croft-functions.ts',
  'croft-labels': 'components/labels/croft-labels.ts',
  'croft-lesson': 'components/lesson/croft-lesson.ts',
  'croft-lesson-sheet': 'components/lesson/croft-lesson-sheet.ts',
  'croft-lists': 'components/lists/croft-lists.ts',
  'croft-room': 'components/room/croft-room.ts',
  'croft-runway': 'components/runway/croft-runway.ts',
  'croft-season': 'components/season/croft-season.ts',
  'croft-sheet': 'components/sheet/croft-sheet.ts',
  'croft-what-if': 'components/what-if/croft-what-if.ts',
  'croft-wish-list': 'components/week/croft-wish-list.ts',
  'croft-working': 'components/working/croft-working.ts',
};

/** Files of `dist` by name, and what each is built from. The embedded sheet's own file stands first among them. */
export const ENTRIES = {
  croftsheet: 'components/croftsheet.ts',
  'croftsheet-embed': 'components/embed/croft-embed.ts',
  classes: 'components/package/classes.ts',
  jsx: 'components/jsx.ts',
  'croftsheet-embed-page': 'components/embed/embed-page.ts',
  ...Object.fromEntries(
    Object.entries(ELEMENT_ENTRIES)
      .filter(([name]) => name !== 'croft-embed')
      .map(([name, source]) => [`elements/${name}`, source]),
  ),
};

/** Entries that define the elements whose classes they bring. */
export const DEFINING = Object.keys(ENTRIES).filter(
  (name) => name === 'croftsheet' || name.startsWith('elements/'),
);

/** The one file for those who can put only one on their site, and the folder of `dist` that has it. */
export const ONE_FILE = {
  folder: 'one-file',
  name: 'croftsheet-reading',
  source: 'components/package/one-file.ts',
};
