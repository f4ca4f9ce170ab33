import { runCommand } from './runCommand';
import { installSignals } from './terminal';

installSignals();
process.exitCode = await runCommand(process.argv.slice(2));
