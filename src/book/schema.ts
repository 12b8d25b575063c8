import { phrase, say } from '../words/index.js';
import { z } from '../zod.js';
import { isUsableId } from './ids.js';
import { isOrderKey } from './order.js';
import { BOOK_FORMAT, SHEET_KINDS } from './types.js';

/** More than can be typed: a range's new end may have a longer id than the one that went. */
const MAX_TEXT = 40_000;

const id = z
  .string()
  .refine(isUsableId, { error: phrase('an id is letters, digits, - and _, a letter first, at most 64') });
const order = z.string().refine(isOrderKey, { error: phrase('not an order key, as in "a0"') });
const text = z.string().max(MAX_TEXT, { error: () => say`at most ${MAX_TEXT} characters` });
const raw = z.union([text, z.number(), z.boolean()], {
  error: phrase('a cell holds text, a number or true/false'),
});

/** A record whose keys are ids, refused where a key is none. */
const byId = <V extends z.ZodType>(value: V) => z.record(id, value);

const column = z.looseObject({
  order: order.optional(),
  title: z.string().max(200).optional(),
  own: z.boolean().optional(),
  formula: text.optional(),
  hidden: z.boolean().optional(),
  pinned: z.boolean().optional(),
  width: z.number().min(1).max(5000).optional(),
});

const row = z.looseObject({
  order,
  cells: byId(raw),
  allotted: byId(z.number()).optional(),
});

const sheet = z.looseObject({
  kind: z.enum(SHEET_KINDS),
  title: z.string().min(1).max(200),
  order,
  columns: byId(column),
  rows: byId(row),
});

export const rawSchema = raw;
export const orderSchema = order;
export const columnSchema = column;
export const rowSchema = row;
/** Fields of a row by themselves. */
export const fieldOfRowSchema = row.partial();
export const sheetSchema = sheet;
/** Fields of a sheet by themselves. */
export const fieldOfSheetSchema = sheet.partial();

/** A book of the current version, as it stands in a file. Fields that it does not name survive. */
export const bookSchema = z.looseObject({
  format: z.literal(BOOK_FORMAT),
  version: z.number().int(),
  id,
  title: z.string().min(1).max(200),
  references: z.literal('by id').optional(),
  settings: byId(raw),
  sheets: byId(sheet),
});
