import { BASE_UNITS, CONTAINERS, type Dimension, UNITS } from '../../../src/units/index.js';
import { contents } from './frame.js';
import { html, type Markup, slug, table } from './markup.js';

const DIMENSIONS = Object.keys(BASE_UNITS) as Dimension[];

const size = (factor: number): string => factor.toLocaleString('en-US', { maximumSignificantDigits: 9 });

const titled = (text: string): string => text[0]!.toUpperCase() + text.slice(1);

export const unitsPage =
  (): Markup => html`<p>Write any of the names, in the singular or the plural, in small letters or
capitals. Units of the United States unless it is said otherwise. Volume and weight are turned into one another only for
foods whose density is known; dry measure is never turned into liquid measure, since fresh produce in a bushel says
nothing of jars.</p>
${contents('Kinds', [...DIMENSIONS.map((each): [string, string] => [slug(each), titled(each)]), ['containers', 'Containers']])}
${DIMENSIONS.map(
  (dimension) => html`<h2 id="${slug(dimension)}">${titled(dimension)}</h2>
${table(
  `Units of ${dimension}`,
  ['Unit', 'Many', 'Also called', `In ${BASE_UNITS[dimension]}`, 'How it is defined'],
  UNITS.filter((unit) => unit.dimension === dimension).map(({ id, plural, names, factor, source }) => [
    id,
    plural,
    names.join(', '),
    size(factor),
    source,
  ]),
)}`,
)}
<h2 id="containers">Containers</h2>
<p>What lots are counted in. A plain size (<code>quart</code>) said of a lot is the jar.</p>
${table(
  'Containers',
  ['Container', 'Many', 'Holds', 'Also called', 'Where the size comes from'],
  CONTAINERS.map(({ id, plural, holds, names, source }) => [
    id,
    plural,
    holds ? `${holds.amount} ${holds.unit}` : 'as the household says',
    names.join(', '),
    source,
  ]),
)}`;
