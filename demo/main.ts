// The pictures are loaded by the page when they are looked at.
import '../components/book/croft-book.js';
import '../components/book-menu/croft-book-menu.js';
import '../components/sheet/croft-sheet.js';
import './app/demo-app.js';
