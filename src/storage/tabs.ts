/** Who says it. Absent in what earlier versions of this page say. */
interface Sender {
  /** See `BookReplica.beginnings`. */
  readonly begun?: readonly number[];
  /** The sender keeps its book in storage. */
  readonly stores?: boolean;
}

/** What tabs that show one book tell each other. */
export type TabMessage = Sender & TabWords;

export type TabWords =
  /** An edit. `kept`: its sender has stored it; otherwise whoever hears it stores it too. */
  | { readonly kind: 'update'; readonly update: Uint8Array; readonly kept: boolean }
  /** 'I have seen this much: send what I lack.' */
  | { readonly kind: 'hello'; readonly vector: Uint8Array };

export interface Tabs {
  post(message: TabMessage): void;
  close(): void;
}

const isMessage = (data: unknown): data is TabMessage => {
  if (typeof data !== 'object' || data === null) return false;
  const message = data as Record<string, unknown>;
  if (message.begun !== undefined && !Array.isArray(message.begun)) return false;
  return (
    (message.kind === 'update' && message.update instanceof Uint8Array) ||
    (message.kind === 'hello' && message.vector instanceof Uint8Array)
  );
};

/** Joins the tabs of this browser that show the book. Where tabs cannot talk, posting does nothing. */
export function joinTabs(database: string, book: string, heard: (message: TabMessage) => void): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { post() {}, close() {} };
  const channel = new BroadcastChannel(`${database}/${book}`);
  channel.onmessage = (event: MessageEvent) => {
    if (isMessage(event.data)) heard(event.data);
  };
  // In Node an open channel would keep the process alive.
  (channel as { unref?: () => void }).unref?.();
  return { post: (message) => channel.postMessage(message), close: () => channel.close() };
}
