import {
  type FunctionReference,
  functions,
  GROUPS,
  problemText,
  referenceOf,
  standardFunctions,
} from '../../../src/formulas/index.js';
import { contents } from './frame.js';
import { html, type Markup, slug, table } from './markup.js';
import { example } from './snippet.js';

const sentence = (text: string): string => stopped(text.slice(0, 1).toUpperCase() + text.slice(1));
const stopped = (text: string): string => (/[.?!]$/.test(text) ? text : `${text}.`);

function reference(of: FunctionReference): Markup {
  const { name, signature, summary, arguments: args, gives, details, source, caution, errors } = of;
  return html`<section aria-labelledby="${name}" class="function">
<h3 id="${name}"><code>${signature}</code></h3>
<p>${summary} Gives ${stopped(gives)}</p>
${caution && html`<p class="caution">${caution}</p>`}
${table(
  `Arguments of ${name}`,
  ['Argument', 'Takes', 'Unit', 'Meaning', 'Left out'],
  args.map((arg) => [
    html`<code>${arg.name}</code>`,
    arg.takes,
    arg.unit,
    sentence(arg.help),
    arg.optional ? sentence(arg.otherwise) : 'Must be given.',
  ]),
)}
<p><code>${of.example.formula}</code> gives <strong>${of.example.gives}</strong>.
<a href="#try" data-function="${name}">Change its numbers</a></p>
<ol class="steps">${of.steps.map((step) => html`<li>${step}</li>`)}</ol>
${details.length > 0 && html`<ul>${details.map((each) => html`<li>${each}</li>`)}</ul>`}
<details><summary>What can go wrong</summary>
<ul>${errors.map((each) => html`<li>${problemText(each)} <a href="./problems.html"><code>${each.code}</code></a></li>`)}</ul>
</details>
<p class="quiet">Source: ${stopped(source)}</p>
</section>
`;
}

export const functionsPage = (): Markup => html`<h2 id="try">Try them</h2>
<p>Choose a function, and write other numbers into its example. In an app of your own this is one element:</p>
${example('<croft-functions bare></croft-functions>', { what: 'the reference of functions' })}
${contents('Groups', [...GROUPS.map((group): [string, string] => [slug(group), group]), ['standard', 'Of the standard']])}
<p>Examples are worked out for 1 February 2026, counting on the usual end of what is published. In a book the day and the
season basis are the book’s. Formulas are written as the OpenFormula standard has them; a column is called by its title,
with <code>_</code> for spaces.</p>
${GROUPS.map(
  (group) => html`<h2 id="${slug(group)}">${group}</h2>
${functions.filter((each) => each.group === group).map((each) => reference(referenceOf(each)))}`,
)}
<h2 id="standard">Of the standard</h2>
<p>These are offered while typing; the formula engine has more of the OpenFormula standard.</p>
${table(
  'Functions of the standard',
  ['Function', 'Gives'],
  standardFunctions.map(({ signature, summary }) => [html`<code>${signature}</code>`, summary]),
)}`;
