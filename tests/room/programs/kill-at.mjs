// Loaded before a program: ends it with SIGKILL at the call of the disk that KILL_AT counts to. A write of a file
// that is cut short so leaves half of its bytes.
import fs from 'node:fs';
import {syncBuiltinESMExports} from 'node:module';

let calls = 0;
const end = () => process.kill(process.pid, 'SIGKILL');
const isLast = () => ++calls === Number(process.env.KILL_AT);

const handle = await fs.promises.open(process.execPath, 'r');
const FileHandle = Object.getPrototypeOf(handle);
await handle.close();

for (const name of ['rename', 'link', 'unlink', 'mkdir', 'copyFile', 'utimes', 'writeFile', 'open']) {
  const real = fs.promises[name];
  fs.promises[name] = (...args) => (isLast() ? end() : real(...args));
}
for (const name of ['write', 'writeFile']) {
  const real = FileHandle[name];
  FileHandle[name] = async function (bytes, ...args) {
    if (!isLast()) return real.call(this, bytes, ...args);
    fs.writeSync(this.fd, bytes, 0, Math.floor(bytes.length / 2), 0);
    return end();
  };
}
syncBuiltinESMExports();
