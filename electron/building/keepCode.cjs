/**
 * Runs a bundle once and keeps the code that V8 compiled for it: `node keepCode.cjs <folder> <arguments of the run…>`.
 * What the run did not call is not in it and is compiled when it is called.
 */
const { writeFileSync } = require('node:fs');

const [folder] = process.argv.splice(2, 1);
const { script } = require(`${folder}/main.js`);
process.on('exit', () => writeFileSync(`${folder}/bundle.code`, script.createCachedData()));
