/** What the README says already is taken from there. */
import readme from '../../../README.md?raw';
import { type Markup, table, words } from './markup.js';

const cellsOf = (line: string): string[] =>
  line
    .replace(/^\|\s?|\s?\|$/g, '')
    .split(/\s*\|\s*/)
    .map((cell) => cell.trim());

/** The table whose first heading begins so, without what its dividing line says. */
export function readmeTable(caption: string, firstHeading: string): Markup {
  const lines = readme.split('\n');
  const at = lines.findIndex((line) => line.startsWith(`| ${firstHeading}`));
  if (at < 0) throw new Error(`The README has no table that begins with “${firstHeading}”.`);
  const rest = lines.slice(at);
  const end = rest.findIndex((line) => !line.startsWith('|'));
  const [heads = '', , ...rows] = rest.slice(0, end < 0 ? undefined : end);
  return table(
    caption,
    cellsOf(heads).map((head) => head.replaceAll('`', '')),
    rows.map((row) => cellsOf(row).map(words)),
  );
}

/** The paragraph that begins with these words. */
export function readmeParagraph(start: string): Markup {
  const found = readme.split('\n').find((line) => line.startsWith(start));
  if (!found) throw new Error(`The README has no paragraph that begins with “${start}”.`);
  return words(found.replace(/\[([^\]]+)\]\([^)]*\)/g, '$1'));
}
