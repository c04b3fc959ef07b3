// A program that writes to a store until it is killed, saying each write on its output once the store has acknowledged it.
// Arguments: folder, seed, and optionally the number of the file operation at which it dies by its own hand, and
// a shadow folder that receives only what was flushed to the disk: what a power cut would leave.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import { basename, join } from 'node:path';

const [dir, seedText, dieAtText, shadow] = process.argv.slice(2);
const random = mulberry(Number(seedText));
const dieAt = Number(dieAtText ?? 0);

// The database calls the functions of this object, so replacing them here reaches every file operation that it makes.
const files = createRequire(import.meta.url)('fs');
const names = new Map();
let operations = 0;
let armed = false;

wrap('openSync', (real, path, ...rest) => {
  const fd = real(path, ...rest);
  names.set(fd, String(path));
  return fd;
});
wrap('closeSync', (real, fd) => {
  names.delete(fd);
  real(fd);
});
wrap('writeSync', (real, fd, bytes, offset, length, position) => {
  if (counts()) {
    // Dies with half of the bytes written.
    real(fd, bytes, offset, Math.floor(length / 2), position);
    die();
  }
  return real(fd, bytes, offset, length, position);
});
wrap('ftruncateSync', (real, ...given) => {
  if (counts()) die();
  real(...given);
});
wrap('fsyncSync', (real, fd) => {
  if (counts()) die();
  real(fd);
  const name = names.get(fd);
  if (shadow && name && fs.statSync(name).isFile()) {
    const draft = join(shadow, 'draft');
    fs.copyFileSync(name, draft);
    fs.renameSync(draft, join(shadow, basename(name)));
  }
});

const { openStore } = await import('../dist/store/index.js');
const opened = openStore(dir);
if (!opened.ok) {
  process.stdout.write(`refused ${opened.sentence}\n`);
  process.exit(3);
}
const { store } = opened;
say('ready');
armed = true;
for (let n = 0; ; n++) {
  // Now and then large, so that the log is folded into the main file while we are being killed.
  const bytes = Buffer.alloc(random() < 0.1 ? 400_000 : Math.floor(random() * 3000), n % 251);
  const count = 1 + Math.floor(random() * 3);
  const tag = `${seedText}-${n}`;
  const file = { name: `${tag}.step`, bytes: new Uint8Array([...Buffer.from(tag), ...bytes]) };
  say(`trying ${tag} ${count}`);
  const kept = await store.addReading({ file, parts: Array.from({ length: count }, (_, i) => part(`${tag}/${i}`)), refused: [] }, 'writer');
  say(`kept ${tag} ${createHash('sha256').update(file.bytes).digest('hex')} ${kept.map((p) => p.id).join(',')}`);
  if (random() < 0.4) {
    const id = kept[0].id;
    await store.addRevision(id, part(`${tag}/0 revised`), 'renamed', 'writer');
    say(`revised ${id} ${tag}/0 revised`);
  } else if (random() < 0.2) {
    const id = kept[0].id;
    say(`purging ${id}`);
    await store.purgePart(id, 'writer');
    say(`purged ${id}`);
  }
}

function wrap(name, replacement) {
  const real = files[name];
  files[name] = (...given) => replacement(real, ...given);
}

function counts() {
  return armed && dieAt > 0 && ++operations === dieAt;
}

function die() {
  process.kill(process.pid, 'SIGKILL');
  for (;;);
}

// By hand and at once: a line that stays in a buffer when we die would make the test blind.
function say(line) {
  const wasArmed = armed;
  armed = false;
  fs.writeSync(1, `${line}\n`);
  armed = wasArmed;
}

function part(name) {
  return { name, thickness: 1.5, plates: [], bends: [], assumptions: [], unit: 'mm' };
}

function mulberry(seed) {
  return () => {
    seed = (seed + 0x6d2b79f5) | 0;
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
