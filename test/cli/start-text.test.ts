import { describe, expect, test } from "vitest";
import { installationById, PART_NAMES } from "../../src/aircraft/index.js";
import { fitting, type Style, styleFor } from "../../src/cli/style.js";
import { careList, startFacts } from "../../src/cli/text/start-text.js";
import { startDocument } from "../../src/documents/start-document.js";
import { startBriefing } from "../../src/starting/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";

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
    expect(labels).toEqual(["Oil", "Pressure", "Oil grade", "Cranking", "Battery", "Fuel"]);
    expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
    const words = (text: string) => text.replace(/\s+/g, " ").trim();
    for (const { text } of start.notes) expect(words(lines.join(" "))).toContain(words(text));
  });

  test("speaks in the user's unit", () => {
    const lines = shown(startFacts(at(-21), { ...STYLE, units: "f" })).join(" ");
    expect(lines).toContain("-6 °F");
    expect(lines).not.toContain("°C");
  });

  test("says nothing of the oil's grade where it is listed", () => {
    const lines = shown(startFacts(at(25), STYLE)).join("\n");
    expect(lines).toContain("Cranking");
    expect(lines).not.toContain("Oil grade");
  });

  test("cautions of equipment and start stand in one list, each once and with its source", () => {
    const start = at(-21);
    const [shared] = start.cautions;
    const kit = { text: "Keep snow off the lead.", source: "invented for this test" };
    const lines = shown(careList([kit, shared], start, STYLE));
    expect(lines[1]).toBe("Care");
    expect(lines.filter((line) => line.startsWith("- "))).toHaveLength(start.cautions.length + 1);
    expect(lines[2]).toBe("- Keep snow off the lead. (invented for this test)");
    expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
  });
});
