/**
 * Copied beside the command line's bundle as `main.js`: runs it with the code that V8 kept from an earlier run, so that
 * nothing is compiled anew. Where the kept code is missing, or from another Node, V8 says so and compiles as always.
 */
const { readFileSync } = require('node:fs');
const Module = require('node:module');
const vm = require('node:vm');

const file = `${__dirname}/bundle.js`;

const keptCode = () => {
  try {
    return readFileSync(`${__dirname}/bundle.code`);
  } catch {
    return undefined;
  }
};

const script = new vm.Script(Module.wrap(readFileSync(file, 'latin1')), {
  filename: file,
  cachedData: keptCode(),
  importModuleDynamically: vm.constants.USE_MAIN_CONTEXT_DEFAULT_LOADER,
});
script.runInThisContext()(exports, require, module, file, __dirname);
module.exports = { script };
