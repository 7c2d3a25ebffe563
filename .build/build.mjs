// Bundles the program into dist/: one small entry, the care list, and a chunk for each other command
// and for the screens, loaded only when asked for. Bundling is what makes the
// program start quickly; unbundled, Ink alone costs half a second.
import {chmodSync, rmSync} from 'node:fs';
import {build} from 'esbuild';

/** Ink's developer tools are optional and need a package that is not installed. */
const withoutInkDevtools = {
  name: 'without-ink-devtools',
  setup(build) {
    build.onResolve({filter: /^\.\/devtools\.js$/}, ({importer}) =>
      importer.includes('/ink/') ? {path: 'ink-devtools', namespace: 'empty'} : undefined,
    );
    build.onLoad({filter: /.*/, namespace: 'empty'}, () => ({contents: ''}));
  },
};

// CommonJS packages inside an ES module bundle look for these three names. A bundled package may call something of its
// own URL, so the global one is named in full.
const commonJsNames =
  "import {createRequire as __createRequire} from 'node:module';" +
  "import {fileURLToPath as __fileURLToPath} from 'node:url';" +
  'const require=__createRequire(import.meta.url),' +
  '__filename=__fileURLToPath(import.meta.url),' +
  "__dirname=__fileURLToPath(new globalThis.URL('.',import.meta.url));";

/** The care list is bundled by itself, whole: the program reaches it by its name. */
const careListApart = {
  name: 'care-list-apart',
  setup(build) {
    build.onResolve({filter: /start-today\.ts$/}, ({kind}) =>
      kind === 'dynamic-import' ? {path: './start-today.mjs', external: true} : undefined,
    );
  },
};

const common = {
  outdir: 'dist',
  outExtension: {'.js': '.mjs'},
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  jsx: 'automatic',
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: 'none',
  define: {'process.env.NODE_ENV': '"production"'},
  banner: {js: commonJsNames},
};

rmSync('dist', {recursive: true, force: true});
await build({
  ...common,
  // The thread that forecasts for the screens is a file of its own beside the program.
  entryPoints: {main: 'src/main.ts', 'forecaster-thread': 'src/terminal/forecaster-thread.ts'},
  splitting: true,
  plugins: [withoutInkDevtools, careListApart],
});
await build({...common, entryPoints: {'start-today': 'src/start-today.ts'}});
chmodSync('dist/main.mjs', 0o755);
