import '../components/book/croft-book.js';
import '../components/lesson/croft-lesson.js';
import './app/looks.js';
import { render } from 'lit';
import { TOPICS } from '../src/lessons/index.js';
import { onLanguage } from '../src/words/index.js';
import {
  LESSONS,
  lessonsList,
  pageFoot,
  pageHead,
  pageLinks,
  pageTitle,
  topicTable,
} from './app/lessons-page.js';

const place = (id: string): HTMLElement => document.getElementById(id)!;

/** The lesson, or the topic, that the address asks for; the first lesson unless it asks. */
function asked() {
  const id = decodeURIComponent(location.hash.slice(1));
  const topic = TOPICS.find((each) => `topic-${each.id}` === id);
  const listed = LESSONS.find(({ lesson }) => lesson.id === id) ?? (topic ? undefined : LESSONS[0]);
  return { topic, listed, current: topic ? `topic-${topic.id}` : listed?.lesson.id };
}

/** Each one anew: what was written into another sheet is not carried over. */
function show(): void {
  const { topic, listed } = asked();
  const element = document.createElement('croft-lesson');
  if (topic) {
    element.topics = topic.id;
    element.count = 8;
    element.keepAs = `topic-${topic.id}`;
  } else if (listed) element.lesson = listed.json;
  place('lesson').replaceChildren(element);
}

/** What stands around it, in the language spoken. */
function sayAround(): void {
  render(pageLinks(), place('links'));
  render(pageHead(), place('head'));
  render(lessonsList(asked().current), place('list'));
  place('foot').textContent = pageFoot();
  document.title = `${pageTitle()} · Croftsheet`;
}

window.addEventListener('hashchange', () => {
  sayAround();
  show();
  const home = place('lesson');
  home.focus({ preventScroll: true });
  // On narrow pages it stands below the list of them.
  if (!matchMedia('(min-width: 48rem)').matches) home.scrollIntoView({ block: 'start' });
});
render(topicTable(), place('topic-table'));
onLanguage(sayAround);
sayAround();
show();
