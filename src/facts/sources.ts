import { localNumber, phrase, say, spoken } from '../words/index.js';
import raw from './data/sources.json';
import type { Figure, SourceId } from './figure-types.js';

const SOURCES: Readonly<Record<string, string>> = raw;

/** Every source the facts name, by id, with its citation: publisher and title. */
export const sources = (): Readonly<Record<string, string>> => SOURCES;

/**
 * Sources that have no title of their own, or whose title has a remark of ours beside it: they are told in the
 * language spoken. The others keep the titles under which they are published.
 */
export const DESCRIBED: readonly SourceId[] = [
  'aib539-msu',
  'aib539-msu-1994',
  'aib539-uf',
  'aib539-umn',
  'nchfp',
  'nchfp-freeze',
  'freezer-tables',
  'mo-1961',
  'mo-canning',
  'hgb10-copy',
  'msu-weights',
  'isu',
  'pa',
  'bhg',
  'cap',
  'azmg',
  'minifarm',
  'web',
  'az-tn',
  'pork-brochure',
  'uf-hens',
  'usda-dairy',
  'livestock-column',
  'us-measures',
  'ks-wheat',
  'arithmetic',
  'usu',
  'wartime',
  'emergency',
  'cold-other',
  'farm-freezer',
];

const cited = (id: string): string => spoken(SOURCES[id] ?? id);

/** The citation of a source. Several ids joined by '+' give all of them: the figure is in one or more. */
export function sourceText(id: SourceId): string {
  const parts = id.split('+').map(cited);
  return parts.length === 1 ? (parts[0] ?? '') : say`one or more of: ${parts.join('; ')}`;
}

const number = (n: number): string => localNumber(String(Math.round(n * 1000) / 1000));
const span = (low: number, high: number): string =>
  low === high ? number(low) : say`${number(low)} to ${number(high)}`;

/** With these words a source says of itself that its figure is not the one printed. */
const LEADS: Readonly<Record<string, string>> = {
  derived: phrase('derived'),
  'from memory': phrase('from memory'),
};

/** A source in words, without what it says of itself. */
export function withoutLead(source: string): string {
  const lead = Object.values(LEADS).find((each) => source.startsWith(`${spoken(each)}: `));
  return lead === undefined ? source : source.slice(spoken(lead).length + 2);
}

/**
 * Where a figure comes from, in words: its source, and where others differ, what each of them says.
 * A recalled figure starts with 'from memory'.
 */
export function figureSource(figure: Figure): string {
  const lead = figure.certainty === 'published' ? '' : `${spoken(figure.certainty)}: `;
  const [first, ...others] = figure.readings;
  const own = `${lead}${sourceText(figure.source)}`;
  if (!first || others.length === 0) return own;
  const rest = others.map((one) => {
    const memory = one.certainty === 'published' ? '' : `, ${spoken(one.certainty)}`;
    const aside = one.aside ? say`, kept out of the range` : '';
    return say`${span(one.low, one.high)} by ${sourceText(one.source)}${memory}${aside}`;
  });
  return `${own}: ${span(first.low, first.high)}; ${rest.join('; ')}`;
}
