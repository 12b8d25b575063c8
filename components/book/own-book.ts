import { type BookDoc, blankBook, readNumber, type Typed } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { readLotLine } from '../sheet/lot-line.js';

/** Answers to the few questions that start a household's book; whatever is left out stays blank. */
export interface OwnBookAnswers {
  readonly title?: string;
  readonly people?: readonly Person[];
  /** Month and day, as typed: 05-24. */
  readonly lastFrost?: string;
  readonly firstFrost?: string;
  /** Feet, as typed. */
  readonly altitudeFt?: string;
  readonly standing?: readonly Standing[];
}

export interface Person {
  readonly name: string;
  /** Appetite; 1 = a grown one. */
  readonly share?: number;
}

/** A place and what stands there. */
export interface Standing {
  readonly place: string;
  readonly lots: readonly { readonly food: string; readonly count: number | null }[];
}

/** `Ada, Tom, little Jo 0.5`: names, each with a share where one is written. */
export function readPeople(text: string): Person[] {
  return text
    .split(/[,;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      const match = /^(.*\S)\s+(\d*\.?\d+|\d+\/\d+)$/.exec(part);
      const share = match ? readNumber(match[2]!) : undefined;
      return match && share !== undefined ? { name: match[1]!, share } : { name: part };
    });
}

/** One place a line, with foods after a colon: `Cellar, top shelf: tomatoes 24, beans 18`. */
export function readStanding(text: string): Standing[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => {
      const [place = '', ...rest] = line.split(':');
      const lots = rest
        .join(':')
        .split(/[,;]/)
        .map(readLotLine)
        .flatMap((read) => (read.ok ? [read.value] : []));
      return { place: place.trim(), lots };
    });
}

/** A new household's book from its answers: its sheets, with no more in them than was answered. */
export function ownBook(answers: OwnBookAnswers): BookDoc {
  const live = openBook(blankBook(answers.title?.trim() || 'Our book'));
  const set = (setting: string, typed: Typed | undefined): void => {
    if (typed !== undefined && typed !== null && typed !== '')
      live.apply({ do: 'set setting', setting, typed });
  };
  set('last_frost', answers.lastFrost?.trim());
  set('first_frost', answers.firstFrost?.trim());
  set('altitude_ft', answers.altitudeFt?.trim());
  const people = (answers.people ?? []).map(({ name, share }) => ({ name, share: share ?? 1 }));
  if (people.length > 0) live.insertRows('household', people);
  const lots = (answers.standing ?? []).flatMap(({ place, lots: here }) =>
    here.length > 0 ? here.map(({ food, count }) => ({ food, count, place })) : [{ place }],
  );
  if (lots.length > 0) live.insertRows('shelf', lots);
  const book = live.toJSON();
  live.close();
  return book;
}
