// What the threads of the command line run: dist/cli-thread.js beside it.
import { cliConfig } from './cli-build.ts';

export default cliConfig('src/cli/flatten-thread.ts', 'cli-thread');
