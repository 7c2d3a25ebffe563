// Bundles the program into dist/: one small entry, the care list, and a chunk for each other command and for the
// screens, loaded only when asked for. Bundling is what makes the program start quickly; unbundled, Ink alone costs half
// a second.
import {chmodSync, rmSync} from 'node:fs';
import {build} from 'esbuild';
import {keepCode} from './keep-code.mjs';

/** Ink's developer tools are optional and need a package that is not installed. */
const withoutInkDevtools = without('ink-devtools', /^\.\/devtools\.js$/, '/ink/');

/** The reader of command lines can start other programs. Ours has none to start, and loading what it takes is slow. */
const withoutOtherPrograms = without('other-programs', /^node:child_process$/, '/commander/');

function without(name, module, inPackage) {
  return {
    name: `without-${name}`,
    setup(build) {
      build.onResolve({filter: module}, ({importer}) =>
        importer.includes(inPackage) ? {path: name, namespace: name} : undefined,
      );
      build.onLoad({filter: /.*/, namespace: name}, () => ({contents: 'export default {};'}));
    },
  };
}

// CommonJS packages inside an ES module bundle look for these three names. A bundled package may call something of its
// own URL, so the global one is named in full.
const commonJsNames =
  "import {createRequire as __createRequire} from 'node:module';" +
  "import {fileURLToPath as __fileURLToPath} from 'node:url';" +
  'const require=__createRequire(import.meta.url),' +
  '__filename=__fileURLToPath(import.meta.url),' +
  "__dirname=__fileURLToPath(new globalThis.URL('.',import.meta.url));";

const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  jsx: 'automatic',
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: 'none',
  define: {'process.env.NODE_ENV': '"production"'},
  plugins: [withoutInkDevtools, withoutOtherPrograms],
};

rmSync('dist', {recursive: true, force: true});
await build({
  ...common,
  format: 'esm',
  outdir: 'dist',
  outExtension: {'.js': '.mjs'},
  banner: {js: commonJsNames},
  // The thread that does long work for the screens is a file of its own beside the program.
  entryPoints: {main: 'src/main.ts', 'long-work-thread': 'src/terminal/long-work-thread.ts'},
  splitting: true,
});
chmodSync('dist/main.mjs', 0o755);

// The care list is one function of `require` and its own path, as src/compiled.ts runs it.
await build({
  ...common,
  format: 'cjs',
  outfile: 'dist/today.cjs',
  entryPoints: ['src/start-today.ts'],
  define: {...common.define, 'import.meta.url': '__url'},
  banner: {
    js: "(function(require,path){'use strict';const module={},__url=require('node:url').pathToFileURL(path).href;",
  },
  footer: {js: '})'},
});
keepCode('dist/main.mjs');
