/** `npm run -s bench`: measured figures, one line of JSON each. */
import { bookFigures } from './book.ts';
import { browserFigures } from './browser.ts';
import { pageFigures } from './page.ts';
import { scaleFigures } from './scale.ts';
import { solverFigures } from './solver.ts';

for (const figures of [solverFigures, bookFigures, scaleFigures, pageFigures, browserFigures]) {
  for (const one of await figures()) console.log(JSON.stringify(one));
}
// ngspice waits for its next netlist for ever.
process.exit(0);
