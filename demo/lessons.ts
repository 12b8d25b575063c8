import '../components/book/croft-book.js';
import '../components/lesson/croft-lesson.js';
import './app/looks.js';
import { html, nothing, render } from 'lit';
import { LEVELS, type Lesson, parseLesson, standardShown, TOPICS } from '../src/lessons/index.js';
import rates from './data/lessons/a-pound-a-plant.json?raw';
import charts from './data/lessons/bars-of-the-harvest.json?raw';
import area from './data/lessons/bed-and-row.json?raw';
import bushel from './data/lessons/bushels-and-baskets.json?raw';
import dates from './data/lessons/days-in-the-pit.json?raw';
import chance from './data/lessons/frost-and-chance.json?raw';
import jars from './data/lessons/jars-and-lids.json?raw';
import units from './data/lessons/quarts-pints-cups.json?raw';
import ratio from './data/lessons/soup-for-more.json?raw';
import percent from './data/lessons/sprouted-seeds.json?raw';
import averages from './data/lessons/the-usual-amount.json?raw';
import linear from './data/lessons/until-the-potatoes-are-gone.json?raw';

/** Easier ones first. */
const FILES = [units, dates, charts, area, bushel, rates, ratio, percent, jars, averages, chance, linear];

interface Listed {
  readonly json: string;
  readonly lesson: Lesson;
}

const LESSONS: readonly Listed[] = FILES.flatMap((json) => {
  const read = parseLesson(json);
  return read.ok ? [{ json, lesson: read.lesson }] : [];
});

const place = (id: string): HTMLElement => document.getElementById(id)!;
const topicsOf = ({ topics }: Lesson): string =>
  topics.map((id) => TOPICS.find((topic) => topic.id === id)?.title ?? id).join(', ') ||
  'Percent and whole numbers';

/** What the address asks for: a lesson, or a sheet on a topic. */
function show(): void {
  const asked = decodeURIComponent(location.hash.slice(1));
  const topic = TOPICS.find(({ id }) => `topic-${id}` === asked);
  const listed = LESSONS.find(({ lesson }) => lesson.id === asked) ?? (topic ? undefined : LESSONS[0]);
  const current = topic ? `topic-${topic.id}` : listed?.lesson.id;
  const link = (id: string, title: string, about: string) => html`<li>
    <a href="#${id}" aria-current=${id === current ? 'page' : nothing}>${title}<small>${about}</small></a>
  </li>`;
  render(
    LESSONS.map(({ lesson }) => link(lesson.id, lesson.title, `${topicsOf(lesson)} · level ${lesson.level}`)),
    place('lessons'),
  );
  render(
    TOPICS.map(({ id, title, standards }) =>
      link(`topic-${id}`, title, standards.map(standardShown).join(', ')),
    ),
    place('topics'),
  );
  // Each one anew: what was written into another sheet is not carried over.
  const home = place('lesson');
  const element = document.createElement('croft-lesson');
  if (topic) {
    element.topics = topic.id;
    element.count = 8;
    element.keepAs = `topic-${topic.id}`;
  } else if (listed) element.lesson = listed.json;
  home.replaceChildren(element);
}

render(
  html`<table>
    <caption class="unseen">
      Topics
    </caption>
    <thead>
      <tr>
        <th scope="col">Topic</th>
        <th scope="col">Level 1</th>
        <th scope="col">Level 2</th>
        <th scope="col">Level 3</th>
      </tr>
    </thead>
    <tbody>
      ${TOPICS.map(
        ({ id, levels }) => html`<tr>
          <th scope="row"><code>${id}</code></th>
          ${LEVELS.map((level) => html`<td>${levels[level]}</td>`)}
        </tr>`,
      )}
    </tbody>
  </table>`,
  place('topic-table'),
);

window.addEventListener('hashchange', () => {
  show();
  place('lesson').focus({ preventScroll: matchMedia('(min-width: 48rem)').matches });
});
show();
