import { expect, test } from "vitest";
import { unitOfCell, unitOfName } from "../../src/learning/log-units.js";
import { guessOfName } from "../../src/learning/log-words.js";

test.each([
  ["Oil Temp (°C)", "oil"],
  ["oil_c", "oil"],
  ["OilTempF", "oil"],
  ["Öltemperatur", "oil"],
  ["Öl", "oil"],
  ["olje °C", "oil"],
  ["sump", "sump"],
  ["Oil sump", "oil or sump"],
  ["CHT", "heads"],
  ["CHT1", "heads or heads_front or heads_rear"],
  ["CHT #3 [F]", "heads or heads_front or heads_rear"],
  ["CHT front", "heads_front"],
  ["rear head", "heads_rear"],
  ["cylinder head", "heads"],
  ["Cylinder 2", "barrels or heads_front or heads_rear"],
  ["barrels", "barrels"],
  ["case", "crankcase"],
  ["crankcase_temp", "crankcase"],
  ["crank case", "crankcase"],
  ["Crank", "crankshaft"],
  ["main bearing", "crankshaft"],
  ["Batt.", "battery"],
  ["Akku", "battery"],
  ["ambient", "outside-air"],
  ["OAT", "outside-air"],
  ["outside air", "outside-air"],
  ["Außentemp.", "outside-air"],
  ["aussen", "outside-air"],
  ["ute", "outside-air"],
  ["hangar", "hangar-air"],
  ["under cowl", "cowl_air"],
  ["cowl skin", "cowl_skin"],
  ["pad", "heater_surface"],
  ["heater surface", "heater_surface"],
  ["battery heater", "battery or heater_surface"],
  ["magneto", "accessories"],
  ["prop hub", "hub"],
  ["coolant", "coolant"],
  ["T1", "unknown"],
  ["Temperature", "unknown"],
  ["probe 4", "unknown"],
  ["Battery voltage", "not a temperature: voltage"],
  ["RH", "not a temperature: rh"],
  ["dew point", "not a temperature: dew"],
])("%s is %s", (name, expected) => {
  const guess = guessOfName(name);
  const text = (place: { readonly part: string } | string) =>
    typeof place === "string" ? place : place.part;
  const got =
    guess.kind === "place"
      ? text(guess.place)
      : guess.kind === "ambiguous"
        ? guess.guesses.map(text).join(" or ")
        : guess.kind === "other-quantity"
          ? `not a temperature: ${guess.word}`
          : "unknown";
  expect(got).toBe(expected);
});

test.each([
  ["oil_c", "c"],
  ["oil_f", "f"],
  ["Oil (°C)", "c"],
  ["Oil [F]", "f"],
  ["Oil (deg F)", "f"],
  ["Oil, °F", "f"],
  ["Oil ºC", "c"],
  ["Oil ℃", "c"],
  ["OilTempC", "c"],
  ["oil temp c", "c"],
  ["oil celsius", "c"],
  ["Oil (Fahrenheit)", "f"],
  ["Oil (Â°C)", "c"],
  ["probe C", undefined],
  ["oil", undefined],
  ["case", undefined],
  ["Half", undefined],
])("unit of %s is %s", (name, unit) => {
  expect(unitOfName(name)).toBe(unit);
});

test.each([
  ["°C", "c"],
  ["(F)", "f"],
  ["deg C", "c"],
  ["celsius", "c"],
  ["℉", "f"],
  ["-12.5", undefined],
  ["--", undefined],
  ["V", undefined],
])("unit in the cell %s is %s", (cell, unit) => {
  expect(unitOfCell(cell)).toBe(unit);
});
