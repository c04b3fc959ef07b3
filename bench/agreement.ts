import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { compare } from './oracle/agreement.js';
import { FAMILIES, familyPart } from './oracle/families.js';

/** s: what the mixed-integer solver gets for one model. */
const SOLVER_LIMIT = 60;

/**
 * The planner's best cost against two oracles on seeded parts of each family, machine by machine in turn. Prints one line
 * for a family and one for each disagreement; answers with how many there were.
 */
export const agreementBench = async (count: number, print: (line: string) => void, firstSeed = 1): Promise<number> => {
  const metal = metalById('dc01');
  if (!metal) throw new Error('the metals have no dc01');
  const floor = demoFloor();
  let disagreements = 0;
  for (const family of FAMILIES) {
    const sum = { parts: 0, made: 0, searches: 0, notClaimed: 0, settled: 0, gaveUp: 0, wrong: 0 };
    for (let seed = firstSeed; seed < firstSeed + count; seed++) {
      const machine = floor[seed % floor.length]!;
      const part = familyPart(family, seed);
      const one = await compare({ part, machine, rack: demoRack(), metal, quantity: 50, limits: { seconds: 60 } }, part.bends.length <= 10 ? SOLVER_LIMIT : null, () => performance.now());
      sum.parts++;
      if (one.trial.verdict === 'makes') sum.made++;
      sum.searches += one.searches;
      sum.notClaimed += one.notClaimed;
      sum.settled += one.settled;
      sum.gaveUp += one.gaveUp;
      if (one.wrong.length > 0) sum.wrong++;
      for (const line of one.wrong) print(`  ${part.name} on ${machine.id}: ${line}`);
    }
    disagreements += sum.wrong;
    print(`agreement, ${family}: ${sum.parts} parts from seed ${firstSeed} (${sum.made} made), ${sum.searches} searches; every order agrees on ${sum.parts - sum.wrong} of ${sum.parts}; ` +
      `the mixed-integer solver settled ${sum.settled}, gave up ${sum.gaveUp} in ${SOLVER_LIMIT} s; ${sum.notClaimed} searches claim no best order`);
  }
  return disagreements;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [count = 20, seed = 1] = process.argv.slice(2).map(Number);
  process.exitCode = (await agreementBench(count, (line) => console.log(line), seed)) > 0 ? 1 : 0;
}
