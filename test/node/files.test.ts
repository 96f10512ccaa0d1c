import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { readerBeside, readTextFile, writeTextFile } from "../../src/node/index.js";

const folder = mkdtempSync(join(tmpdir(), "soakline-"));
afterAll(() => rmSync(folder, { recursive: true }));

test("what is written is read again, in a folder made for it, and no draft is left", () => {
  const path = join(folder, "deep", "note.txt");
  writeTextFile(path, "−30 °C\n");
  writeTextFile(path, "−31 °C\n");
  expect(readTextFile(path)).toEqual({ ok: true, text: "−31 °C\n" });
  expect(readdirSync(join(folder, "deep"))).toEqual(["note.txt"]);
});

test("why a file cannot be read is said in plain words", () => {
  const latin = join(folder, "latin.txt");
  writeFileSync(latin, Buffer.from([0x2d, 0x33, 0x30, 0x20, 0xb0, 0x43]));
  expect(readTextFile(join(folder, "none"))).toEqual({ ok: false, reason: "there is no such file" });
  expect(readTextFile(folder)).toEqual({ ok: false, reason: "it is a folder" });
  expect(readTextFile(join(latin, "below"))).toEqual({ ok: false, reason: "part of its path is no folder" });
  expect(readTextFile(latin)).toEqual({ ok: false, reason: "it is not text in UTF-8" });
});

test("files named in a document are looked for beside it", () => {
  writeTextFile(join(folder, "weather", "night.csv"), "time,air_c\n");
  const read = readerBeside(join(folder, "plan.json"));
  expect(read("weather/night.csv")).toEqual({
    ok: true,
    text: readFileSync(join(folder, "weather", "night.csv"), "utf8"),
  });
  expect(read("night.csv").ok).toBe(false);
});
