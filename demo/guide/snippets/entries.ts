import 'croftsheet/croft-book';
import 'croftsheet/croft-sheet';
