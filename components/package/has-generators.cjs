// In place of a library that makes code out of text to find out: what a page's security policy refuses, and reports.
module.exports = () => true;
