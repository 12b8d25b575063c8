node -p "require('croftsheet/integrity.json')['croftsheet-embed.js']"
