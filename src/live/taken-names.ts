import { nearestNames, wordsOf } from '../facts/names.js';
import { MAX_NAME, type Problem } from '../problem.js';
import { quoted, say, spoken } from '../words/index.js';
import { foodKey } from './food-key.js';

/** One row as it can be called. */
export interface NamedRow {
  readonly row: string;
  /** Where it stands among the others: of two called the same the first may be the one that counts. */
  readonly order: string;
  /** Forms in which it is called, the fullest first; compared only. */
  readonly keys: readonly string[];
  /** Its usual name as shown, and the fullest, for where others share the usual one. */
  readonly short: string;
  readonly full: string;
  /** The way kept, where the fullest name is the usual one and that. */
  readonly way?: string;
}

export type Found =
  | { readonly is: 'row'; readonly row: string }
  | { readonly is: 'several'; readonly rows: readonly NamedRow[] }
  | { readonly is: 'none' };

/** The fullest name of a row as it is suggested and kept: its way in the language spoken, understood in each. */
export const fullName = ({ short, full, way }: Pick<NamedRow, 'short' | 'full' | 'way'>): string =>
  way === undefined ? full : `${short}, ${spoken(way)}`;

/** The names of one kind's rows, and which row a text names. */
export class KindNames {
  readonly #byKey = new Map<string, NamedRow[]>();
  readonly #found = new Map<string, Found>();

  /** `asked` gives the forms in which a text may call a row, the one that counts first at the head. */
  constructor(
    readonly title: string,
    readonly rows: readonly NamedRow[],
    readonly asked: (text: string) => readonly string[],
  ) {
    for (const named of rows) {
      for (const key of new Set(named.keys)) {
        if (key === '') continue;
        const those = this.#byKey.get(key);
        if (those) those.push(named);
        else this.#byKey.set(key, [named]);
      }
    }
  }

  find(text: string): Found {
    let found = this.#found.get(text);
    if (!found) {
      found = this.#look(text);
      this.#found.set(text, found);
    }
    return found;
  }

  /** Names for a list to choose from: the usual one, or the fullest where several share that. */
  all(): string[] {
    const seen = new Map<string, number>();
    for (const { short } of this.rows) seen.set(foodKey(short), (seen.get(foodKey(short)) ?? 0) + 1);
    const names = this.rows.map((row) => (seen.get(foodKey(row.short)) === 1 ? row.short : fullName(row)));
    return [...new Set(names)].filter((name) => name !== '');
  }

  /** Why a text names no one row, and what to write. */
  problem(text: string): Problem | undefined {
    const found = this.find(text);
    const said = text.trim().slice(0, 60);
    if (found.is === 'row') return undefined;
    if (found.is === 'none') {
      const near = text.length > MAX_NAME ? [] : nearestNames(text, this.#known());
      return {
        code: 'names-no-row',
        message:
          near.length > 0
            ? `${say`“${said}” is not in ${this.title}`}${say`: did you mean `}${near.join(say` or `)}?`
            : say`“${said}” is not in ${this.title}.`,
        mend: say`Write it as ${this.title} has it, or add a row there.`,
      };
    }
    const full = [...new Set(found.rows.map(fullName))];
    return {
      code: 'names-several-rows',
      message:
        found.rows.length === 2
          ? say`“${said}” is in ${this.title} twice.`
          : say`“${said}” is in ${this.title} ${found.rows.length} times.`,
      mend:
        full.length > 1
          ? `${say`Write `}${full.slice(0, 4).map(asNamed).join(say` or `)}.`
          : say`Those rows are called the same: tell them apart in ${this.title}.`,
    };
  }

  #known(): [string, string][] {
    return this.rows.map(({ short }) => [wordsOf(short), short] as [string, string]);
  }

  #look(text: string): Found {
    for (const key of this.asked(text)) {
      const those = key === '' ? undefined : this.#byKey.get(key);
      if (those?.length === 1) return { is: 'row', row: those[0]!.row };
      if (those) return { is: 'several', rows: those };
    }
    return { is: 'none' };
  }
}

const asNamed = (name: string): string => quoted(name.slice(0, 80));
