import { phrase } from '../words/index.js';

/** What can stand between the fields of a file of text. */
export const SEPARATORS = [
  { id: ',', label: phrase('Comma') },
  { id: ';', label: phrase('Semicolon') },
  { id: '\t', label: phrase('Tab') },
  { id: '|', label: phrase('Upright bar') },
] as const;
export type Separator = (typeof SEPARATORS)[number]['id'];

const LINES = 40;

/** Fields of each of the first lines, separators inside quotes not counted. */
function fieldCounts(text: string, separator: string): number[] {
  const counts: number[] = [];
  let fields = 1;
  let quoted = false;
  let isBlankLine = true;
  for (let i = 0; i < text.length && counts.length < LINES; i++) {
    const sign = text[i]!;
    if (sign === '"') quoted = !quoted;
    if (!quoted && (sign === '\n' || sign === '\r')) {
      if (!isBlankLine) counts.push(fields);
      fields = 1;
      isBlankLine = true;
      continue;
    }
    isBlankLine = false;
    if (!quoted && sign === separator) fields++;
  }
  if (!isBlankLine && counts.length < LINES) counts.push(fields);
  return counts;
}

/**
 * The separator that divides the first lines most evenly. A comma also stands in numbers and sentences, so the
 * others go before it where they divide just as evenly.
 */
export function detectSeparator(text: string): Separator {
  const sample = text.slice(0, 200_000);
  let best: { id: Separator; score: number } = { id: ',', score: 0 };
  for (const id of ['\t', ';', '|', ','] as const) {
    const counts = fieldCounts(sample, id);
    const usual = mostCommon(counts);
    if (usual < 2) continue;
    const score = counts.filter((count) => count === usual).length / counts.length;
    if (score > best.score + 1e-9) best = { id, score };
  }
  return best.id;
}

function mostCommon(counts: readonly number[]): number {
  const times = new Map<number, number>();
  for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1);
  let best = 0;
  for (const [count, n] of times) {
    const current = times.get(best) ?? 0;
    if (n > current || (n === current && count > best)) best = count;
  }
  return best;
}
