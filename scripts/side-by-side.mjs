// Runs npm scripts at the same time and prints what each said as soon as it ends. node scripts/side-by-side.mjs NAME...
import { spawn } from "node:child_process";

const codes = await Promise.all(process.argv.slice(2).map(run));
process.exitCode = codes.some((code) => code !== 0) ? 1 : 0;

function run(name) {
  return new Promise((resolve, reject) => {
    const child = spawn("npm", ["run", "--silent", name], { stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (text) => {
        said += text;
      });
    }
    child.on("error", reject);
    child.on("close", (code) => {
      process.stdout.write(`${name}: ${code === 0 ? "OK" : `ended with ${code}`}\n${said}`);
      resolve(code);
    });
  });
}
