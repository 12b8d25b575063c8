import type { Problem } from '../problem.js';
import { asWritten, inEnglish, messages, say, spoken } from '../words/index.js';
import type { BookNumbers } from './book-numbers.js';
import { type Random, seeded } from './random.js';
import { sumOf } from './same-sum.js';
import { topicWithId } from './topics/index.js';
import type { Form, LessonProblem, Level, Topic } from './types.js';

/** Most problems of a sheet. */
export const MOST_PROBLEMS = 40;
/** Draws of numbers tried for a problem before its form counts as having none for this book. */
const TRIES = 24;

export interface SheetAsked {
  readonly topics: readonly string[];
  readonly level: Level;
  /** Any word or number: the same one gives the same sheet from the same book. */
  readonly seed: string;
  readonly count: number;
  /** Only these forms of problem; all of the topics unless given. */
  readonly forms?: readonly string[];
}

export interface LessonSheet {
  readonly problems: readonly LessonProblem[];
  /** What stood in the way of more: a topic that is none, or rows that the book lacks. */
  readonly notes: readonly Problem[];
}

/** Forms of a level; where the topic has none of it, those of the nearest level. */
function formsAt({ forms }: Topic, level: Level, only: readonly string[] | undefined): readonly Form[] {
  const wanted = only ? forms.filter(({ id }) => only.includes(id)) : forms;
  const fit = wanted.filter(({ levels }) => levels.includes(level));
  return fit.length > 0 ? fit : only ? wanted : fit;
}

/** What is on a sheet so far, in English. */
interface OnSheet {
  readonly texts: Set<string>;
  readonly sums: Set<string>;
  readonly charts: Set<string>;
}

/**
 * A problem of one form that asks what the sheet does not ask yet, with a chart that is not there yet, where it can
 * be; with `again` a sum may come again in other words. It is drawn and chosen in English whatever is spoken, and
 * then said: so a seed gives the same numbers in every language.
 */
function fresh(
  topic: Topic,
  form: Form,
  { level }: SheetAsked,
  numbers: BookNumbers,
  random: Random,
  { texts, sums, charts }: OnSheet,
  again: boolean,
): Drawn | null {
  const at = form.levels.includes(level) ? level : form.levels[0]!;
  const kind = `${topic.id}/${form.id}`;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const before = random.copy();
    const made = inEnglish(() => form.problem(numbers, at, random));
    const isSeen = made?.chart !== undefined && charts.has(made.chart.title) && attempt < TRIES / 2;
    if (!made || isSeen || texts.has(made.text)) continue;
    const sum = inEnglish(() => sumOf(kind, made));
    if (again || !sums.has(sum)) {
      const said = messages() === null ? made : form.problem(numbers, at, before);
      return {
        problem: {
          ...(said ?? made),
          canning: made.canning === true || /\bjars?\b/.test(made.text),
          kind,
          id: made.text,
        },
        sum,
        chart: made.chart?.title,
      };
    }
  }
  return null;
}

interface Drawn {
  readonly problem: LessonProblem;
  /** What it asks, whatever its words. */
  readonly sum: string;
  /** Title of its chart, in English. */
  readonly chart: string | undefined;
}

/** Goes round the forms of a topic, so that a sheet shows each of them before one comes again. */
function* rounds(forms: readonly Form[], random: Random): Generator<Form, never> {
  for (;;) yield* random.shuffled(forms);
}

/**
 * A sheet of problems from a book's numbers. Topics take turns. Fewer than asked for where the book has too
 * few numbers; `notes` says which rows would give more.
 */
export const makeSheet = (numbers: BookNumbers, asked: SheetAsked): LessonSheet =>
  // Questions are asked in customary measures, whichever the household measures in.
  asWritten(() => drawSheet(numbers, asked));

function drawSheet(numbers: BookNumbers, asked: SheetAsked): LessonSheet {
  const random = seeded(`${asked.seed}|${asked.topics.join()}|${asked.level}`);
  const notes: Problem[] = [];
  const turns = asked.topics.flatMap((id) => {
    const topic = topicWithId(id);
    if (!topic) {
      notes.push({
        code: 'no-such-topic',
        message: say`There is no topic “${id.slice(0, 40)}”.`,
        mend: say`Choose one that the list of topics names.`,
      });
      return [];
    }
    const forms = formsAt(topic, asked.level, asked.forms);
    return forms.length > 0
      ? [{ topic, next: rounds(forms, random), size: forms.length, isSpent: false }]
      : [];
  });

  const problems: LessonProblem[] = [];
  const there: OnSheet = { texts: new Set(), sums: new Set(), charts: new Set() };
  const count = Math.max(0, Math.min(MOST_PROBLEMS, Math.floor(asked.count)));
  for (let turn = 0; problems.length < count && turns.some(({ isSpent }) => !isSpent); turn++) {
    const at = turns[turn % turns.length]!;
    if (at.isSpent) continue;
    let drawn: Drawn | null = null;
    // A sum comes again only where no form has another.
    for (const again of [false, true]) {
      for (let tried = 0; !drawn && tried < at.size * 2; tried++)
        drawn = fresh(at.topic, at.next.next().value, asked, numbers, random, there, again);
    }
    if (drawn) {
      there.texts.add(drawn.problem.id);
      there.sums.add(drawn.sum);
      if (drawn.chart !== undefined) there.charts.add(drawn.chart);
      problems.push(drawn.problem);
    } else {
      at.isSpent = true;
      const some = problems.some(({ kind }) => kind.startsWith(`${at.topic.id}/`));
      notes.push({
        code: some ? 'few-numbers' : 'no-numbers',
        message: some
          ? say`The book has no more numbers for “${spoken(at.topic.title)}” at this level.`
          : say`The book has no numbers for “${spoken(at.topic.title)}” at this level.`,
        mend: spoken(at.topic.needs),
      });
    }
  }
  return { problems, notes };
}

/** One problem of a topic, for a seed. */
export const problemOf = (
  topic: Topic,
  numbers: BookNumbers,
  level: Level,
  seed: string,
): LessonProblem | null =>
  makeSheet(numbers, { topics: [topic.id], level, seed, count: 1 }).problems[0] ?? null;
