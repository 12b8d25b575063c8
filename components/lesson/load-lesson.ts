import { type LessonRead, parseLesson } from '../../src/lessons/index.js';
import { say } from '../../src/words/index.js';

const failed = (code: string, message: string, mend: string): LessonRead => ({
  ok: false,
  problems: [{ code, message, mend }],
});

/** Reads a lesson that is written in the attribute itself, or fetches it from the page's own site. */
export async function loadLesson(lesson: string, base: string): Promise<LessonRead> {
  if (lesson.trimStart().startsWith('{')) return parseLesson(lesson);
  let url: URL;
  try {
    url = new URL(lesson, base);
  } catch {
    return failed(
      'bad-address',
      say`“${lesson.slice(0, 60)}” is not an address.`,
      say`Write where the lesson lies.`,
    );
  }
  if (url.origin !== new URL(base).origin)
    return failed(
      'other-site',
      say`The lesson would come from another site (${url.host}).`,
      say`Put the file on the same site as the page.`,
    );
  try {
    const answer = await fetch(url, { credentials: 'same-origin' });
    if (!answer.ok)
      return failed(
        'not-found',
        say`There is no lesson at ${url.pathname} (the site answered ${answer.status}).`,
        say`Check the address, or whether the file was put on the site.`,
      );
    return parseLesson(await answer.text());
  } catch {
    return failed(
      'not-reached',
      say`The lesson at ${url.pathname} could not be fetched.`,
      say`Check the connection, then load the page again.`,
    );
  }
}
