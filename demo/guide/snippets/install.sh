npm install croftsheet
