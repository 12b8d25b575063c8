/** Before every file of tests: what a book of the file before may have left for all of the process. */
import { measureIn } from '../../src/units/index.js';

measureIn('US customary');
