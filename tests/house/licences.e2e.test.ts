import { expect, it } from 'vitest';
import { readLicences } from '../../scripts/lib/licences.mjs';
import licences from '../../shared/licences.json' with { type: 'json' };

it('lists the licences of what the build holds', () => {
  expect(licences.works, 'run: npm run licences').toEqual(readLicences());
});
