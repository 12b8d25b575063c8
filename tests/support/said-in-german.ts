/** What is looked at where everything is to be said in German. */
import { sources } from '../../src/facts/index.js';
import { DESCRIBED } from '../../src/facts/sources.js';
import type { Working } from '../../src/planning/types.js';

/** Everything that a working says. */
export const textsOfWorking = (working: Working | undefined | null): readonly string[] =>
  working
    ? [
        working.title,
        working.rule,
        working.missing ?? '',
        ...working.steps.map(({ text }) => text),
        ...working.inputs.flatMap(({ name, unit, source = '' }) => [name, unit, source]),
      ]
    : [];

/** Titles of sources, and names within those that are told in German beside a remark: 'University of Missouri Extension'. */
function titles(): readonly string[] {
  const described: ReadonlySet<string> = new Set(DESCRIBED);
  return Object.entries(sources()).flatMap(([id, title]) =>
    described.has(id) ? title.split(/, | \(after |[()]/).filter((part) => /^[A-Z].* /.test(part)) : [title],
  );
}

/** Takes what others wrote out of a text, the longest first: titles of sources, and `theirs`. */
export function withoutTheirs(theirs: readonly string[] = []): (text: string) => string {
  const longestFirst = [...new Set([...theirs, ...titles()])].sort((a, b) => b.length - a.length);
  return (text) => longestFirst.reduce((rest, each) => rest.replaceAll(each, ''), text);
}
