import type { CroftEvents } from './events.js';

/**
 * Attributes by name, as they are written in HTML; a number counts as its digits, and null leaves one out. Ticks are `true` or `false`: a
 * library that sets the property would take an empty text for false. Some are either: a tick, or a text.
 */
type Attributes<Name extends string, Tick extends string = never, Either extends string = never> = {
  readonly [name in Name]?: string | number | null | undefined;
} & { readonly [name in Tick]?: boolean | null | undefined } & {
  readonly [name in Either]?: string | boolean | null | undefined;
};

/** Every event as `oncroft-change` (React 19, Preact) and `on:croft-change` (Solid): all of them bubble. */
export type CroftListeners = {
  readonly [Name in keyof CroftEvents as `on${Name}` | `on:${Name}`]?:
    | ((event: CroftEvents[Name]) => void)
    | undefined;
};

/** What every element takes, whatever library the page is written with. */
interface Common extends CroftListeners {
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

/** What each element takes beside that, by its tag. */
export interface CroftAttributes {
  'croft-book': TakesBook &
    Attributes<
      'src' | 'keep-as' | 'which' | 'theme' | 'lang' | 'engine-licence-key' | 'grid-licence-key',
      never,
      'keep'
    >;
  'croft-book-menu': Attributes<'book' | 'theme'>;
  'croft-embed': TakesBook &
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
  'croft-figures-day': Attributes<'book' | 'theme', 'read-only'>;
  'croft-formulas': Attributes<'book' | 'search' | 'theme', 'errors' | 'read-only' | 'bare'>;
  'croft-functions': Attributes<'function' | 'search' | 'book' | 'theme', 'bare'>;
  'croft-labels': Attributes<'book' | 'lots' | 'each' | 'size' | 'theme'>;
  'croft-lesson': Attributes<
    'book' | 'topics' | 'level' | 'seed' | 'count' | 'units' | 'lesson' | 'heading' | 'keep-as' | 'theme'
  >;
  'croft-lesson-sheet': Attributes<
    'task' | 'view' | 'rows' | 'hints' | 'seed' | 'keep-as' | 'book' | 'heading' | 'theme'
  >;
  'croft-lists': Attributes<'book' | 'week' | 'theme', 'bare'>;
  'croft-room': Attributes<'book' | 'view' | 'theme', 'bare'>;
  'croft-runway': Attributes<'book' | 'way' | 'sort' | 'view' | 'months' | 'theme', 'bare' | 'grouped'>;
  'croft-season': Attributes<'book' | 'sort' | 'view' | 'theme', 'bare'>;
  'croft-sheet': Attributes<'sheet' | 'view' | 'book' | 'columns' | 'theme', 'read-only' | 'bare'>;
  'croft-what-if': Attributes<
    'vary' | 'sheet' | 'figures' | 'book' | 'heading' | 'theme',
    'read-only' | 'without-table'
  >;
  'croft-wish-list': Attributes<'book' | 'theme', 'bare'>;
  'croft-working': Attributes<'book' | 'sheet' | 'row' | 'column' | 'theme', 'closable'>;
}

/** What may be written on each element, for libraries that type tags by name. */
export type CroftElements = { readonly [Tag in keyof CroftAttributes]: Common & CroftAttributes[Tag] };
