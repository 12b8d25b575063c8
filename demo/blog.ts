import '../components/croftsheet.js';
