import { OUTSIDE_CHECKS, runOneCheck } from '../../engine/checks/index.ts';

/** A thread of the page that runs the checks one by one, each result as it comes. */
addEventListener('message', () => {
  for (let index = 0; index < OUTSIDE_CHECKS.length; index++) postMessage(runOneCheck(index));
});
