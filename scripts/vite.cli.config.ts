// The command line: dist/cli.js, that plain Node runs without any package beside it.
import { cliConfig } from './cli-build.ts';

export default cliConfig('src/cli/main.ts', 'cli');
