import { checkNode } from './check-node.mjs';

// Nothing else may be imported before the version is known: an old Node could not even parse it.
if (checkNode()) import('./run-tool.mjs').then((command) => command.main(process.argv.slice(2)));
