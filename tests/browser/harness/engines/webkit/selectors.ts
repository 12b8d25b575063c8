import type { Locator, Page } from 'playwright-core';

type Text = string | RegExp;
type RoleOptions = Parameters<Page['getByRole']>[1];
type FilterOptions = Parameters<Locator['filter']>[0];

/** What a locator of ours has of one of playwright's. */
export interface HasSelector {
  readonly selector: string;
}

const regex = (text: RegExp): string => String(text);

/** A text as selectors write it: anywhere and in either case, or as it stands. */
const textOf = (text: Text, exact = false): string =>
  typeof text === 'string' ? `${JSON.stringify(text)}${exact ? 's' : 'i'}` : regex(text);

const attributeOf = (text: Text, exact = false): string =>
  typeof text === 'string' ? `"${text.replace(/["\\]/g, '\\$&')}"${exact ? 's' : 'i'}` : regex(text);

export function byRole(role: string, options: RoleOptions = {}): string {
  const { name, exact, ...states } = options;
  const said = Object.entries(states)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => [key === 'includeHidden' ? 'include-hidden' : key, value] as const);
  const parts = said.map(([key, value]) => `[${key}=${value}]`);
  if (name !== undefined) parts.push(`[name=${attributeOf(name, exact)}]`);
  return `internal:role=${role}${parts.join('')}`;
}

export const byText = (text: Text, exact?: boolean): string => `internal:text=${textOf(text, exact)}`;
export const byLabel = (text: Text, exact?: boolean): string => `internal:label=${textOf(text, exact)}`;
export const byAttribute = (name: string, text: Text, exact?: boolean): string =>
  `internal:attr=[${name}=${attributeOf(text, exact)}]`;

export const within = (selector: string, inner: string): string => `${selector} >> ${inner}`;

/** What narrows a locator, appended to its selector. */
export function filtered(selector: string, options: FilterOptions = {}): string {
  const { hasText, hasNotText, has, hasNot, visible } = options;
  const inner = (locator: unknown): string => JSON.stringify((locator as HasSelector).selector);
  let all = selector;
  if (hasText !== undefined) all += ` >> internal:has-text=${textOf(hasText)}`;
  if (hasNotText !== undefined) all += ` >> internal:has-not-text=${textOf(hasNotText)}`;
  if (has) all += ` >> internal:has=${inner(has)}`;
  if (hasNot) all += ` >> internal:has-not=${inner(hasNot)}`;
  if (visible !== undefined) all += ` >> visible=${visible}`;
  return all;
}
