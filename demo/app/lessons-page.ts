/** What the page of lessons says around them. */
import { html, nothing, type TemplateResult } from 'lit';
import {
  LEVELS,
  type Lesson,
  lessonInWords,
  parseLesson,
  standardShown,
  TOPICS,
} from '../../src/lessons/index.js';
import rates from '../data/lessons/a-pound-a-plant.json?raw';
import charts from '../data/lessons/bars-of-the-harvest.json?raw';
import area from '../data/lessons/bed-and-row.json?raw';
import bushel from '../data/lessons/bushels-and-baskets.json?raw';
import dates from '../data/lessons/days-in-the-pit.json?raw';
import chance from '../data/lessons/frost-and-chance.json?raw';
import jars from '../data/lessons/jars-and-lids.json?raw';
import units from '../data/lessons/quarts-pints-cups.json?raw';
import ratio from '../data/lessons/soup-for-more.json?raw';
import percent from '../data/lessons/sprouted-seeds.json?raw';
import averages from '../data/lessons/the-usual-amount.json?raw';
import linear from '../data/lessons/until-the-potatoes-are-gone.json?raw';
import { say, spoken } from './said.js';

/** Easier ones first. */
const FILES = [units, dates, charts, area, bushel, rates, ratio, percent, jars, averages, chance, linear];

export interface Listed {
  readonly json: string;
  readonly lesson: Lesson;
}

export const LESSONS: readonly Listed[] = FILES.flatMap((json) => {
  const read = parseLesson(json);
  return read.ok ? [{ json, lesson: read.lesson }] : [];
});

export const pageLinks = (): TemplateResult =>
  html`<a href="./index.html">${say`A household’s book`}</a> · <a href="./guide/index.html" hreflang="en">${say`Guide`}</a>`;

export const pageTitle = (): string => say`Food math from a school garden`;

export const pageHead = (): TemplateResult => html`<h1>${pageTitle()}</h1>
  <p class="about">
    ${say`Willow Street School writes its garden into a book: what was sown, what came in, what is in the freezer. These lessons are made from those numbers. Another sheet gives other questions; the answer key is printed on a page of its own.`}
  </p>`;

export const pageFoot = (): string =>
  say`Willow Street School, its garden and all of its figures are invented.`;

const topicsOf = ({ topics }: Lesson): string =>
  topics.map((id) => spoken(TOPICS.find((topic) => topic.id === id)?.title ?? id)).join(', ') ||
  say`Percent and whole numbers`;

/** Lessons and topics to choose from; `current` is the id of the one that is shown. */
export function lessonsList(current: string | undefined): TemplateResult {
  const link = (id: string, title: string, about: string) => html`<li>
    <a href="#${id}" aria-current=${id === current ? 'page' : nothing}>${title}<small>${about}</small></a>
  </li>`;
  return html`<h2 id="lessons-title">${say`Twelve lessons`}</h2>
    <ol>
      ${LESSONS.map(({ lesson }) =>
        link(lesson.id, lessonInWords(lesson).title, `${topicsOf(lesson)} · ${say`level ${lesson.level}`}`),
      )}
    </ol>
    <h2>${say`Sheets on one topic`}</h2>
    <ul>
      ${TOPICS.map(({ id, title, standards }) =>
        link(`topic-${id}`, spoken(title), standards.map(standardShown).join(', ')),
      )}
    </ul>`;
}

/** What each topic asks at each level, for who writes lessons; in English, as all that is said to them. */
export const topicTable = (): TemplateResult => html`<table>
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
</table>`;
