/** Writes the sample models, their seams and their list into `samples/`; run from the project folder by `npm run samples`. */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { KIT_FILES, kitProjectText } from './kit-project.ts';
import { sampleFiles } from './sample-set.ts';

for (const [name, text] of sampleFiles()) writeFileSync(resolve('samples', name), text);
// It is made of models that have just been written.
writeFileSync(resolve('samples', KIT_FILES.project), await kitProjectText());
