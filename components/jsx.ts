import type { CroftEvents } from './events.js';

/**
 * Types of the elements for JSX. Importing this adds them to the global `JSX`. Where JSX lives in a module, as in
 * React 19: `declare module 'react' { namespace JSX { interface IntrinsicElements extends CroftElements {} } }`.
 */

/**
 * Attributes by name, as they are written in HTML; a number counts as its digits. Ticks are `true` or `false`: a
 * library that sets the property would take an empty text for false. Some are either: a tick, or a text.
 */
type Attributes<Name extends string, Tick extends string = never, Either extends string = never> = {
  readonly [name in Name]?: string | number | undefined;
} & { readonly [name in Tick]?: boolean | undefined } & {
  readonly [name in Either]?: string | boolean | undefined;
};

/** Every event as `oncroft-change` (React 19, Preact) and `on:croft-change` (Solid): all of them bubble. */
type Listeners = {
  readonly [Name in keyof CroftEvents as `on${Name}` | `on:${Name}`]?:
    | ((event: CroftEvents[Name]) => void)
    | undefined;
};

/** What every element takes, whatever library the page is written with. */
interface Common extends Listeners {
  readonly id?: string | undefined;
  readonly class?: string | undefined;
  readonly className?: string | undefined;
  readonly slot?: string | undefined;
  readonly part?: string | undefined;
  readonly title?: string | undefined;
  readonly lang?: string | undefined;
  readonly dir?: string | undefined;
  readonly role?: string | undefined;
  readonly tabIndex?: number | undefined;
  readonly hidden?: boolean | undefined;
  readonly style?: unknown;
  readonly children?: unknown;
  readonly key?: unknown;
  readonly ref?: unknown;
  /** A table and its data as text, such as `embedOf` answers, put in as HTML. */
  readonly dangerouslySetInnerHTML?: { readonly __html: string } | undefined;
  readonly innerHTML?: string | undefined;
  readonly suppressHydrationWarning?: boolean | undefined;
}

/** A book as data or JSON text, set as a property by libraries that do so. */
interface TakesBook {
  readonly book?: unknown;
}

export interface CroftElements {
  'croft-book': Common &
    TakesBook &
    Attributes<
      'src' | 'keep-as' | 'which' | 'theme' | 'lang' | 'engine-licence-key' | 'grid-licence-key',
      never,
      'keep'
    >;
  'croft-book-menu': Common & Attributes<'book' | 'theme'>;
  'croft-embed': Common &
    TakesBook &
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
  'croft-figures-day': Common & Attributes<'book' | 'theme', 'read-only'>;
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
