import { IN_PAGE } from './injected.js';
import { passing } from './passing.js';

/** What a script answers while what it called has not come to its end, and where there is no such call. */
export const WAITING = 'waiting';
export const GONE = '{"failed":"The page went away."}';

/** A driver does one thing at a time: nothing is to hold it up longer than this, in milliseconds. */
const FOR = 400;
const JOBS = '__croftsheetJobs';

const within = `Promise.race([job, new Promise((over) => setTimeout(over, ${FOR}, '${WAITING}'))]).then((answer) => {
    if (answer !== '${WAITING}') delete jobs[id];
    done(answer);
  })`;

/**
 * A script that calls a function in a page and answers as JSON what comes of it. What takes longer goes on in the
 * page, and is asked for again by `GO_ON`, so that a test can meanwhile do what it waits for. Arguments of both:
 * a name of the call; of this one, what is passed to the function too.
 */
export const startScript = (source: string): string => `
  const done = arguments[arguments.length - 1];
  if (!window.${IN_PAGE}) return done(null);
  const { encode, decode } = (${passing})();
  const [id, args] = arguments;
  const jobs = (window.${JOBS} ||= {});
  const call = async () => (${source})(window.${IN_PAGE}, ...decode(JSON.parse(args)));
  const job = (jobs[id] = call().then((value) => JSON.stringify({ ok: encode(value), at: location.href })).catch(
    (error) => JSON.stringify({
      failed: String(error && error.message || error) + '\\n' + (error && error.stack || ''),
      at: location.href,
    }),
  ));
  ${within};`;

export const GO_ON = `
  const done = arguments[arguments.length - 1];
  const [id] = arguments;
  const jobs = window.${JOBS} || {};
  const job = jobs[id];
  if (!job) return done('${GONE}');
  ${within};`;
