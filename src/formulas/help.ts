import type { Problem } from '../problem.js';
import { spoken } from '../words/index.js';
import { type FunctionDeclaration, type Group, signature } from './declare.js';
import { workingOfExample } from './example-working.js';
import { functions } from './functions.js';
import { errorsOf, takesInWords, unitInWords, valuesCalled } from './help-words.js';
import { standardFunctions } from './standard.js';

export interface ArgumentHelp {
  readonly name: string;
  readonly help: string;
  /** What it takes, with its bounds: 'a number, 0 or more', 'the name of a crop'. */
  readonly takes: string;
  /** Its unit in words; blank where it has none, or any will do. */
  readonly unit: string;
  readonly optional: boolean;
  /** What counts when it is left out, in words; blank where it must be given. */
  readonly otherwise: string;
  /** Values to offer while typing; empty where any will do. */
  readonly values: readonly string[];
}

/**
 * Everything that completion, hints and the reference page show of a function: plain data, in the language spoken
 * when it is asked for.
 */
export interface FunctionHelp {
  readonly name: string;
  readonly group: Group;
  readonly signature: string;
  readonly summary: string;
  readonly arguments: readonly ArgumentHelp[];
  /** Unit of the answer. */
  readonly gives: string;
  readonly details: readonly string[];
  readonly example: { readonly formula: string; readonly gives: string };
  readonly source: string;
  /** Food-safety words that stand with every answer; blank where none do. */
  readonly caution: string;
}

/** The help of a function with its example worked out step by step, for the reference. */
export interface FunctionReference extends FunctionHelp {
  /** The steps of the example, which end in what it gives. */
  readonly steps: readonly string[];
  /** Where the answer of the example comes from: publisher and title, or 'arithmetic'. */
  readonly from: string;
  /** What a cell says where it is given something that does not fit: one for each argument. */
  readonly errors: readonly Problem[];
}

export function helpOf(declaration: FunctionDeclaration): FunctionHelp {
  const { name, group, summary, gives, example, source } = declaration;
  return {
    name,
    group,
    signature: signature(declaration),
    summary: spoken(summary),
    arguments: declaration.arguments.map((arg) => ({
      name: arg.name,
      help: spoken(arg.help),
      takes: takesInWords(arg),
      unit: unitInWords(arg.unit),
      optional: arg.optional === true,
      otherwise: spoken(arg.otherwise ?? ''),
      values: valuesCalled(arg),
    })),
    gives: spoken(gives),
    details: (declaration.details ?? []).map(spoken),
    example,
    source: spoken(source),
    caution: spoken(declaration.caution ?? ''),
  };
}

/** Made when asked for: it works the example out. */
export function referenceOf(declaration: FunctionDeclaration): FunctionReference {
  const working = workingOfExample(declaration);
  return {
    ...helpOf(declaration),
    steps: working?.steps ?? [],
    from: spoken(working?.answer.source ?? declaration.source),
    errors: errorsOf(declaration),
  };
}

/** One line of the list that opens while a function name is typed. */
export interface Completion {
  readonly name: string;
  readonly signature: string;
  readonly summary: string;
  /** True for functions of this book rather than of the standard. */
  readonly ours: boolean;
}

const all: readonly Completion[] = [
  ...functions.map((each) => ({
    name: each.name,
    signature: signature(each),
    summary: each.summary,
    ours: true,
  })),
  ...standardFunctions.map((each) => ({ ...each, ours: false })),
];

/**
 * Functions whose names begin with what is typed, then those with a later word that does ('BUSHEL' finds
 * JARS_PER_BUSHEL); the book's own before the standard's. Everything for blank.
 */
export function completionsFor(typed: string): readonly Completion[] {
  const start = typed.trim().toUpperCase();
  const begins = all.filter(({ name }) => name.startsWith(start));
  const within = all.filter(({ name }) => !name.startsWith(start) && name.includes(`_${start}`));
  return (start === '' ? all : [...begins, ...within]).map((each) => ({
    ...each,
    summary: spoken(each.summary),
  }));
}
