export type { Bridge, Holds, PoundsPer, PoundsPerCup } from './bridges.js';
export { CONTAINERS, type Container, type ContainerFamily, type Holding } from './containers.js';
export { containerHolds, convert, inMeasure } from './convert.js';
export { convertCodes, convertOpenFormula } from './convert-codes.js';
export { containerWithId, findContainer, findMeasure, findUnit, type Measure, unitWithId } from './find.js';
export { asFraction, formatAmount, type Labelled } from './format.js';
export { andList, type NameIndex, nameIndex, nameKey, orList } from './names.js';
export { ceilSafe, floorSafe, roundSig } from './rounding.js';
export { BASE_UNITS, type Dimension, UNITS, type Unit } from './units.js';
