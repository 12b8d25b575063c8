import { phrase, spoken } from '../../../src/words/index.js';

/** The grid library's own texts, in Croftsheet's words. Keys are the library's. */
export const LANGUAGE = 'en-croft';

const conditions = {
  none: phrase('Any value'),
  isEmpty: phrase('Blank'),
  isNotEmpty: phrase('Not blank'),
  isEqualTo: phrase('The same as'),
  isNotEqualTo: phrase('Not the same as'),
  beginsWith: phrase('Begins with'),
  endsWith: phrase('Ends with'),
  contains: phrase('Has in it'),
  doesNotContain: phrase('Does not have in it'),
  greaterThan: phrase('More than'),
  greaterThanOrEqualTo: phrase('At least'),
  lessThan: phrase('Less than'),
  lessThanOrEqualTo: phrase('At most'),
  isBetween: phrase('From … to …'),
  isNotBetween: phrase('Outside … to …'),
  after: phrase('Later than'),
  afterOrEqual: phrase('On or after'),
  before: phrase('Earlier than'),
  beforeOrEqual: phrase('On or before'),
  today: phrase('Today'),
  tomorrow: phrase('Tomorrow'),
  yesterday: phrase('Yesterday'),
};

const texts: Record<string, string> = {
  ...Object.fromEntries(Object.entries(conditions).map(([key, text]) => [`Filters:conditions.${key}`, text])),
  'Filters:labels.filterByCondition': phrase('Show rows where'),
  'Filters:labels.filterByValue': phrase('Show rows with'),
  'Filters:labels.conjunction': phrase('And'),
  'Filters:labels.disjunction': phrase('Or'),
  'Filters:values.blankCells': phrase('blank'),
  'Filters:buttons.selectAll': phrase('Tick all'),
  'Filters:buttons.clear': phrase('Untick all'),
  'Filters:buttons.ok': phrase('Show these'),
  'Filters:buttons.cancel': phrase('Cancel'),
  'Filters:buttons.placeholder.search': phrase('Find a value'),
  'Filters:buttons.placeholder.value': phrase('Value'),
  'Filters:buttons.placeholder.secondValue': phrase('Second value'),
  'CheckboxRenderer:checked': phrase('yes'),
  'CheckboxRenderer:unchecked': phrase('no'),
};

/** The same in the language spoken now. */
export const wordsNow = (): Record<string, string> =>
  Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, spoken(text)]));
