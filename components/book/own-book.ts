import { type BookDoc, blankBook, readNumber, type Typed } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { listInFoods, unlistedLines } from '../sheet/list-in-foods.js';
import { readAltitude } from '../sheet/read-altitude.js';
import type { Standing } from './standing.js';

/** Answers to the few questions that start a household's book; whatever is left out stays blank. */
export interface OwnBookAnswers {
  readonly title?: string;
  readonly people?: readonly Person[];
  /** Month and day, as typed: 05-24. */
  readonly lastFrost?: string;
  readonly firstFrost?: string;
  /** Feet, as typed: 1200, 1,200 ft, or 370 m. */
  readonly altitudeFt?: string;
  readonly standing?: readonly Standing[];
}

export interface Person {
  readonly name: string;
  /** Appetite; 1 = a grown one. */
  readonly share?: number;
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

/** A new household's book from its answers: what stands where, a row of Foods for each food of it, no more. */
export function ownBook(answers: OwnBookAnswers): BookDoc {
  const live = openBook(blankBook(answers.title?.trim() || say`Our book`));
  const set = (setting: string, typed: Typed | undefined): void => {
    if (typed !== undefined && typed !== null && typed !== '')
      live.apply({ do: 'set setting', setting, typed });
  };
  set('last_frost', answers.lastFrost?.trim());
  set('first_frost', answers.firstFrost?.trim());
  set('altitude_ft', readAltitude(answers.altitudeFt ?? ''));
  const people = (answers.people ?? []).map(({ name, share }) => ({ name, share: share ?? 1 }));
  if (people.length > 0) live.insertRows('household', people);
  const lots = (answers.standing ?? []).flatMap((standing) =>
    standing.lots.length > 0
      ? standing.lots.map((lot) => lotCells(standing, lot))
      : [{ place: standing.place }],
  );
  if (lots.length > 0) live.insertRows('shelf', lots);
  const unlisted = unlistedLines(live);
  if (unlisted.length > 0) listInFoods(live, unlisted);
  const book = live.toJSON();
  live.close();
  return book;
}

function lotCells({ place, way, container }: Standing, lot: Standing['lots'][number]) {
  return {
    food: lot.food,
    way: lot.way ?? way ?? null,
    container: lot.container ?? container ?? null,
    count: lot.count,
    place,
  };
}
