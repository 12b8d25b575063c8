import '../../components/embed/croft-embed.js';
