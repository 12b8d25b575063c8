import type { APIResponse, Route } from 'playwright-core';
import { withWhatIsLacking } from './lacking-here.js';
import { type Answer, type Asked, answerOf, askServer, requestOf, responseOf } from './requests.js';

export type Pattern = string | RegExp | ((url: URL) => boolean);
export type RouteHandler = (route: Route) => unknown;

/** What is to become of a request: an answer, none at all, or whatever the next route says. */
type Fate = Answer | 'aborted' | 'passed on';

interface Fulfilling {
  readonly response?: APIResponse;
  readonly status?: number;
  readonly headers?: Readonly<Record<string, string>>;
  readonly contentType?: string;
  readonly body?: string | Buffer;
  readonly json?: unknown;
}

/** Whether a pattern means an address: `**` stands for anything, `*` for anything but a slash. */
export function matches(pattern: Pattern, url: string): boolean {
  if (typeof pattern === 'function') return pattern(new URL(url));
  if (pattern instanceof RegExp) return pattern.test(url);
  const source = pattern
    .replace(/[.+?^${}()|[\]\\]/g, '\\$&')
    .replace(/\*+/g, (stars) => (stars.length > 1 ? '.*' : '[^/]*'));
  return new RegExp(`^${source}$`).test(url);
}

/** Asks a test what is to become of a request. */
export function askRoute(handler: RouteHandler, asked: Asked): Promise<Fate> {
  return new Promise((done, failed) => {
    const route = withWhatIsLacking<Route>('route', {
      request: () => requestOf(asked),
      async fetch({ url = asked.url }: { url?: string } = {}) {
        return responseOf(url, await askServer({ ...asked, url }));
      },
      fulfill: async (given: Fulfilling = {}) => done(fulfilled(given)),
      continue: async () => done(await askServer(asked)),
      fallback: async () => done('passed on'),
      abort: async () => done('aborted'),
    });
    Promise.resolve(handler(route)).catch(failed);
  });
}

function fulfilled({ response, status, headers, contentType, body, json }: Fulfilling): Answer {
  const from = response && answerOf(response);
  const said = json === undefined ? body : JSON.stringify(json);
  return {
    status: status ?? from?.status ?? 200,
    headers: {
      ...(headers ?? from?.headers),
      ...(json !== undefined && { 'content-type': 'application/json' }),
      ...(contentType && { 'content-type': contentType }),
    },
    body: said === undefined ? (from?.body ?? Buffer.alloc(0)) : Buffer.from(said),
  };
}
