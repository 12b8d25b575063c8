import { html, nothing, type TemplateResult } from 'lit';
import { cautions } from '../../src/facts/index.js';
import { LEVELS, type Lesson, type Level, topicWithId } from '../../src/lessons/index.js';
import { asWritten, say, spoken } from '../../src/words/index.js';
import type { Asked } from './question-view.js';

/** Sentences under a heading. */
export const words = (title: string, items: readonly string[]): TemplateResult => html`<h3>${title}</h3>
  <div class="words">
    <ul>
      ${items.map((item) => html`<li>${item}</li>`)}
    </ul>
  </div>`;

/** What a lesson says before its questions. */
export const beforeQuestions = ({
  introduction,
  goals,
  hands,
}: Lesson): TemplateResult => html`<div class="words">
    ${introduction.map((text) => html`<p>${text}</p>`)}
  </div>
  ${goals.length > 0 ? words(say`What you will be able to do`, goals) : nothing}
  ${hands.length > 0 ? words(say`With your hands`, hands) : nothing}
  <h3>${say`Questions`}</h3>`;

/** The usual cautions in one, where the sheet or the lesson speaks of jars. */
export function cautionsOf(lesson: Lesson | null, asked: readonly Asked[]): readonly string[] {
  const { introduction = [], hands = [], discuss = [] } = lesson ?? {};
  const speaks = [...introduction, ...hands, ...discuss].some((text) =>
    /\b(?:jars?|canning|canned)\b/i.test(text),
  );
  const isAsked = speaks || asked.some(({ problem }) => problem.canning);
  return isAsked
    ? [
        cautions('canned')
          .map(({ text }) => text)
          .join(' '),
      ]
    : [];
}

export interface ControlsAsked {
  readonly topics: readonly string[];
  readonly level: Level;
  readonly seed: string;
  readonly onLevel: (level: number) => void;
  /** With a seed: that sheet; else any other. */
  readonly onAnother: (seed?: string) => void;
  readonly onPrint: () => void;
}

/** Level, another sheet, print; a lesson without numbers of the book is only printed. */
export function controls({
  topics,
  level,
  seed,
  onLevel,
  onAnother,
  onPrint,
}: ControlsAsked): TemplateResult {
  const [only, ...more] = topics.map(topicWithId);
  return html`<div class="controls" part="controls">
    ${
      topics.length > 0
        ? html`<label
              >${say`Level`}
              <select @change=${(event: Event) => onLevel(Number((event.target as HTMLSelectElement).value))}>
                ${LEVELS.map(
                  (each) => html`<option value=${each} .selected=${each === level}>
                    ${each}${only && more.length === 0 ? `: ${asWritten(() => spoken(only.levels[each]))}` : ''}
                  </option>`,
                )}
              </select></label
            ><label class="seed"
              >${say`Sheet`}
              <input
                type="text"
                maxlength="40"
                autocomplete="off"
                .value=${seed}
                @change=${({ target }: Event) => {
                  const asked = (target as HTMLInputElement).value.trim();
                  if (asked !== '') onAnother(asked);
                }} /></label
            ><button class="button" type="button" @click=${() => onAnother()}>${say`Another sheet`}</button>`
        : nothing
    }
    <button class="button" type="button" @click=${onPrint}>${say`Print with key`}</button>
  </div>`;
}
