import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { buffer } from 'node:stream/consumers';
import type { Request } from 'playwright-core';
import { initSource } from './init-source.js';
import { type Answer, type Asked, askServer, passedOn, requestOf } from './requests.js';
import { askRoute, matches, type Pattern, type RouteHandler } from './route.js';

const INIT = '/__croftsheet-init.js';
const IDLE = 500;

/**
 * All that one browser asks of servers goes through here: WebDriver cannot tell of it, nor answer in a server's
 * stead, but it can name a proxy.
 */
export class Network {
  private readonly server = createServer((request, response) => {
    this.busy += 1;
    this.answer(request, response)
      .catch(() => response.destroy())
      .finally(() => {
        this.busy -= 1;
        this.lastAt = Date.now();
      });
  });
  private readonly routes: { readonly pattern: Pattern; readonly handler: RouteHandler }[] = [];
  private readonly listeners: ((request: Request) => void)[] = [];
  private readonly init: string[] = [];
  private busy = 0;
  private lastAt = 0;
  offline = false;

  static async start(): Promise<Network> {
    const network = new Network();
    // What goes to other sites in secret is heard of, and not answered: no test asks anything of them.
    network.server.on('connect', (request: IncomingMessage, socket: Socket) => {
      network.tell({
        url: new URL(`https://${request.url}`).href,
        method: 'CONNECT',
        headers: {},
        body: Buffer.alloc(0),
      });
      socket.destroy();
    });
    network.server.listen(0, '127.0.0.1');
    await once(network.server, 'listening');
    return network;
  }

  get address(): string {
    return `127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  route(pattern: Pattern, handler: RouteHandler): void {
    // The last one that was told comes first.
    this.routes.unshift({ pattern, handler });
  }
  unroute(pattern: Pattern): void {
    // Two regular expressions are the same one where they read alike.
    const isSame = (each: Pattern): boolean =>
      each === pattern || (pattern instanceof RegExp && String(each) === String(pattern));
    const at = this.routes.findIndex((each) => isSame(each.pattern));
    if (at >= 0) this.routes.splice(at, 1);
  }
  onRequest(listener: (request: Request) => void): void {
    this.listeners.push(listener);
  }
  /** A script that runs in every page before its own. */
  addInitScript(source: string): void {
    this.init.push(source);
  }
  get isIdle(): boolean {
    return this.busy === 0 && Date.now() - this.lastAt > IDLE;
  }

  async close(): Promise<void> {
    this.server.close();
    this.server.closeAllConnections();
  }

  private tell(asked: Asked): void {
    if (asked.url.endsWith('/favicon.ico')) return;
    for (const listener of this.listeners) listener(requestOf(asked));
  }

  private async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const asked: Asked = {
      url: request.url ?? '',
      method: request.method ?? 'GET',
      headers: request.headers as Record<string, string>,
      body: await buffer(request),
    };
    if (new URL(asked.url).pathname === INIT)
      return send(response, {
        status: 200,
        headers: { 'content-type': 'text/javascript; charset=utf-8' },
        body: Buffer.from(initSource(this.init)),
      });
    this.tell(asked);
    const answer = this.offline ? null : await this.answerTo(asked);
    if (answer) send(response, this.withInit(answer));
    else response.destroy();
  }

  private async answerTo(asked: Asked): Promise<Answer | null> {
    for (const { pattern, handler } of [...this.routes]) {
      if (!matches(pattern, asked.url)) continue;
      const fate = await askRoute(handler, asked);
      if (fate === 'aborted') return null;
      if (fate !== 'passed on') return fate;
    }
    return askServer(asked);
  }

  private withInit(answer: Answer): Answer {
    const type = Object.entries(answer.headers).find(([name]) => name.toLowerCase() === 'content-type')?.[1];
    if (this.init.length === 0 || !type?.startsWith('text/html')) return answer;
    const tag = `<script src="${INIT}"></script>`;
    const html = answer.body.toString();
    const body = /<head[^>]*>/i.test(html) ? html.replace(/<head[^>]*>/i, (head) => head + tag) : tag + html;
    return { ...answer, body: Buffer.from(body) };
  }
}

function send(response: ServerResponse, { status, headers, body }: Answer): void {
  // Kept nowhere, so that whatever a page asks for is asked here.
  response.writeHead(status, { ...passedOn(headers), 'cache-control': 'no-store' });
  response.end(body);
}
