import { type OwnBookAnswers, readPeople } from '../../components/book/own-book.js';
import { readPlace, type Standing } from '../../components/book/standing.js';
import { ok, type Result } from '../../src/problem.js';

/** The answers of the start form, as `startOwnBook` takes them; refused where what stands somewhere cannot be read. */
export function answersOf(form: FormData): Result<OwnBookAnswers> {
  const text = (name: string): string => String(form.get(name) ?? '');
  const each = (name: string): string[] => form.getAll(name).map(String);
  const [places, ways, containers, foods] = ['place', 'way', 'container', 'foods'].map(each);
  const standing: Standing[] = [];
  for (const [i, place] of (places ?? []).entries()) {
    const asked = {
      place,
      way: ways?.[i] ?? '',
      container: containers?.[i] ?? '',
      foods: foods?.[i] ?? '',
    };
    if (`${asked.place}${asked.foods}`.trim() === '') continue;
    const read = readPlace(asked);
    if (!read.ok) return read;
    standing.push(read.value);
  }
  return ok({
    title: text('title'),
    people: readPeople(text('people')),
    lastFrost: text('lastFrost'),
    firstFrost: text('firstFrost'),
    altitudeFt: text('altitudeFt'),
    standing,
  });
}
