import { type FunctionHelp, functions, GROUPS, helpOf, standardFunctions } from '../../src/formulas/index.js';
import { counted, phrase, say, spoken, spokenTag } from '../../src/words/index.js';

/** One line of the list; its words are told in the language spoken when they are shown. */
export interface ListedFunction {
  readonly name: string;
  readonly summary: string;
}

export interface ListedGroup {
  readonly title: string;
  readonly functions: readonly ListedFunction[];
}

const STANDARD = phrase('Of the OpenFormula standard');

const wordsOf = ({ signature, summary, group, gives, details, arguments: args }: FunctionHelp): string =>
  [
    signature,
    summary,
    spoken(group),
    gives,
    ...details,
    ...args.flatMap(({ help, unit }) => [help, unit]),
  ].join(' ');

let wordsIn = '';
let known = new Map<string, string>();

/** Everything a search looks into of each function, in small letters, in the language spoken now. */
function searched(): ReadonlyMap<string, string> {
  if (wordsIn === spokenTag() && known.size > 0) return known;
  wordsIn = spokenTag();
  const all = [
    ...functions.map((each) => [each.name, wordsOf(helpOf(each))] as const),
    ...standardFunctions.map(
      ({ name, signature, summary }) =>
        [name, `${signature} ${spoken(summary)} ${spoken(STANDARD)}`] as const,
    ),
  ];
  known = new Map(all.map(([name, words]) => [name, words.replaceAll('_', ' ').toLowerCase()]));
  return known;
}

/** All functions: those of the trade by group, then those of the standard. */
export const LISTED: readonly ListedGroup[] = [
  ...GROUPS.map((title) => ({
    title,
    functions: functions
      .filter(({ group }) => group === title)
      .map(({ name, summary }) => ({ name, summary })),
  })),
  {
    title: STANDARD,
    functions: standardFunctions.map(({ name, summary }) => ({ name, summary })),
  },
];

/**
 * What holds every word that is searched for; what holds them in its name comes first, and a group that holds none
 * is left out.
 */
export function found(search: string): readonly ListedGroup[] {
  const asked = search.replaceAll('_', ' ').toLowerCase().split(/\s+/).filter(Boolean);
  const words = searched();
  const byName = ({ name }: ListedFunction): boolean => {
    const called = name.replaceAll('_', ' ').toLowerCase();
    return asked.length > 0 && asked.every((word) => called.includes(word));
  };
  const rank = (each: ListedFunction | undefined): number => (each && byName(each) ? 0 : 1);
  return LISTED.map(({ title, functions }) => ({
    title,
    functions: functions
      .filter(({ name }) => asked.every((word) => words.get(name)?.includes(word)))
      .sort((a, b) => rank(a) - rank(b)),
  }))
    .filter(({ functions }) => functions.length > 0)
    .sort((a, b) => rank(a.functions[0]) - rank(b.functions[0]));
}

/** How many were found, in words. */
export function foundInWords(groups: readonly ListedGroup[]): string {
  const count = groups.reduce((sum, { functions }) => sum + functions.length, 0);
  if (count === 0) return say`No function has all of these words. Try fewer, or another word for it.`;
  return counted(count, String(count), 'function');
}
