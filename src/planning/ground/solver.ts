/**
 * Linear and mixed-integer programs, as the planners write them, and the library that solves them behind our
 * own interface, so that it can be replaced. It is loaded on first use.
 */

/** Σ coefficients · values, kept between `min` and `max`; a missing bound is no bound. */
export interface Limit {
  readonly coefficients: readonly (readonly [variable: number, coefficient: number])[];
  readonly min?: number;
  readonly max?: number;
}

/** Variables are numbered from 0 and never negative. */
export interface Program {
  readonly direction: 'maximize' | 'minimize';
  /** Coefficient of each variable in what is to be made large or small; their number is that of the variables. */
  readonly objective: readonly number[];
  readonly limits: readonly Limit[];
  /** Whether every variable must be whole. */
  readonly whole: boolean;
}

/** `best` is proved; `found` satisfies the limits, but the time ran out; `none` found nothing. */
export type Answer =
  | { readonly status: 'best' | 'found'; readonly values: readonly number[] }
  | { readonly status: 'none' };

export interface Solver {
  /** Stops after about `milliseconds`; it counts for programs in whole numbers, others are quick. */
  solve(program: Program, milliseconds: number): Answer;
}

const OBJECTIVE = -1;
/**
 * A hard program then mostly stops here rather than by the clock, so that its answer does not hang on the
 * machine's speed. Of 1,800 gardens of up to sixty crops, two were not proved within it.
 */
const MOST_BRANCHES = 10_000;

async function load(): Promise<Solver> {
  const { solve } = await import('yalps');
  return {
    solve(program, milliseconds) {
      const columns = program.objective.map((each): [number, number][] => [[OBJECTIVE, each]]);
      program.limits.forEach(({ coefficients }, row) => {
        for (const [variable, coefficient] of coefficients) columns[variable]?.push([row, coefficient]);
      });
      const answer = solve<number, number>(
        {
          direction: program.direction,
          objective: OBJECTIVE,
          constraints: program.limits.map(({ min, max }, row) => [
            row,
            { ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }) },
          ]),
          variables: columns.map((column, variable) => [variable, column]),
          integers: program.whole,
        },
        { timeout: milliseconds, maxIterations: MOST_BRANCHES },
      );
      const done = answer.status === 'optimal';
      if (!done && !(answer.status === 'timedout' && Number.isFinite(answer.result)))
        return { status: 'none' };
      const values = new Array<number>(columns.length).fill(0);
      for (const [variable, value] of answer.variables) values[variable] = value;
      return { status: done ? 'best' : 'found', values };
    },
  };
}

let loading: Promise<Solver> | null = null;

/** The solver, loaded once. Rejects where its file cannot be fetched; the next call then tries again. */
export function loadSolver(): Promise<Solver> {
  loading ??= load().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}
