// The demo's own pages are named here so that the development server knows all that they load beforehand.
import '../../../../components/croftsheet.js';
