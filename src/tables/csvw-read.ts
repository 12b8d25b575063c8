import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { z } from '../zod.js';
import type { Encoding } from './encoding.js';
import { asMeant } from './harmless.js';
import { SEPARATORS, type Separator } from './separator.js';
import type { Reading } from './types.js';

const texts = z.union([
  z.string(),
  z.array(z.string()),
  z.record(z.string(), z.union([z.string(), z.array(z.string())])),
]);
const datatype = z.union([
  z.string(),
  z.looseObject({
    base: z.string().optional(),
    format: z.union([z.string(), z.looseObject({ decimalChar: z.string().optional() })]).optional(),
  }),
]);
const column = z.looseObject({
  name: z.string().optional(),
  titles: texts.optional(),
  datatype: datatype.optional(),
  virtual: z.boolean().optional(),
});
const dialect = z.looseObject({
  delimiter: z.string().optional(),
  header: z.boolean().optional(),
  encoding: z.string().optional(),
});
const table = z.looseObject({
  url: z.string().optional(),
  dialect: dialect.optional(),
  tableSchema: z.looseObject({ columns: z.array(column).max(5_000).optional() }).optional(),
});
const group = table.extend({ tables: z.array(table).max(1_000).optional() });

export interface MetadataColumn {
  readonly title: string | undefined;
  readonly reading: Partial<Reading>;
}

/** What a metadata file says of a table, as far as it bears on bringing the table in. */
export interface Metadata {
  readonly columns: readonly MetadataColumn[];
  readonly separator?: Separator;
  readonly header?: boolean;
  readonly encoding?: Encoding;
}

/** Reads metadata as the W3C recommendation has it. Of several tables, the one that names the file. */
export function readMetadata(text: string, file: string): Result<Metadata> {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refuse(
      'bad-metadata',
      say`The metadata file is no JSON that can be read.`,
      say`Leave it out: what the columns hold is then guessed, and you can change it.`,
    );
  }
  // Without code made at run time, which a strict content policy forbids.
  const read = group.safeParse(json, { jitless: true });
  if (!read.success) {
    const path = read.error.issues[0]?.path.join('.') ?? '';
    return refuse(
      'bad-metadata',
      path
        ? say`The metadata file says something that cannot be understood at ${path.slice(0, 80)}.`
        : say`The metadata file says something that cannot be understood.`,
      say`Leave it out: what the columns hold is then guessed, and you can change it.`,
    );
  }
  const { tables } = read.data;
  const chosen =
    tables?.find(({ url }) => url !== undefined && sameFile(url, file)) ?? tables?.[0] ?? read.data;
  const said = chosen.dialect ?? read.data.dialect;
  const separator = SEPARATORS.find(({ id }) => id === said?.delimiter)?.id;
  const encoding = /^utf-?8$/i.test(said?.encoding ?? '') ? 'utf-8' : undefined;
  return ok({
    columns: (chosen.tableSchema?.columns ?? []).filter((each) => each.virtual !== true).map(columnOf),
    ...(separator !== undefined && { separator }),
    ...(said?.header !== undefined && { header: said.header }),
    ...(encoding !== undefined && { encoding }),
  });
}

function sameFile(url: string, file: string): boolean {
  try {
    return decodeURIComponent(url.replace(/^.*\//, '')) === file;
  } catch {
    return false;
  }
}

function columnOf({ name, titles, datatype: said }: z.infer<typeof column>): MetadataColumn {
  const title = firstText(titles) ?? name;
  return { title: title === undefined ? undefined : asMeant(title).slice(0, 190), reading: readingOf(said) };
}

function firstText(titles: z.infer<typeof texts> | undefined): string | undefined {
  if (titles === undefined || typeof titles === 'string') return titles;
  const [first] = Array.isArray(titles) ? titles : Object.values(titles);
  return typeof first === 'string' ? first : first?.[0];
}

const NUMBERS =
  /^(?:number|decimal|double|float|any?integer|integer|long|int|short|byte|nonNegativeInteger|positiveInteger|nonPositiveInteger|negativeInteger|unsigned(?:Long|Int|Short|Byte))$/;

function readingOf(said: z.infer<typeof datatype> | undefined): Partial<Reading> {
  if (said === undefined) return {};
  const base = typeof said === 'string' ? said : (said.base ?? 'string');
  const format = typeof said === 'string' ? undefined : said.format;
  if (NUMBERS.test(base)) {
    const decimal = typeof format === 'object' ? format.decimalChar : undefined;
    return { type: 'number', decimalComma: decimal === ',' };
  }
  if (base === 'boolean') return { type: 'tick' };
  if (base === 'date') {
    const pattern = typeof format === 'string' ? format : '';
    if (/^d/.test(pattern)) return { type: 'date', dateOrder: 'day first' };
    return /^M/.test(pattern) ? { type: 'date', dateOrder: 'month first' } : { type: 'date' };
  }
  return base === 'string' ? { type: 'text' } : {};
}
