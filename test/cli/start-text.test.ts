import { describe, expect, test } from "vitest";
import { installationById, PART_NAMES } from "../../src/aircraft/index.js";
import { fitting, type Style, styleFor } from "../../src/cli/style.js";
import { startFacts } from "../../src/cli/text/start-text.js";
import { startDocument } from "../../src/documents/start-document.js";
import { startBriefing } from "../../src/starting/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { english, speaker } from "../../src/words/index.js";

const STYLE: Style = styleFor({ env: { LANG: "C.UTF-8" }, isTty: false });
const radial = installationById("radial-nine-360");
const at = (celsius: number) =>
  startDocument(
    startBriefing(
      radial,
      new Map(PART_NAMES.map((part) => [part, kelvinFromCelsius(celsius)])),
      kelvinFromCelsius(celsius),
    ),
  );
const shown = (lines: readonly string[]) => lines.map((line) => fitting(line, STYLE));

describe("at the start", () => {
  test("each topic has its label and its words, in lines of at most 80 columns", () => {
    const start = at(-21);
    const lines = shown(startFacts(start, STYLE));
    expect(lines.slice(0, 2)).toEqual(["", "At the start"]);
    const labels = lines.slice(2).flatMap((line) => /^\S.{12} /.exec(line)?.[0].trim() ?? []);
    expect(labels).toEqual([
      "Oil",
      "Pressure",
      "Oil grade",
      "Propeller",
      "Cranking",
      "Battery",
      "Fuel",
      "Breather",
    ]);
    expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
    const words = (text: string) => text.replace(/\s+/g, " ").trim();
    for (const { text } of start.notes) expect(words(lines.join(" "))).toContain(words(english(text)));
  });

  test("speaks in the user's unit", () => {
    // Cautions keep the unit they were published in.
    const start = at(-21);
    const own = { notes: start.notes.map((note) => ({ ...note, cautions: [] })) };
    const lines = shown(
      startFacts(own, { ...STYLE, units: "f", say: speaker({ temp: "f", wind: "mps" }) }),
    ).join(" ");
    expect(lines).toContain("-6 °F");
    expect(lines).not.toContain("°C");
  });

  test("says nothing of the oil's grade where it is listed", () => {
    const lines = shown(startFacts(at(25), STYLE)).join("\n");
    expect(lines).toContain("Cranking");
    expect(lines).not.toContain("Oil grade");
  });

  test("each caution stands below what it belongs to, with its source", () => {
    const start = at(-21);
    const lines = shown(startFacts(start, STYLE));
    const words = (text: string) => text.replace(/\s+/g, " ").trim();
    const all = words(lines.join(" "));
    const said = start.notes.flatMap((note) => note.cautions);
    expect(said.length).toBeGreaterThan(5);
    for (const one of said) expect(all).toContain(words(`! ${english(one)} (${one.source})`));
    const battery = lines.findIndex((line) => line.startsWith("Battery"));
    const fuel = lines.findIndex((line) => line.startsWith("Fuel"));
    expect(words(lines.slice(battery, fuel).join(" "))).toContain("Never charge");
    expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
  });
});
