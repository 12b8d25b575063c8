import { html, nothing, type TemplateResult } from 'lit';
import { answerText, type Lesson, type LessonProblem, unitText } from '../../src/lessons/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { PAPER_FONTS } from '../look/print-frame.js';
import { chartPicture } from './chart-view.js';
import { standardsOnPaper } from './standards-view.js';
import { paperTaskKeys, paperTasks } from './task-paper.js';

/** What is printed: the sheet, and the key on a page of its own. */
export interface PaperAsked {
  readonly title: string;
  readonly problems: readonly LessonProblem[];
  readonly lesson: Lesson | null;
  /** For the rows of formulas to be written. */
  readonly live: LiveBook | null;
  readonly topics: readonly string[];
  /** 'Willow Street School garden · level 2 · sheet 41' */
  readonly foot: string;
  readonly cautions: readonly string[];
  readonly writeUnits: boolean;
}

/** Rules for paper, on the page and in the frame that is printed alone. */
export const PAPER_RULES = `
  .paper { font-size: 11pt; line-height: 1.4; color: #000; }
  .paper h1 { font-size: 16pt; line-height: 1.2; margin: 0 0 6pt; }
  .paper h2 { font-size: 12pt; margin: 10pt 0 3pt; }
  .paper p { margin: 0 0 4pt; }
  .paper ul { margin: 0 0 4pt; padding-left: 14pt; list-style: disc; }
  .paper .name-line { display: flex; gap: 24pt; margin-bottom: 8pt; }
  .paper .name-line span { flex: 1; border-bottom: 0.75pt solid #000; padding-bottom: 2pt; }
  .paper .name-line span:last-child { flex: 0 0 130pt; }
  .paper ol.problems { margin: 0; padding: 0 0 0 20pt; list-style: decimal; }
  .paper ol.problems > li { padding: 6pt 0 7pt 4pt; border-bottom: 0.5pt solid #bbb; break-inside: avoid; overflow-wrap: anywhere; }
  .paper .work { height: 34pt; }
  .paper .picture ~ .work { height: 10pt; }
  .paper .blank-line { display: flex; align-items: end; gap: 5pt; }
  .paper .blank-line i { display: inline-block; width: 110pt; border-bottom: 0.75pt solid #000; height: 14pt; }
  .paper .choices { display: flex; flex-wrap: wrap; gap: 3pt 16pt; }
  .paper .choices span::before { content: '○ '; }
  .paper .key { break-before: page; }
  .paper .key ol.problems > li { padding: 3pt 0 4pt 4pt; }
  .paper .key .working { font-size: 9pt; color: #333; }
  .paper .small { font-size: 9pt; color: #333; }
  .paper .box { border: 0.75pt solid #000; padding: 4pt 6pt; font-size: 9.5pt; break-inside: avoid; }
  .paper table { border-collapse: collapse; width: 100%; margin: 4pt 0; font-size: 10pt; }
  .paper th, .paper td { border: 0.5pt solid #888; padding: 3pt 5pt; text-align: start; font-weight: 400; }
  .paper thead th { font-weight: 600; }
  .paper .task { break-inside: avoid; margin-bottom: 8pt; }
  .paper svg { display: block; width: 230pt; max-width: 100%; height: auto; margin: 4pt 0; }
  .paper svg text { font-size: 11px; fill: #000; }
  .paper svg .line { stroke: #bbb; }
  .paper svg .foot { stroke: #000; }
  .paper svg .bar { fill: #888; stroke: #000; }
`;

/** The same in the frame that is printed alone. */
export const FRAME_RULES = `
  @page { margin: 14mm; }
  * { box-sizing: border-box; }
  body { font: 11pt/1.4 ${PAPER_FONTS}; color: #000; margin: 0; }
  .unseen { display: none; }
  ${PAPER_RULES}
`;

const list = (title: string, items: readonly string[]): TemplateResult | typeof nothing =>
  items.length === 0
    ? nothing
    : html`<h2>${title}</h2>
        <ul>
          ${items.map((item) => html`<li>${item}</li>`)}
        </ul>`;

function answerLine({ key }: LessonProblem, writeUnits: boolean): TemplateResult {
  if (key.kind === 'choice' || key.kind === 'yes-no') {
    const choices = key.kind === 'choice' ? key.choices : [say`yes`, say`no`];
    return html`<p class="choices">${choices.map((choice) => html`<span>${choice}</span>`)}</p>`;
  }
  return html`<div class="work"></div>
    <p class="blank-line">${say`Answer:`} <i></i> ${writeUnits ? '' : unitText(key)}</p>`;
}

/** The sheet as it goes on paper. */
export function paper(asked: PaperAsked): TemplateResult {
  const { title, problems, lesson, live, topics, foot, cautions, writeUnits } = asked;
  return html`<section class="sheet">
      <h1>${title}</h1>
      <p class="name-line"><span>${say`Name:`}</span><span>${say`Date:`}</span></p>
      ${lesson?.introduction.map((words) => html`<p>${words}</p>`)}
      ${cautions.map((words) => html`<p class="box"><strong>${say`With care:`}</strong> ${words}</p>`)}
      ${list(say`With your hands`, lesson?.hands ?? [])}
      ${lesson ? html`<h2>${say`Questions`}</h2>` : nothing}
      <ol class="problems">
        ${problems.map(
          (problem) => html`<li>
            ${problem.text}
            ${problem.chart ? html`<div class="picture"><p class="small">${problem.chart.title}</p>${chartPicture(problem.chart)}</div>` : nothing}
            ${answerLine(problem, writeUnits)}
          </li>`,
        )}
      </ol>
      ${live && lesson ? paperTasks(live, lesson.tasks) : nothing}
      ${list(say`To talk over`, lesson?.discuss ?? [])}
      ${foot === '' ? nothing : html`<p class="small">${foot}</p>`}
    </section>
    <section class="key">
      <h1>${say`Answer key: ${title}`}</h1>
      <ol class="problems">
        ${problems.map(
          ({ key, steps }) => html`<li>
            <strong>${answerText(key)}</strong>
            <div class="working">${steps.join(' ')}</div>
          </li>`,
        )}
      </ol>
      ${live && lesson ? paperTaskKeys(live, lesson.tasks) : nothing}
      ${standardsOnPaper(topics)}
      ${foot === '' ? nothing : html`<p class="small">${foot}</p>`}
    </section>`;
}
