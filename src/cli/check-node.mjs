// Written so that even an old Node can parse and run it: it is the one that has to be told.

/** What package.json says under `engines`. */
export const neededNode = '^20.19 || ^22.12 || >=24';

/**
 * Does this version of Node suffice for `neededNode`?
 * @param {string} version as in `process.versions.node`
 * @returns {boolean}
 */
export function nodeSuffices(version) {
  const parts = version.split('.').map(Number);
  const major = parts[0];
  const minor = parts[1];
  return (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major >= 24;
}

/**
 * One sentence for a Node that does not suffice, null for one that does.
 * @param {string} version
 * @returns {string | null}
 */
export function nodeSentence(version) {
  if (nodeSuffices(version)) return null;
  return (
    'Backwave needs Node 20.19, 22.12 or 24 and newer, and this is Node ' +
    version +
    ': get a newer one from https://nodejs.org and try again.'
  );
}

/**
 * Says on stderr that this Node is too old, and sets the exit code.
 * @returns {boolean} whether to go on
 */
export function checkNode() {
  const sentence = nodeSentence(process.versions.node);
  if (sentence === null) return true;
  console.error(sentence);
  process.exitCode = 1;
  return false;
}
