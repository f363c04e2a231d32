import { families } from '../../src/generator/index.ts';
import { familyContract } from './family-contract.ts';

for (const family of families) familyContract(family);
