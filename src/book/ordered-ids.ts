/**
 * Ids sorted by their order key, ties by id: the order that any two copies of a book agree on once they
 * hold the same keys.
 */
export class OrderedIds {
  #ids: string[] = [];
  #keys = new Map<string, string>();
  #positions: Map<string, number> | null = null;

  constructor(entries: Iterable<readonly [id: string, order: string]> = []) {
    for (const [id, order] of entries) this.#keys.set(id, order);
    this.#ids = [...this.#keys.keys()].sort((a, b) => this.#compare(a, b));
  }

  get ids(): readonly string[] {
    return this.#ids;
  }

  has(id: string): boolean {
    return this.#keys.has(id);
  }

  order(id: string): string | undefined {
    return this.#keys.get(id);
  }

  /** Position from 0, or -1. */
  indexOf(id: string): number {
    if (!this.#positions) {
      this.#positions = new Map();
      for (let i = 0; i < this.#ids.length; i++) this.#positions.set(this.#ids[i]!, i);
    }
    return this.#positions.get(id) ?? -1;
  }

  set(id: string, order: string): void {
    if (this.#keys.get(id) === order) return;
    if (this.#keys.has(id)) this.remove(id);
    this.#keys.set(id, order);
    this.#ids.splice(this.#placeOf(id), 0, id);
    this.#positions = null;
  }

  remove(id: string): void {
    if (!this.#keys.has(id)) return;
    const place = this.#placeOf(id);
    this.#ids.splice(place, 1);
    this.#keys.delete(id);
    this.#positions = null;
  }

  #compare(a: string, b: string): number {
    const [ka, kb] = [this.#keys.get(a)!, this.#keys.get(b)!];
    if (ka !== kb) return ka < kb ? -1 : 1;
    return a < b ? -1 : a > b ? 1 : 0;
  }

  #placeOf(id: string): number {
    let low = 0;
    let high = this.#ids.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#compare(this.#ids[middle]!, id) < 0) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
