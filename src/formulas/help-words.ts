/** What a declaration says of its arguments and answer, put into words: for help and reference. */
import type { Problem } from '../problem.js';
import { orList } from '../units/index.js';
import { type ArgumentDeclaration, type FunctionDeclaration, isListArgument } from './declare.js';
import { callFunction } from './evaluate-declared.js';
import { EXAMPLE_CONTEXT, givenInExample } from './example-working.js';
import type { GivenValue } from './read-arguments.js';

const KINDS: Readonly<Record<ArgumentDeclaration['kind'], string>> = {
  number: 'a number',
  text: 'text',
  date: 'a date',
  'month-day': 'a month and a day',
  crop: 'the name of a crop',
  food: 'the name of a food',
  container: 'the name of a container',
  unit: 'the name of a unit',
  measure: 'the name of a container or a unit',
  'way kept': 'a way kept',
  basis: 'a basis',
  numbers: 'numbers',
  'dates with blanks': 'dates',
  'numbers with blanks': 'numbers',
};

const plain = (n: number): string => n.toLocaleString('en-US', { maximumFractionDigits: 9 });

/** What it takes, with its bounds: `a number from 0 to 30,000`. */
export function takesInWords(arg: ArgumentDeclaration): string {
  const { kind, least, most, values } = arg;
  const what = isListArgument(arg) ? `${KINDS[kind]}: a range of cells, or one value` : KINDS[kind];
  if (kind === 'text' && values) return orList(values.map((each) => `"${each}"`));
  if (least !== undefined && most !== undefined) return `${what} from ${plain(least)} to ${plain(most)}`;
  if (least !== undefined) return `${what}, ${plain(least)} or more`;
  return most === undefined ? what : `${what}, ${plain(most)} or less`;
}

const HOLE = /\{(\w+)(?:\|([^}]*))?\}/g;

/** The unit of an argument or an answer, in words; blank where it has none. */
export function unitInWords(template: string | undefined): string {
  if (template === undefined || template === 'date') return '';
  return template
    .replace(HOLE, (_all, name: string, otherwise?: string) =>
      otherwise ? `what “${name}” says, else ${otherwise}` : `what “${name}” says`,
    )
    .replace(/^X (?=an? )/, 'that unit, ')
    .replace(/^X$/, 'any unit, the same throughout');
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
