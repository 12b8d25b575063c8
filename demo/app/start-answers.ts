import { type OwnBookAnswers, readPeople, readStanding } from '../../components/book/own-book.js';

/** The answers of the start form, as `startOwnBook` takes them. */
export function answersOf(form: FormData): OwnBookAnswers {
  const text = (name: string): string => String(form.get(name) ?? '');
  return {
    title: text('title'),
    people: readPeople(text('people')),
    lastFrost: text('lastFrost'),
    firstFrost: text('firstFrost'),
    altitudeFt: text('altitudeFt'),
    standing: readStanding(text('standing')),
  };
}
