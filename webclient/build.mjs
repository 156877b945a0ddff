// Builds the client into server/fieldtally/static: one script and the one fetched after it, one style sheet, one page, the worker that
// keeps them on the phone, each also pre-compressed. Prints what it weighs and fails above the budget.
//
//   node build.mjs [folder]

import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

import { build } from "esbuild";

import { american, british } from "./src/words/british.ts";
import { german } from "./src/words/german.ts";

const HERE = dirname(fileURLToPath(import.meta.url));
const SRC = join(HERE, "src");
const OUT = process.argv[2] ?? join(HERE, "..", "server", "fieldtally", "static");
const NEXT = `${OUT}.next-${process.pid}`;

const BUDGET_SCRIPT = 100 * 1024;
const BUDGET_SHELL = 150 * 1024;
const BUDGET_HOME = 50 * 1024;
// Chrome 109 and Safari 16.4 are the oldest browsers with all that the app relies on
const TARGET = ["chrome109", "safari16.4", "firefox115"];

const { version } = JSON.parse(readFileSync(join(HERE, "package.json"), "utf8"));
const digest = (...parts) => parts.reduce((hash, part) => hash.update(part), createHash("sha256")).digest("hex");
const filesBelow = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();

// the same sources give the same bytes on every machine, so that two servers of one release agree
function digestOfSources() {
  const files = [...filesBelow(SRC), join(HERE, "package-lock.json"), fileURLToPath(import.meta.url)];
  return digest(...files.flatMap((file) => [relative(HERE, file).replaceAll(sep, "/"), readFileSync(file)])).slice(0, 12);
}

const shared = {
  bundle: true, minify: true, format: "esm", target: TARGET, legalComments: "none", logLevel: "warning",
  jsx: "automatic", jsxImportSource: "preact", absWorkingDir: HERE,
};

async function buildApp(define) {
  const result = await build({
    ...shared, define, outdir: join(NEXT, "assets"), entryPoints: { app: join(SRC, "start.tsx") },
    entryNames: "[name]-[hash]", chunkNames: "[name]-[hash]", assetNames: "[name]-[hash]", splitting: true, metafile: true,
  });
  const outputs = Object.entries(result.metafile.outputs);
  const first = outputs.find(([, { entryPoint }]) => entryPoint === "src/start.tsx");
  const style = first[1].cssBundle;
  // the first style sheet holds the rules of the later screens too
  for (const [file] of outputs) if (file.endsWith(".css") && file !== style) rmSync(join(HERE, file));
  return { script: addressOf(first[0]), style: addressOf(style), first: fetchedWith(first, result.metafile.outputs).map(addressOf) };
}

const addressOf = (file) => `/assets/${file.split("/").pop()}`;

// a script and all that it imports at once: what the browser waits for before the first screen
function fetchedWith([file, { imports }], outputs) {
  const atOnce = imports.filter(({ kind }) => kind === "import-statement").map(({ path }) => path);
  return [...new Set([file, ...atOnce.flatMap((path) => fetchedWith([path, outputs[path]], outputs))])];
}

// one file a language; what a language does not say stands in the British one
function writeWords() {
  const languages = { "en-GB": british, "en-US": american, de: german };
  mkdirSync(join(NEXT, "assets"), { recursive: true });
  return Object.fromEntries(Object.entries(languages).map(([language, words]) => {
    const text = JSON.stringify(folded(words));
    const url = `/assets/words-${language}-${digest(text).slice(0, 8)}.json`;
    writeFileSync(join(NEXT, url), text);
    return [language, url];
  }));
}

function writePage({ script, style, first }) {
  const ahead = first.filter((url) => url !== script).map((url) => `<link rel="modulepreload" href="${url}">`).join("\n    ");
  const page = readFileSync(join(SRC, "index.html"), "utf8")
    .replace("%SCRIPT%", script).replace("%STYLE%", style).replace("%AHEAD%", ahead);
  writeFileSync(join(NEXT, "index.html"), page);
  cpSync(join(SRC, "manifest.webmanifest"), join(NEXT, "manifest.webmanifest"));
  cpSync(join(SRC, "icons"), join(NEXT, "icons"), { recursive: true });
}

// `horse.name` under `horse`; the page unfolds it again
function folded(words) {
  const areas = {};
  for (const [key, text] of Object.entries(words)) {
    const [area, rest] = key.split(/\.(.*)/s);
    (areas[area] ??= {})[rest] = text;
  }
  return areas;
}

// what the worker keeps: every file under its final address, with the digest the browser must find in it
function shellFiles() {
  return filesBelow(NEXT).filter(isShell).map((file) => ({ ...checked(file), revision: file.includes(`${sep}assets${sep}`) ? null : digest(readFileSync(file)).slice(0, 16) }));
}

// every phone keeps English; another language's texts are fetched by those who want them, the larger icons by a launcher
const isOtherLanguage = (file) => /words-(?!en-)/.test(file);
const isHome = (file) => /home-\w+\.js$/.test(file);
const isShell = (file) => !/icon-(192|512)/.test(file) && !isOtherLanguage(file) && !isHome(file);

function checked(file) {
  const integrity = `sha384-${createHash("sha384").update(readFileSync(file)).digest("base64")}`;
  return { url: `/${relative(NEXT, file).replaceAll(sep, "/")}`, integrity };
}

async function buildWorker(define) {
  await build({
    ...shared, format: "iife", outfile: join(NEXT, "sw.js"), entryPoints: [join(SRC, "sw.ts")],
    define: { ...define, __SHELL__: JSON.stringify(shellFiles()), __HOME__: JSON.stringify(filesBelow(NEXT).filter(isHome).map(checked)), __BEYOND_SHELL__: JSON.stringify(filesBelow(NEXT).filter(isOtherLanguage).map(checked)), "process.env.NODE_ENV": '"production"' },
  });
}

function compress(file) {
  const bytes = readFileSync(file);
  if (/\.png$/.test(file)) return { file, plain: bytes.length, small: bytes.length };
  const brotli = brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } });
  writeFileSync(`${file}.br`, brotli);
  writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }));
  return { file, plain: bytes.length, small: brotli.length };
}

function weigh(sizes, first) {
  const kib = (bytes) => `${(bytes / 1024).toFixed(1)} KiB`;
  const shell = sizes.filter(({ file }) => isShell(file));
  const sum = (some) => some.reduce((total, { small }) => total + small, 0);
  const scripts = sum(shell.filter(({ file }) => first.includes(addressOf(file))));
  for (const { file, plain, small } of sizes) console.log(`${relative(NEXT, file).padEnd(28)} ${kib(plain).padStart(11)} ${kib(small).padStart(11)} compressed`);
  const home = sum(sizes.filter(({ file }) => isHome(file)));
  console.log(`first script ${kib(scripts)} of ${kib(BUDGET_SCRIPT)}, whole shell ${kib(sum(shell))} of ${kib(BUDGET_SHELL)}, home ${kib(home)} of ${kib(BUDGET_HOME)} (brotli)`);
  return scripts <= BUDGET_SCRIPT && sum(shell) <= BUDGET_SHELL && home <= BUDGET_HOME;
}

function putInPlace() {
  const old = `${OUT}.old-${process.pid}`;
  if (existsSync(OUT)) renameSync(OUT, old);
  renameSync(NEXT, OUT);
  rmSync(old, { recursive: true, force: true });
}

rmSync(NEXT, { recursive: true, force: true });
mkdirSync(NEXT, { recursive: true });
try {
  const define = { __APP_VERSION__: JSON.stringify(version), __BUILD__: JSON.stringify(digestOfSources()) };
  const app = await buildApp({ ...define, __WORDS__: JSON.stringify(writeWords()) });
  writePage(app);
  await buildWorker(define);
  const fits = weigh(filesBelow(NEXT).map(compress), app.first);
  if (!fits) throw new Error("the client is over its budget");
  putInPlace();
} catch (error) {
  console.error(`webclient: ${error.message}`);
  process.exitCode = 1;
} finally {
  rmSync(NEXT, { recursive: true, force: true });
}
