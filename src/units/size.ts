import { say } from '../words/index.js';
import type { Bridge } from './bridges.js';
import type { Container } from './containers.js';
import { unitWithId } from './find.js';
import { type Ratio, times } from './ratio.js';
import { type Dimension, SPACE_UNITS, type Unit } from './units.js';

/** How big one unit or container is: what converting needs to know of either. */
export interface Size {
  readonly id: string;
  /** 'a quart jar', 'an ounce': for messages, in the language spoken. */
  readonly one: string;
  readonly plural: string;
  /** Null where only the household knows the size. */
  readonly dimension: Dimension | null;
  /** In the base unit of the dimension; NaN where the dimension is null. */
  readonly factor: number;
  /** Null where the size was typed by the household. */
  readonly exact: Ratio | null;
  /** True for units of bare space, which measure liquid and dry goods alike. */
  readonly space: boolean;
}

function withArticle(id: string): string {
  if (id === 'each') return say`one piece`;
  return /^[aeio]/.test(id) ? say`an ${id}` : say`a ${id}`;
}

const units = new Map<string, Size>();
const containers = new Map<string, Size>();

export function unitSize(unit: Unit): Size {
  const cached = units.get(unit.id);
  if (cached) return cached;
  const size: Size = {
    id: unit.id,
    get one() {
      return withArticle(unit.id);
    },
    plural: unit.plural,
    dimension: unit.dimension,
    factor: unit.factor,
    exact: unit.exact,
    space: SPACE_UNITS.has(unit.id),
  };
  units.set(unit.id, size);
  return size;
}

/** The size of a container: its own, or what a `Holds` bridge says of it where it has none. */
export function containerSize(container: Container, bridges: readonly Bridge[]): Size {
  if (container.holds === null) {
    for (const bridge of bridges) {
      if (!('container' in bridge) || bridge.container !== container.id) continue;
      const unit = unitWithId(bridge.unit);
      if (unit && bridge.amount > 0) return sized(container, unit, bridge.amount, null);
    }
    return sized(container, null, Number.NaN, null);
  }
  const cached = containers.get(container.id);
  if (cached) return cached;
  const unit = unitWithId(container.holds.unit);
  // Published sizes are whole halves, so doubling makes them whole.
  const exact = unit ? times(unit.exact, [container.holds.amount * 2, 2]) : null;
  const size = sized(container, unit ?? null, container.holds.amount, exact);
  containers.set(container.id, size);
  return size;
}

function sized(container: Container, unit: Unit | null, amount: number, exact: Ratio | null): Size {
  return {
    id: container.id,
    get one() {
      return withArticle(container.id);
    },
    plural: container.plural,
    dimension: unit?.dimension ?? null,
    factor: unit ? (exact ? exact[0] / exact[1] : amount * unit.factor) : Number.NaN,
    exact,
    space: false,
  };
}
