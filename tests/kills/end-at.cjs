// Loaded before the command line (node --require): ends the process as a power cut does, before the nth call that changes something on the disk, or half
// way through it where it writes. FOAMLOFT_END_AT: n from 1; 0: never, and the count is told at the end.
const fs = require('node:fs/promises');
const { syncBuiltinESMExports } = require('node:module');

const endAt = Number(process.env.FOAMLOFT_END_AT);
let calls = 0;
const isNow = () => (calls += 1) === endAt;
const end = () => {
  process.kill(process.pid, 'SIGKILL');
  // The signal comes at once, and nothing is done in between.
  for (;;);
};

for (const name of ['mkdir', 'mkdtemp', 'rename', 'link', 'copyFile', 'rm', 'rmdir', 'writeFile']) {
  const real = fs[name];
  fs[name] = (...words) => (isNow() ? end() : real(...words));
}

const open = fs.open;
fs.open = async (path, flags, ...words) => {
  if (flags === 'wx' && isNow()) end();
  const file = await open(path, flags, ...words);
  for (const name of ['writeFile', 'sync', 'close']) {
    const real = file[name].bind(file);
    file[name] = async (...given) => {
      if (!isNow()) return await real(...given);
      if (name !== 'writeFile') return end();
      const bytes = Buffer.from(given[0]);
      await file.write(bytes, 0, bytes.length >> 1);
      return end();
    };
  }
  return file;
};
syncBuiltinESMExports();

if (endAt === 0) process.on('exit', () => process.stderr.write(`calls ${calls}\n`));
