import { runCommand } from './runCommand';
import { installSignals } from './terminal';

installSignals();
void runCommand(process.argv.slice(2)).then((status) => (process.exitCode = status));
