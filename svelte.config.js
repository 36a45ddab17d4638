import adapter from '@sveltejs/adapter-static';

/** @type {import('@sveltejs/kit').Config} */
const config = {
  kit: {
    adapter: adapter({ pages: 'build', assets: 'build' }),
    // Relative addresses, so that the build works under any folder of any static host.
    paths: { relative: true }
  }
};

export default config;
