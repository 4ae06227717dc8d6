// Writes where every visible word, sign, colour and drawing comes from: npm run origins
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { originsText } from './origins/text.ts';

writeFileSync(fileURLToPath(new URL('../shared/origins.md', import.meta.url)), originsText());
