import type { Result } from '../../problem.js';
import type { Guide } from '../guide.js';
import type { CropShare, RowPlan, WayKept } from '../types.js';
import type { InUse, OwnFigures } from './own-figures.js';
import type { BatchFigures, BatchRow, GardenHousehold } from './types.js';

/** What Foods says of a line that batches are put up for. */
export interface LineToPutUp {
  readonly food: string;
  readonly way: WayKept;
  readonly countedIn: string | null;
  /** Whole containers, counted in `countedIn`; null where not known. */
  readonly toPutUp: number | null;
  readonly crops: readonly CropShare[];
}

/** Room taken now. */
export interface RoomNow {
  /** Quart jars. */
  readonly shelf: number;
  /** Cubic feet. */
  readonly freezer: number;
}

export interface BatchesInput {
  readonly rows: readonly BatchRow[];
  readonly lines: readonly LineToPutUp[];
  readonly household: GardenHousehold;
  readonly room: RoomNow;
  readonly figures?: OwnFigures;
  readonly guide?: Guide;
}

/** Pounds of one crop in a container, for a batch. */
export interface BatchCrop {
  readonly crop: string;
  /** Pounds in, as weighed; null where not. */
  readonly pounds: number | null;
  readonly per: number | null;
  readonly figure: InUse | null;
  readonly typed: boolean;
}

/** One batch reckoned. */
export interface BatchReckoning {
  readonly row: BatchRow;
  /** Filled already. */
  readonly done: boolean;
  readonly posted: boolean;
  readonly line: LineToPutUp | null;
  readonly crops: readonly BatchCrop[];
  readonly cropProblem: Result<unknown> | null;
  /** Whole containers. */
  readonly jars: number | null;
  readonly jarsFrom: 'filled' | 'pounds' | 'to put up' | null;
  /** Share of lids that failed in the household's own batches; null where it has none. */
  readonly failures: number | null;
  readonly lids: number | null;
  readonly loads: Result<number> | null;
  readonly loadSource: string | null;
  readonly bushels: Result<number> | null;
  readonly bushelSource: string | null;
  readonly shelfAfter: number | null;
  readonly freezerAfter: number | null;
  readonly reached: number | null;
  readonly published: number | null;
}

export interface BatchesPlan {
  readonly rows: ReadonlyMap<string, RowPlan<BatchFigures>>;
  readonly reckoned: ReadonlyMap<string, BatchReckoning>;
}
