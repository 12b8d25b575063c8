import {
  completionsFor,
  type FunctionHelp,
  functionNamed,
  helpOf,
  standardFunctions,
} from '../../../src/formulas/index.js';
import type { Choice } from '../../../src/live/choices.js';
import type { ColumnView } from '../../../src/live/columns.js';
import { say, spoken } from '../../../src/words/index.js';
import type { AtCaret } from './caret.js';

/** One line of the list under an editor. */
export interface Suggestion {
  readonly value: string;
  readonly label: string;
  /** A few words beside the label. */
  readonly note: string;
}

/** A signature with the current argument set apart, and what that argument takes. */
export interface Hint {
  readonly before: string;
  readonly current: string;
  readonly after: string;
  readonly help: string;
}

const MOST = 60;

/** Known values that fit what is typed: those that begin with it, then those that have it inside. */
export function fitting(choices: readonly Choice[], typed: string): Suggestion[] {
  const wanted = typed.trim().toLowerCase();
  const begins = choices.filter(({ label }) => label.toLowerCase().startsWith(wanted));
  const within = choices.filter(
    ({ label }) => !label.toLowerCase().startsWith(wanted) && label.toLowerCase().includes(wanted),
  );
  return [...begins, ...(wanted === '' ? [] : within)]
    .slice(0, MOST)
    .map(({ value, label }) => ({ value, label, note: '' }));
}

/** Names that the word at the caret may become: columns of the sheet and functions. */
export function namesFor(word: string, columns: readonly ColumnView[]): Suggestion[] {
  const wanted = word.toLowerCase();
  const ofColumns = columns
    .filter(({ name }) => name.toLowerCase().startsWith(wanted) && name.toLowerCase() !== wanted)
    .map(({ name, title }) => ({ value: name, label: name, note: say`column “${title}”` }));
  const ofFunctions = completionsFor(word).map(({ name, summary }) => ({
    value: `${name}(`,
    label: name,
    note: spoken(summary),
  }));
  return [...ofColumns, ...ofFunctions].slice(0, MOST);
}

/** Known values of the argument whose text is being typed. */
export function literalsFor({ call, literal }: AtCaret): Suggestion[] {
  const declaration = call && functionNamed(call.name);
  const values = declaration && helpOf(declaration).arguments[call.argument]?.values;
  if (!values || !literal) return [];
  const wanted = literal.text.toLowerCase();
  return values
    .filter((value) => value.toLowerCase().startsWith(wanted))
    .slice(0, MOST)
    .map((value) => ({ value: `${value}"`, label: value, note: '' }));
}

const stopped = (text: string): string => {
  const said = spoken(text);
  return /[.?!]$/.test(said) ? said : `${said}.`;
};

const ofOurs = ({ arguments: args, gives, summary }: FunctionHelp, at: number): string => {
  const argument = args[at];
  if (!argument)
    return args.length === 0 ? say`${summary} Gives ${gives}.` : say`No more arguments: close the bracket.`;
  const otherwise = argument.otherwise ? say` Left out: ${stopped(argument.otherwise)}` : '';
  return `${argument.name}: ${stopped(argument.help)}${otherwise}`;
};

/** The hint for the function that the caret stands in. */
export function hintFor({ call }: AtCaret): Hint | null {
  if (!call) return null;
  const declaration = functionNamed(call.name);
  const help = declaration ? helpOf(declaration) : null;
  const standard = help ? null : standardFunctions.find(({ name }) => name === call.name);
  const text = help?.signature ?? standard?.signature;
  if (text === undefined) return null;
  const bracket = text.indexOf('(') + 1;
  const names = text.slice(bracket, -1).split(', ');
  // `[more]` stands for any number of arguments like the one before.
  const at = names.at(-1) === '[more]' ? Math.min(call.argument, names.length - 1) : call.argument;
  const current = names[at] ?? '';
  const head = names.slice(0, at).map((name) => `${name}, `);
  const tail = names.slice(at + 1).map((name) => `, ${name}`);
  return {
    before: text.slice(0, bracket) + head.join(''),
    current,
    after: `${tail.join('')})`,
    help: help ? ofOurs(help, call.argument) : spoken(standard?.summary ?? ''),
  };
}
