/**
 * Types of the elements for JSX. Importing this adds them to the global `JSX`. Where JSX lives in a module, as in
 * React 19: `declare module 'react' { namespace JSX { interface IntrinsicElements extends CroftElements {} } }`.
 */

/** Attributes by name, as they are written in HTML. */
type Attributes<Name extends string, Tick extends string = never> = {
  readonly [name in Name]?: string | undefined;
} & { readonly [name in Tick]?: boolean | '' | undefined };

/** What every element takes, whatever library the page is written with. */
interface Common {
  readonly id?: string;
  readonly class?: string;
  readonly className?: string;
  readonly slot?: string;
  readonly hidden?: boolean;
  readonly style?: unknown;
  readonly children?: unknown;
  readonly key?: unknown;
  readonly ref?: unknown;
}

export interface CroftElements {
  'croft-book': Common &
    Attributes<
      'src' | 'keep' | 'keep-as' | 'which' | 'theme' | 'lang' | 'engine-licence-key' | 'grid-licence-key'
    >;
  'croft-book-menu': Common & Attributes<'book'>;
  'croft-embed': Common &
    Attributes<
      | 'sheet'
      | 'src'
      | 'source'
      | 'which'
      | 'database'
      | 'start-at'
      | 'columns'
      | 'open'
      | 'keep-as'
      | 'grid-licence-key'
      | 'engine-licence-key'
      | 'theme'
    >;
  'croft-figures-day': Common & Attributes<'book', 'read-only'>;
  'croft-formulas': Common & Attributes<'book' | 'search' | 'theme', 'errors' | 'read-only' | 'bare'>;
  'croft-functions': Common & Attributes<'function' | 'search' | 'book' | 'theme', 'bare'>;
  'croft-labels': Common & Attributes<'book' | 'lots' | 'each' | 'size' | 'theme'>;
  'croft-lesson': Common &
    Attributes<
      'book' | 'topics' | 'level' | 'seed' | 'count' | 'units' | 'lesson' | 'heading' | 'keep-as' | 'theme'
    >;
  'croft-lesson-sheet': Common &
    Attributes<'task' | 'view' | 'rows' | 'hints' | 'seed' | 'keep-as' | 'book' | 'heading' | 'theme'>;
  'croft-lists': Common & Attributes<'book' | 'week' | 'theme', 'bare'>;
  'croft-room': Common & Attributes<'book' | 'view' | 'theme', 'bare'>;
  'croft-runway': Common &
    Attributes<'book' | 'way' | 'sort' | 'view' | 'months' | 'theme', 'bare' | 'grouped'>;
  'croft-season': Common & Attributes<'book' | 'sort' | 'view' | 'theme', 'bare'>;
  'croft-sheet': Common & Attributes<'sheet' | 'view' | 'book' | 'columns' | 'theme', 'read-only' | 'bare'>;
  'croft-what-if': Common &
    Attributes<'vary' | 'sheet' | 'figures' | 'book' | 'heading' | 'theme', 'read-only' | 'without-table'>;
  'croft-wish-list': Common & Attributes<'book' | 'theme', 'bare'>;
  'croft-working': Common & Attributes<'book' | 'sheet' | 'row' | 'column' | 'theme', 'closable'>;
}

declare global {
  namespace JSX {
    interface IntrinsicElements extends CroftElements {}
  }
}
