import { cannedCrops, caution } from '../../facts/index.js';
import { CONTAINERS } from '../../units/index.js';
import { CROP } from '../arguments.js';

export const CANNING_SOURCE =
  'USDA Agriculture Information Bulletin 539, Complete Guide to Home Canning, and state extensions, named crop by crop in Facts';

/** Stands with every answer about canning. */
export const CANNING_CAUTION = caution('tested-process').text;

export const CANNED_CROP = { ...CROP, values: cannedCrops() } as const;

export const JARS = CONTAINERS.filter(({ family }) => family === 'jar').map(({ id }) => id);

export const JAR = {
  name: 'jar',
  kind: 'container',
  optional: true,
  otherwise: 'quart jar; pint jar where quarts have no tested process',
  help: 'a jar, as in "quart" or "pint"',
  values: JARS,
} as const;

export const PACK = {
  name: 'pack',
  kind: 'text',
  optional: true,
  otherwise: 'the plainest pack of the crop',
  help: 'how it is put up, as in "crushed", "juice" or "sauce"',
  values: ['whole or halved', 'crushed', 'juice', 'thin sauce', 'thick sauce', 'sliced', 'sauce', 'pieces'],
} as const;
