/**
 * What a command does not take: flags, files, sizes. The message is one plain sentence for the user; the
 * command prints it on stderr and ends with exit code 2.
 */
export class Refusal extends Error {
  /** @override */
  name = 'Refusal';
}

/**
 * Runs a command; a refusal becomes its one sentence on stderr. Told by name, because a module may be
 * loaded twice (by Node and by the TypeScript loader), and then its class exists twice.
 * @param {() => Promise<void>} command
 */
export async function orRefuse(command) {
  try {
    await command();
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'Refusal') throw error;
    console.error(error.message);
    process.exitCode = 2;
  }
}
