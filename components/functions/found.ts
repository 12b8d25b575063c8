import { type FunctionHelp, functions, GROUPS, helpOf, standardFunctions } from '../../src/formulas/index.js';

/** One line of the list. */
export interface ListedFunction {
  readonly name: string;
  readonly summary: string;
  /** Everything a search looks into, in small letters. */
  readonly words: string;
}

export interface ListedGroup {
  readonly title: string;
  readonly functions: readonly ListedFunction[];
}

const STANDARD = 'Of the OpenFormula standard';

const wordsOf = ({ signature, summary, group, gives, details, arguments: args }: FunctionHelp): string =>
  [signature, summary, group, gives, ...details, ...args.flatMap(({ help, unit }) => [help, unit])]
    .join(' ')
    .replaceAll('_', ' ')
    .toLowerCase();

/** All functions: those of the trade by group, then those of the standard. */
export const LISTED: readonly ListedGroup[] = [
  ...GROUPS.map((title) => ({
    title,
    functions: functions
      .filter(({ group }) => group === title)
      .map((each) => ({ name: each.name, summary: each.summary, words: wordsOf(helpOf(each)) })),
  })),
  {
    title: STANDARD,
    functions: standardFunctions.map(({ name, signature, summary }) => ({
      name,
      summary,
      words: `${signature} ${summary} ${STANDARD}`.toLowerCase(),
    })),
  },
];

/**
 * What holds every word that is searched for; what holds them in its name comes first, and a group that holds none
 * is left out.
 */
export function found(search: string): readonly ListedGroup[] {
  const asked = search.replaceAll('_', ' ').toLowerCase().split(/\s+/).filter(Boolean);
  const byName = ({ name }: ListedFunction): boolean => {
    const words = name.replaceAll('_', ' ').toLowerCase();
    return asked.length > 0 && asked.every((word) => words.includes(word));
  };
  const rank = (each: ListedFunction | undefined): number => (each && byName(each) ? 0 : 1);
  return LISTED.map(({ title, functions }) => ({
    title,
    functions: functions
      .filter(({ words }) => asked.every((word) => words.includes(word)))
      .sort((a, b) => rank(a) - rank(b)),
  }))
    .filter(({ functions }) => functions.length > 0)
    .sort((a, b) => rank(a.functions[0]) - rank(b.functions[0]));
}

/** How many were found, in words. */
export function foundInWords(groups: readonly ListedGroup[]): string {
  const count = groups.reduce((sum, { functions }) => sum + functions.length, 0);
  if (count === 0) return 'No function has all of these words. Try fewer, or another word for it.';
  return count === 1 ? '1 function' : `${count} functions`;
}
