import { html, nothing, type TemplateResult } from 'lit';
import type { Lesson, Level } from '../../src/lessons/index.js';
import { say, spoken } from '../../src/words/index.js';
import { beforeQuestions, cautionsOf, controls, words } from './lesson-view.js';
import type { LessonWork } from './lesson-work.js';
import { type QuestionEvents, questionView } from './question-view.js';
import { standardsView } from './standards-view.js';
import { tasksView } from './tasks-view.js';

/** A sheet on the screen: what stands on it, and what can be done. */
export interface ScreenAsked {
  readonly title: string;
  /** Level, seed and book, under the title. */
  readonly foot: string;
  readonly lesson: Lesson | null;
  readonly topics: readonly string[];
  readonly level: Level;
  readonly seed: string;
  readonly work: LessonWork;
  readonly right: number;
  readonly count: number;
  /** For the live region. */
  readonly said: string;
  /** The book has changed since the sheet was made. */
  readonly isBehind: boolean;
  readonly writeUnits: boolean;
  readonly on: QuestionEvents & {
    readonly level: (level: number) => void;
    readonly another: (seed?: string) => void;
    readonly print: () => void;
    readonly clear: () => void;
    readonly anew: () => void;
    readonly task: (event: CustomEvent<{ readonly task: string; readonly kind: string }>) => void;
  };
}

export function screenView(asked: ScreenAsked): TemplateResult {
  const { lesson, topics, level, work, right, count, on } = asked;
  const { kept } = work;
  return html`<header class="head">
      <div>
        <h2>${asked.title}</h2>
        <p class="quiet small">${asked.foot}</p>
      </div>
      ${controls({
        topics,
        level,
        seed: asked.seed,
        onLevel: on.level,
        onAnother: on.another,
        onPrint: on.print,
      })}
    </header>
    ${lesson ? beforeQuestions(lesson) : nothing}
    ${cautionsOf(lesson, work.asked).map((words) => html`<p class="caution small"><strong>${say`With care:`}</strong> ${words}</p>`)}
    ${work.notes.map(({ message, mend }) => html`<p class="note"><strong>${spoken(message)}</strong> ${spoken(mend)}</p>`)}
    ${
      asked.isBehind
        ? html`<p class="note">
            ${say`The book has changed since this sheet was made.`}
            <button class="link" type="button" @click=${on.anew}>${say`Make it anew`}</button>
          </p>`
        : nothing
    }
    ${
      count === 0
        ? nothing
        : html`<div class="progress">
            <progress max=${count} value=${right} aria-label=${say`Answers that are right`}></progress>
            <span class="small">${say`${right} of ${count} right`}</span>
          </div>`
    }
    <ol class="questions" part="questions">
      ${work.asked.map((each, at) => questionView(each, at, on, asked.writeUnits))}
    </ol>
    ${lesson && lesson.tasks.length > 0 ? tasksView(lesson.tasks, work.asked.length, asked.seed, kept, on.task) : nothing}
    ${lesson && lesson.discuss.length > 0 ? words(say`To talk over`, lesson.discuss) : nothing}
    ${standardsView(topics)}
    ${
      kept && (work.isBegun || !kept.isBlank || work.isCleared)
        ? html`<p class="quiet small">
            ${say`What is written here stays in this browser.`}
            <button class="link" type="button" @click=${on.clear}>
              ${work.isCleared ? say`Bring it back` : say`Blank it all`}
            </button>
          </p>`
        : nothing
    }
    <p class="unseen" role="status">${asked.said}</p>`;
}
