import '../components/book/croft-book.js';
import '../components/sheet/croft-sheet.js';
