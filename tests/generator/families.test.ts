import { families, free } from '../../src/generator/index.ts';
import { familyContract } from './family-contract.ts';

for (const family of [...families, free]) familyContract(family);
