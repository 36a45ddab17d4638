import adapter from '@sveltejs/adapter-static';
import { sourceHash } from './src/cli/ensure-built.mjs';

/** @type {import('@sveltejs/kit').Config} */
const config = {
  kit: {
    adapter: adapter({ pages: 'build', assets: 'build' }),
    // Relative addresses, so that the build works under any folder of any static host.
    paths: { relative: true },
    // The same sources are the same version, whenever they are built: nobody is told of a new one for nothing.
    version: { name: sourceHash().slice(0, 12) },
    // The page registers it itself, to say when a new version waits (docs/decisions/0012).
    serviceWorker: { register: false },
    // Nothing is fetched from elsewhere and nothing runs that was not built; Kit adds the hash of its own script.
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self'],
        'worker-src': ['self'],
        'style-src': ['self'],
        // The one style attribute there is: Kit's own, on the line that tells screen readers of another page.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self'],
        'font-src': ['self'],
        // A recording's length is read by a player that gets it as a blob.
        'media-src': ['self', 'blob:'],
        'connect-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['none'],
        'form-action': ['none']
      }
    }
  }
};

export default config;
