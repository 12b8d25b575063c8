import '../components/croftsheet.js';
import './app/demo-app.js';
