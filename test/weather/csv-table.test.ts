import { expect, test } from "vitest";
import { readCsvTable } from "../../src/weather/index.js";

test("header, rows and the lines they stand in", () => {
  expect(readCsvTable('\ufeff# by hand\r\na ;"b;c"\r\n\r\n1;2\r\n# note\r\n3;"4;5";\r\n')).toEqual({
    header: { line: 2, cells: ["a", "b;c"] },
    rows: [
      { line: 4, cells: ["1", "2"] },
      { line: 6, cells: ["3", "4;5"] },
    ],
    faults: [],
  });
});

test("a faulty line is named and takes no other with it", () => {
  const table = readCsvTable('a,b\n1,2\n"3,4\n5,6\n7\n8,9,x\n"10",11\n');
  expect(table?.rows.map(({ line }) => line)).toEqual([2, 4, 7]);
  expect(table?.faults.map(({ line, received }) => [line, received])).toEqual([
    [3, '"3,4'],
    [5, "1"],
    [6, "3"],
  ]);
});

test("lines before the header are faults where the header is told by its words", () => {
  const table = readCsvTable("Logger 7\nSerial;12\ntime;oil\n05:00;3\n", (cells) => cells.includes("oil"));
  expect(table?.header).toEqual({ line: 3, cells: ["time", "oil"] });
  expect(table?.faults.map(({ line }) => line)).toEqual([1, 2]);
});

test.each(["", "\n# only a comment\n", "a,b\n", '"a,b\n'])("%j is no table", (text) => {
  expect(readCsvTable(text)).toBeUndefined();
});
