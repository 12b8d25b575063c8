import { spokenTag } from './language.js';

interface Signs {
  readonly tag: string;
  readonly decimal: string;
  readonly group: string;
}

let signs: Signs = { tag: 'en-US', decimal: '.', group: ',' };

function signsNow(): Signs {
  const tag = spokenTag();
  if (signs.tag !== tag) {
    const parts = new Intl.NumberFormat(tag).formatToParts(1234567.8);
    const sign = (type: string, usual: string) => parts.find((part) => part.type === type)?.value ?? usual;
    signs = { tag, decimal: sign('decimal', '.'), group: sign('group', '') };
  }
  return signs;
}

/** The sign between whole and part in the language spoken now: `.` or `,`. */
export const decimalSign = (): string => signsNow().decimal;

/** The sign between thousands in the language spoken now. */
export const groupSign = (): string => signsNow().group;

/** A number written in English (`1,234.5`, `−17⅔`) as the language spoken now writes it. */
export function localNumber(text: string): string {
  const { decimal, group } = signsNow();
  return decimal === '.' && group === ','
    ? text
    : text.replace(/[.,]/g, (sign) => (sign === '.' ? decimal : group));
}

/** The number that a short text is, as we write numbers in the language spoken now; undefined where it is none. */
export function numberWritten(text: string): number | undefined {
  if (!/^[−-]?\d/.test(text)) return undefined;
  const { decimal, group } = signsNow();
  const plain = text.replace('−', '-').replaceAll(group, '').replace(decimal, '.');
  const n = Number(plain);
  return Number.isNaN(n) ? undefined : n;
}

const formats = new Map<string, Intl.NumberFormat>();

/** How `Intl` writes numbers in the language spoken now. */
export function numberFormat(options: Intl.NumberFormatOptions = {}): Intl.NumberFormat {
  const key = `${spokenTag()} ${JSON.stringify(options)}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(spokenTag(), options);
    formats.set(key, format);
  }
  return format;
}

const dates = new Map<string, Intl.DateTimeFormat>();

/** How `Intl` writes days in the language spoken now. Days are civil, so the time zone is always UTC. */
export function dateFormat(options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${spokenTag()} ${JSON.stringify(options)}`;
  let format = dates.get(key);
  if (!format) {
    format = new Intl.DateTimeFormat(spokenTag(), { ...options, timeZone: 'UTC' });
    dates.set(key, format);
  }
  return format;
}

let order = { tag: 'en-US', dayFirst: false };

/** Whether the language spoken now writes the day before the month where both are numbers: `4.5.2026`. */
export function dayComesFirst(): boolean {
  const tag = spokenTag();
  if (order.tag !== tag) {
    const parts = dateFormat({ dateStyle: 'short' }).formatToParts(0);
    order = { tag, dayFirst: parts.find(({ type }) => type === 'day' || type === 'month')?.type === 'day' };
  }
  return order.dayFirst;
}
