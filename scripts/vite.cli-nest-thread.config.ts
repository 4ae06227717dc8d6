// The threads of the command line that lay pieces on a strip: dist/cli-nest-thread.js beside it.
import { cliConfig } from './cli-build.ts';

export default cliConfig('src/cli/nest-thread.ts', 'cli-nest-thread');
