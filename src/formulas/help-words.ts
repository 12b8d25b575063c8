/** What a declaration says of its arguments and answer, put into words: for help and reference. */
import { unitTold } from '../planning/unit-told.js';
import type { Problem } from '../problem.js';
import { orList } from '../units/index.js';
import { numberFormat, phrase, say, spoken } from '../words/index.js';
import { type ArgumentDeclaration, type FunctionDeclaration, isListArgument } from './declare.js';
import { callFunction } from './evaluate-declared.js';
import { EXAMPLE_CONTEXT, givenInExample } from './example-working.js';
import type { GivenValue } from './read-arguments.js';

const KINDS: Readonly<Record<ArgumentDeclaration['kind'], string>> = {
  number: phrase('a number'),
  text: phrase('text'),
  date: phrase('a date'),
  'month-day': phrase('a month and a day'),
  crop: phrase('the name of a crop'),
  food: phrase('the name of a food'),
  container: phrase('the name of a container'),
  unit: phrase('the name of a unit'),
  measure: phrase('the name of a container or a unit'),
  'way kept': phrase('a way kept'),
  basis: phrase('a basis'),
  numbers: phrase('numbers'),
  'dates with blanks': phrase('dates'),
  'numbers with blanks': phrase('numbers'),
};

const plain = (n: number): string => numberFormat({ maximumFractionDigits: 9 }).format(n);

/** Known values of an argument as the language spoken calls them: each is understood so on every page. */
export const valuesCalled = ({ values = [] }: ArgumentDeclaration): readonly string[] => [
  ...new Set(values.map(spoken)),
];

/** What it takes, with its bounds: `a number from 0 to 30,000`. */
export function takesInWords(arg: ArgumentDeclaration): string {
  const { kind, least, most, values } = arg;
  const name = spoken(KINDS[kind]);
  const what = isListArgument(arg) ? say`${name}: a range of cells, or one value` : name;
  if (kind === 'text' && values) return orList(valuesCalled(arg).map((each) => `"${each}"`));
  if (least !== undefined && most !== undefined) return say`${what} from ${plain(least)} to ${plain(most)}`;
  if (least !== undefined) return say`${what}, ${plain(least)} or more`;
  return most === undefined ? what : say`${what}, ${plain(most)} or less`;
}

const HOLE = /\{(\w+)(?:\|([^}]*))?\}/;

/** The unit of an argument or an answer, in words; blank where it has none. */
export function unitInWords(template: string | undefined): string {
  if (template === undefined || template === 'date') return '';
  if (template === 'X') return say`any unit, the same throughout`;
  if (template.startsWith('X a')) return say`that unit, ${unitTold(template.slice(2))}`;
  if (!template.includes('{')) return unitTold(template);
  const parts = template.split(' a ').map((part) => {
    const [, name, otherwise] = HOLE.exec(part) ?? [];
    if (name === undefined) return unitTold(part);
    return otherwise ? say`what “${name}” says, else ${otherwise}` : say`what “${name}” says`;
  });
  return parts.reduce((above, below) => say`${above} a ${below}`);
}

/** A slip that an argument of this kind refuses; null where it takes anything. */
function misfit({ kind, least, values }: ArgumentDeclaration): GivenValue | null {
  switch (kind) {
    case 'number':
      return least === undefined ? 'some' : least - 1;
    case 'numbers':
    case 'numbers with blanks':
      return 'some';
    case 'date':
    case 'dates with blanks':
      return '2026-02-30';
    case 'month-day':
      return '02-30';
    case 'food':
      return null;
    case 'text':
      return values ? 'another' : 'barrow';
    case 'crop':
      return 'potatoe';
    default:
      return 'barrow';
  }
}

/**
 * What goes wrong with what it is given, as a cell would say it: each argument refused once, by asking for it. The
 * other arguments are those of the example.
 */
export function errorsOf(declaration: FunctionDeclaration): readonly Problem[] {
  const example = givenInExample(declaration) ?? [];
  const wrong = (at: number, value: GivenValue | undefined): Problem[] => {
    const given = declaration.arguments.map((_arg, i) => (i === at ? value : example[i]));
    const answer = callFunction(declaration, given, EXAMPLE_CONTEXT);
    return answer.ok ? [] : [answer.problem];
  };
  const missing = declaration.arguments.findIndex(({ optional }) => !optional);
  const all = [
    ...(missing < 0 ? [] : wrong(missing, undefined)),
    ...declaration.arguments.flatMap((arg, i) => {
      const value = misfit(arg);
      return value === null ? [] : wrong(i, value);
    }),
  ];
  return [...new Map(all.map((each) => [each.message, each])).values()];
}
