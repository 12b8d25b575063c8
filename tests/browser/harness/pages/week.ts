import '../../../../components/croftsheet.js';
import '../../../../components/labels/croft-labels.js';
import '../../../../components/lists/croft-lists.js';
import '../../../../components/week/croft-wish-list.js';
