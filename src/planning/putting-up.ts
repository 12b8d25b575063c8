import {
  bushelPounds,
  type Canning,
  canning,
  drying,
  type Figure,
  freezing,
  noteInWords,
  sourceText,
  usualLoad,
} from '../facts/index.js';
import { ok, type Result, refuse } from '../problem.js';
import { ceilSafe, containerWithId, inMeasure, orList } from '../units/index.js';
import { phrase, say, spoken } from '../words/index.js';
import { measureName, shortNumber } from './measure.js';
import { measured } from './measured.js';
import { changed, combine, exactly, type Ranged, ranged, reachingTo } from './ranged.js';

/** Jars that a pack may go in, by id; null where any will do. */
const onlyJarIds = (of: Canning): readonly string[] | null =>
  of.onlyJars.length > 0 ? of.onlyJars.map((size) => `${size} jar`) : null;

const plainJar = (of: Canning): string => onlyJarIds(of)?.[0] ?? 'quart jar';

/** The jar asked for, or the plain one of the pack; refused where there is no tested process for it. */
function jarFor(of: Canning, jar: string | undefined): Result<string> {
  const id = jar ?? plainJar(of);
  if (containerWithId(id)?.family !== 'jar') {
    return refuse(
      'not-a-jar',
      say`A ${id} is not a canning jar.`,
      say`Write a jar, such as "quart" or "pint".`,
    );
  }
  const only = onlyJarIds(of);
  if (only && !only.includes(id)) {
    return refuse(
      'no-process-in-jar',
      say`There is no tested process for ${of.crop}, ${of.pack}, in ${measureName(id)}.`,
      say`Use ${orList(only.map((each) => measureName(each)))}.`,
    );
  }
  const juice = of.pack === 'juice' && (of.crop === 'apple' || of.crop === 'grape');
  if (id === 'half-gallon jar' && !juice) {
    return refuse(
      'no-process-in-jar',
      say`Half-gallon jars have a tested process for apple and grape juice only.`,
      say`Use quart or pint jars.`,
    );
  }
  return ok(id);
}

/** A remark that is printed with a figure, in the language spoken. */
const noteOf = (note: string | null): readonly string[] => (note === null ? [] : [noteInWords(note)]);

const marks = (of: Canning): readonly string[] => [
  ...(of.printedFor === of.crop ? [] : [say`figures of ${of.printedFor}`]),
  ...noteOf(of.note),
];

const PER: Readonly<Record<'quart' | 'pint', string>> = {
  quart: phrase('pounds a quart jar'),
  pint: phrase('pounds a pint jar'),
};

/** Pounds per jar by a container's printed jars: the more jars, the fewer pounds in each. */
function byContainer(of: Canning, size: 'quart' | 'pint'): Ranged | null {
  const printed = of.containers.find((one) => (size === 'quart' ? one.quarts : one.pints) !== null);
  const jars = size === 'quart' ? printed?.quarts : printed?.pints;
  if (!printed || !jars) return null;
  const pounds = printed.pounds.usual;
  const note = say`worked out: ${shortNumber(pounds)} pounds to the ${printed.of} ÷ ${shortNumber(jars.low)} to ${shortNumber(jars.high)} ${size}s`;
  return changed(ranged(jars, 'low'), PER[size], note, (n) => pounds / n);
}

/** Pounds per jar by a recipe that prints pounds in and jars out. */
function byRecipe(of: Canning, size: 'quart' | 'pint'): Ranged | null {
  const pounds = of.recipe.find((one) => one.unit === 'pounds');
  const jars = of.recipe.find((one) => one.unit === `${size}s`);
  if (!pounds || !jars) return null;
  const note = say`worked out: a recipe of ${shortNumber(pounds.usual)} pounds`;
  return changed(ranged(jars, 'low'), PER[size], note, (n) => pounds.usual / n);
}

function perQuart(of: Canning): Ranged | null {
  const containers = byContainer(of, 'quart');
  if (!of.poundsPerQuart) return containers ?? byRecipe(of, 'quart');
  return reachingTo(
    ranged(of.poundsPerQuart, 'high', PER.quart),
    containers,
    'high',
    say`by the jars printed for a container`,
  );
}

/** By the printed pint load, else the printed pounds per pint, else half of the quart's. */
function perPint(of: Canning, quart: Ranged | null): Ranged | null {
  const { loadOf9Pints: load, poundsPerPint } = of;
  const average = poundsPerPint ? ranged(poundsPerPint, 'high', PER.pint) : null;
  const half = quart
    ? changed(quart, PER.pint, say`worked out: half of the figure for quarts`, (n) => n / 2)
    : null;
  if (!load) return average ?? half ?? byContainer(of, 'pint') ?? byRecipe(of, 'pint');
  const by = changed(
    ranged(load, 'high'),
    PER.pint,
    say`the printed load of ${measured(load.usual, 'pounds')} ÷ 9 pints`,
    (n) => n / 9,
  );
  const wider = reachingTo(by, average, 'high', say`by the printed pounds a pint`);
  if (average)
    return reachingTo(wider, byContainer(of, 'pint'), 'high', say`by the pints printed for a container`);
  // The ends in proportion to the quart's: a pint of the same crop varies as much.
  const share = quart && quart.usual > 0 ? by.usual / quart.usual : null;
  return quart && share !== null
    ? reachingTo(
        wider,
        changed(quart, PER.pint, '', (n) => n * share),
        'high',
        say`ends as for quarts`,
      )
    : wider;
}

function perJar(of: Canning, jar: string): Result<Ranged> {
  const quart = perQuart(of);
  const pint = perPint(of, quart);
  const pints = inMeasure(1, jar, 'pint');
  if (!pints.ok) return pints;
  const printed = jar === 'quart jar' ? quart : jar === 'pint jar' ? pint : null;
  if (printed) return ok({ ...printed, notes: [...printed.notes, ...marks(of)] });
  const [from, name, share] =
    pints.value > 1 && quart ? [quart, 'quart', pints.value / 2] : [pint, 'pint', pints.value];
  if (!from) {
    return refuse(
      'nothing-published',
      say`No pounds per jar are published here for ${of.crop}, ${of.pack}.`,
      noteOf(of.note)[0] ??
        say`Give your own figure, or another pack: ${orList(of.packs.filter((one) => one !== of.pack).map(spoken))}.`,
    );
  }
  const note = say`worked out: ${shortNumber(share)} of the figure for a ${name}`;
  const figure = changed(from, `pounds a ${jar}`, note, (n) => n * share);
  return ok({ ...figure, notes: [...figure.notes, ...marks(of)] });
}

/**
 * Pounds of a crop, as bought, in one jar (id; quart unless left out, or pint where only pints have a process).
 * Lean is more pounds a jar. Refused: unknown names, `no-process-in-jar`, `not-a-jar`, `nothing-published`.
 */
export function poundsPerJar(crop: string, jar?: string, pack?: string): Result<Ranged> {
  const of = canning(crop, pack);
  if (!of.ok) return of;
  const id = jarFor(of.value, jar);
  return id.ok ? perJar(of.value, id.value) : id;
}

/**
 * Jars from a bushel: the range printed per bushel with usual = bushel pounds ÷ pounds per jar; for a crop
 * printed only by the lug or crate, and for other jars, worked out from pounds per jar and marked so.
 */
export function jarsPerBushel(crop: string, jar?: string, pack?: string): Result<Ranged> {
  const of = canning(crop, pack);
  if (!of.ok) return of;
  const id = jarFor(of.value, jar);
  if (!id.ok) return id;
  const unit = `${measureName(id.value)} a bushel`;
  const printed = id.value === 'quart jar' ? of.value.quartsPerBushel : null;
  if (printed) {
    const figure = ranged(printed, 'low', unit);
    return ok({ ...figure, notes: [...figure.notes, ...marks(of.value)] });
  }
  const per = perJar(of.value, id.value);
  if (!per.ok) return per;
  const own = of.value.containers.find((one) => one.of === 'bushel')?.pounds ?? null;
  const bushel: Result<Figure> = own ? ok(own) : bushelPounds(of.value.crop);
  if (!bushel.ok) return bushel;
  const note = say`worked out: ${shortNumber(bushel.value.usual)} pounds a bushel ÷ ${shortNumber(per.value.usual)} pounds a jar`;
  return ok(combine(ranged(bushel.value, 'low'), per.value, unit, note, (pounds, each) => pounds / each));
}

/** Bushels for so many jars; not rounded, since part of a bushel can be bought. Lean wants more. */
export function bushelsFor(crop: string, jars: number, jar?: string, pack?: string): Result<Ranged> {
  const per = jarsPerBushel(crop, jar, pack);
  return per.ok
    ? ok(
        changed(
          per.value,
          'bushels',
          say`at ${shortNumber(per.value.usual)} ${per.value.unit}`,
          (n) => jars / n,
        ),
      )
    : per;
}

/** Whole canner loads, rounded up: of 7 quarts, of 9 pints, or of `loadsOf` jars. */
export function cannerLoads(jars: number, jar: string, loadsOf?: number): Result<Ranged> {
  const load = usualLoad();
  const usual = jar === 'quart jar' ? load.quarts : jar === 'pint jar' ? load.pints : null;
  const of = loadsOf ?? usual;
  if (of === null) {
    return refuse(
      'load-unknown',
      say`How many ${measureName(jar)} make a load depends on the canner.`,
      say`Say how many yours holds, as the third argument.`,
    );
  }
  if (!(of >= 1))
    return refuse('bad-amount', say`A load holds at least one jar.`, say`Give the jars in a load, as in 7.`);
  const source = loadsOf === undefined ? sourceText(load.source) : 'arithmetic';
  return ok({ ...exactly(ceilSafe(jars / of), 'loads', source), notes: [say`loads of ${shortNumber(of)}`] });
}

/** Pints frozen from pounds as bought. Lean gives fewer. */
export function pintsFrozen(crop: string, pounds: number): Result<Ranged> {
  const of = freezing(crop);
  if (!of.ok) return of;
  const per = of.value.poundsPerPint;
  if (!per) {
    return refuse(
      'nothing-published',
      say`No pounds to a frozen pint are published here for ${of.value.crop}.`,
      say`Give your own.`,
    );
  }
  const low =
    per.low === per.high ? shortNumber(per.low) : say`${shortNumber(per.low)} to ${shortNumber(per.high)}`;
  return ok(changed(ranged(per, 'high'), 'pints', say`at ${low} pounds a pint`, (n) => pounds / n));
}

/** Pounds dried from pounds as bought. Lean gives fewer. The figures are recalled, and marked `from memory`. */
export function driedFrom(crop: string, pounds: number): Result<Ranged> {
  const of = drying(crop);
  if (!of.ok) return of;
  const figure = changed(ranged(of.value.driedPerFresh, 'low'), 'pounds', '', (n) => n * pounds);
  return ok({ ...figure, notes: [...figure.notes, ...noteOf(of.value.note)] });
}

/** Pounds as bought for pounds dried. Lean wants more. The figures are recalled, and marked `from memory`. */
export function freshFrom(crop: string, driedPounds: number): Result<Ranged> {
  const of = drying(crop);
  if (!of.ok) return of;
  const figure = changed(ranged(of.value.freshPerDried, 'high'), 'pounds', '', (n) => n * driedPounds);
  return ok({ ...figure, notes: [...figure.notes, ...noteOf(of.value.note)] });
}
