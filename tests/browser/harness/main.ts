const modules = import.meta.glob('./*.ts');

declare global {
  interface Window {
    callHarness: (file: string, name: string, args: unknown[]) => Promise<unknown>;
  }
}

/** Lets a test call an exported function of a script of this folder; arguments and result go as JSON. */
window.callHarness = async (file, name, args) => {
  const module = (await modules[`./${file}.ts`]()) as Record<string, (...args: unknown[]) => unknown>;
  return module[name](...args);
};

// A call from the test counts as a gesture of the user; what must happen without one is asked for by the address.
if (location.hash === '#open') await window.callHarness('open-room', 'openAndTell', []);
export {};
