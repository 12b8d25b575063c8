import type { APIResponse, Request } from 'playwright-core';
import { withWhatIsLacking } from './lacking-here.js';

/** What a page asked for, as it came to its proxy. */
export interface Asked {
  readonly url: string;
  readonly method: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

/** What it is answered. */
export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

/** Between two machines only: not passed on. */
const OF_THE_LINE = ['connection', 'proxy-connection', 'keep-alive', 'transfer-encoding', 'content-length'];
const ENCODED = ['content-encoding', 'accept-encoding', 'host'];

export const passedOn = (headers: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(headers).filter(([name]) => ![...OF_THE_LINE, ...ENCODED].includes(name.toLowerCase())),
  );

/** Asks the server itself. */
export async function askServer({ url, method, headers, body }: Asked): Promise<Answer> {
  const answer = await fetch(url, {
    method,
    headers: passedOn(headers),
    redirect: 'manual',
    ...(body.length > 0 && { body: new Uint8Array(body) }),
  });
  return {
    status: answer.status,
    headers: passedOn(Object.fromEntries(answer.headers)),
    body: Buffer.from(await answer.arrayBuffer()),
  };
}

export const requestOf = (asked: Asked): Request =>
  withWhatIsLacking<Request>('request', {
    url: () => asked.url,
    method: () => asked.method,
    headers: () => asked.headers,
    postData: () => (asked.body.length > 0 ? asked.body.toString() : null),
  });

/** An answer as tests look at it; `answerOf` has what is behind it. */
export function responseOf(url: string, answer: Answer): APIResponse {
  const response = withWhatIsLacking<APIResponse>('response', {
    url: () => url,
    status: () => answer.status,
    ok: () => answer.status >= 200 && answer.status < 300,
    headers: () => ({ ...answer.headers }),
    body: async () => answer.body,
    text: async () => answer.body.toString(),
    json: async () => JSON.parse(answer.body.toString()) as unknown,
  });
  behind.set(response, answer);
  return response;
}

const behind = new WeakMap<APIResponse, Answer>();
export const answerOf = (response: APIResponse): Answer | undefined => behind.get(response);
