/**
 * Values on their way to a page and back, as JSON with what JSON has no words for. The same function runs on
 * both sides, so it uses nothing from around it.
 */
export function passing() {
  const encode = (value: unknown): unknown => {
    if (value === undefined) return { $: 'undefined' };
    if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
      return { $: 'number', is: Object.is(value, -0) ? '-0' : String(value) };
    if (value instanceof Date) return { $: 'date', is: value.toISOString() };
    if (value instanceof RegExp) return { $: 'regexp', is: value.source, flags: value.flags };
    if (Array.isArray(value)) return value.map(encode);
    if (typeof Node !== 'undefined' && value instanceof Node) return null;
    if (typeof value === 'function' || typeof value === 'symbol') return { $: 'undefined' };
    if (typeof value === 'bigint') return { $: 'bigint', is: String(value) };
    if (value !== null && typeof value === 'object') {
      // A rectangle of the DOM has nothing of its own, but says what it is.
      const { toJSON } = value as { toJSON?: unknown };
      if (typeof toJSON === 'function') return encode(toJSON.call(value));
      // What says nothing of itself unless asked by one of its kind, as a prototype does, is left out.
      const said = (key: string): [string, unknown][] => {
        try {
          return [[key, encode((value as Record<string, unknown>)[key])]];
        } catch {
          return [];
        }
      };
      return Object.fromEntries(Object.keys(value).flatMap(said));
    }
    return value;
  };
  const decode = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(decode);
    if (value === null || typeof value !== 'object') return value;
    const { $, is, flags } = value as { $?: string; is?: string; flags?: string };
    if ($ === 'undefined') return undefined;
    if ($ === 'number') return Number(is);
    if ($ === 'date') return new Date(is!);
    if ($ === 'bigint') return BigInt(is!);
    if ($ === 'regexp') return new RegExp(is!, flags);
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, decode(each)]));
  };
  return { encode, decode };
}
