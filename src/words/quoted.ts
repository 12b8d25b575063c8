import { spokenTag } from './language.js';

/** Signs around what somebody wrote, by language; English ones where none stand here. */
const SIGNS: Readonly<Record<string, readonly [before: string, after: string]>> = { de: ['„', '“'] };

/** What somebody wrote, in the quotation marks of the language spoken now. */
export function quoted(text: string): string {
  const [before, after] = SIGNS[spokenTag().split('-')[0] ?? ''] ?? ['“', '”'];
  return `${before}${text}${after}`;
}
