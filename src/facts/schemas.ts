/**
 * What the data files must look like. Checked by the tests, so that a wrong row never ships; not loaded at
 * run time. To add a figure: add its source to `sources.json`, then the row, then run `npm test`.
 */
import { z } from '../zod.js';
import { FOOD_GROUPS } from './groups.js';
import { WAYS } from './ways.js';

const mark = z.strictObject({
  m: z.literal(1).optional(),
  d: z.literal(1).optional(),
  x: z.literal(1).optional(),
  n: z.string().min(1).optional(),
});
const n = z.number();

/** A source, then one figure, or low and high, or low, usual and high, in that order; then what is particular. */
const reading = z
  .union([
    z.tuple([z.string(), n]),
    z.tuple([z.string(), n, mark]),
    z.tuple([z.string(), n, n]),
    z.tuple([z.string(), n, n, mark]),
    z.tuple([z.string(), n, n, n]),
    z.tuple([z.string(), n, n, n, mark]),
  ])
  .refine((parts) => {
    const numbers = parts.filter((part): part is number => typeof part === 'number');
    return numbers.every((value, i) => i === 0 || value >= (numbers[i - 1] ?? value));
  }, 'low, usual and high are in order');
const figure = z.array(reading).min(1);
const amount = z.strictObject({ of: z.string(), is: figure });
const name = z.string().min(1);
/** By what they name; each entry a singular, and after a comma its plural where that is another word. */
const names = z.record(name, z.array(z.string().regex(/^[^,;]+(?:, [^,;]+)?$/)).min(1));
const acid = z.enum(['acid', 'acidify', 'low-acid']);

const crops = z.array(
  z.strictObject({
    name,
    plural: name.optional(),
    also: z.array(name),
    family: name.nullable(),
    group: z.enum(FOOD_GROUPS),
    acid: acid.nullable(),
    like: name.optional(),
    kind: z.literal('food').optional(),
  }),
);

const growing = z.array(
  z.strictObject({
    crop: name,
    latin: name,
    yields: z
      .array(
        z.strictObject({
          per: z.enum(['row', 'plant']),
          of: z.enum(['pound', 'ear', 'stalk', 'head', 'fruit', 'bunch', 'spear']),
          is: figure,
        }),
      )
      .optional(),
    spacing: figure.optional(),
    rows: figure.optional(),
    intensive: figure.optional(),
    planting: z.array(amount).optional(),
    perOunce: figure.optional(),
    sow: z.array(z.enum(['direct', 'indoors', 'winter-sown', 'set', 'crown'])).min(1),
    winterSown: name.optional(),
    indoors: figure.optional(),
    out: figure.optional(),
    days: figure.optional(),
    from: z.enum(['seed', 'transplant', 'set', 'slip', 'crown', 'clove', 'plant']),
    frost: z
      .union([
        z.tuple([z.enum(['hardy', 'half-hardy', 'tender', 'very tender']), name]),
        z.tuple([name, name, z.literal('m')]),
      ])
      .optional(),
    germination: figure.optional(),
    seedLife: figure.optional(),
    fresh: z.array(amount).optional(),
    preserved: z.array(amount).optional(),
    note: name.optional(),
  }),
);

const canning = z.array(
  z.strictObject({
    crop: name,
    pack: name,
    also: z.array(name).optional(),
    acid,
    headspace: z.enum(['1 inch', '1/2 inch', '1/4 inch']).nullable(),
    quart: figure.optional(),
    pint: figure.optional(),
    load7: figure.optional(),
    load9: figure.optional(),
    per: z
      .array(
        z.strictObject({
          of: name,
          lb: z.union([z.number().positive(), z.array(z.number().positive()).length(2)]),
          quarts: figure.optional(),
          pints: figure.optional(),
        }),
      )
      .optional(),
    recipe: z.record(z.string(), figure).optional(),
    only: z.array(z.enum(['pint', 'half-pint'])).optional(),
    superseded: z.literal(true).optional(),
    /** Source that says no figure is published. */
    nothing: name.optional(),
    note: name.optional(),
  }),
);

const trees = z.array(
  z.union([
    z.strictObject({ crop: name, measure: z.literal('quart weight'), quart: figure }),
    z.strictObject({
      crop: name,
      kind: name,
      source: name,
      of: z.enum(['bushel', 'quart', 'pound']).optional(),
      yield: figure.optional(),
      bears: figure.optional(),
      full: figure.optional(),
      lives: figure.optional(),
      spacing: figure.optional(),
      bushel: figure.optional(),
      note: name.optional(),
    }),
  ]),
);

const bands = z.array(z.tuple([z.number().positive(), z.number().positive()])).min(2);
const gauges = z.strictObject({ dial: bands, weighted: bands });

/** A schema for each file of `data/`, by name. */
export const DATA_SCHEMAS = {
  sources: z.record(z.string().regex(/^[a-z0-9-]+$/), z.string().min(10)),
  crops,
  'names-de': z.strictObject({
    crops: names,
    groups: names,
    rules: names,
    animals: names,
    ways: names,
    words: names,
  }),
  growing,
  trees,
  canning,
  freezing: z.array(
    z.strictObject({
      crop: name,
      note: name.optional(),
      pack: name.optional(),
      of: name,
      lb: z.array(z.number().positive()).min(1).max(2).optional(),
      pints: figure.optional(),
      perPint: figure.optional(),
    }),
  ),
  drying: z.strictObject({
    yields: z.array(
      z.strictObject({
        crop: name,
        fresh: z.number().positive(),
        dried: figure,
        pints: figure.optional(),
        note: name.optional(),
      }),
    ),
    finished: z.array(amount),
  }),
  water: z.array(
    z.strictObject({
      crop: name,
      form: name.optional(),
      state: z.enum(['dried', 'freeze-dried']).optional(),
      water: figure,
      refuse: figure,
    }),
  ),
  bushels: z.array(z.strictObject({ crop: name, of: name, is: figure })),
  quality: z.array(
    z.strictObject({
      way: z.enum(WAYS),
      of: z.union([z.enum(FOOD_GROUPS), z.literal('all')]),
      months: figure.optional(),
      weeks: figure.optional(),
      note: name.optional(),
    }),
  ),
  cold: z.array(
    z.strictObject({ crop: name, f: figure, rh: figure, months: figure.optional(), note: name.optional() }),
  ),
  pressure: z.strictObject({
    source: name,
    above: z.number(),
    fruits: z.array(name),
    groups: z.strictObject({ 'low-acid': gauges, fruit: gauges }),
    boilingBands: z.strictObject({ source: name, feet: z.array(z.number()) }),
    loads: z.strictObject({ source: name, quarts: z.number(), pints: z.number() }),
    headspace: z.array(
      z.strictObject({
        class: z.enum(['low-acid', 'fruit', 'jam']),
        inches: z.number().positive(),
        also: z.array(name),
        note: name,
      }),
    ),
  }),
  livestock: z.array(
    z.strictObject({
      animal: name,
      measure: name,
      source: name,
      live: z.number().positive().optional(),
      carcass: z.number().positive().optional(),
      dressing: figure.optional(),
      takeHomePct: figure.optional(),
      takeHome: figure.optional(),
      basis: name.optional(),
      value: figure.optional(),
      unit: name.optional(),
      note: name.optional(),
    }),
  ),
  staples: z.array(
    z.strictObject({
      group: name,
      item: name,
      from: z.tuple([z.number().positive(), name]),
      unit: name,
      is: figure,
    }),
  ),
  perPerson: z.strictObject({
    amounts: z.array(
      z.strictObject({
        food: name,
        form: name,
        basis: name,
        persons: z.number().int().positive().optional(),
        unit: name,
        is: figure,
        when: name.optional(),
        servings: z.tuple([n, n, n]).optional(),
        note: name.optional(),
      }),
    ),
    childShares: z.array(z.strictObject({ from: n, to: n.nullable(), is: figure })),
  }),
  densities: z.array(z.strictObject({ food: name, is: figure })),
  rules: z.array(
    z.strictObject({
      id: name,
      foods: z.array(name),
      words: z.array(name),
      groups: z.array(z.enum(FOOD_GROUPS)).optional(),
      verdict: z.enum(['no process', 'not recommended', 'one form', 'pints only', 'leave out', 'add acid']),
      text: name,
      is: z.tuple([name, z.enum(['published', 'derived', 'from memory'])]),
    }),
  ),
  cautions: z.array(z.strictObject({ id: name, for: z.array(name).min(1), text: name })),
  groups: z.array(z.strictObject({ group: z.enum(FOOD_GROUPS), words: z.array(name).min(1) })),
} as const;
