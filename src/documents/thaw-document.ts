import type {
  LeavingReport,
  MiddleAndHigh,
  MildWindow,
  RefreezeChance,
  ThawResult,
  ThawTrials,
  TrialTimes,
} from "../airframe/index.js";
import { celsiusFromKelvin, JOULE_OF_KILOWATT_HOUR, SECONDS_OF_HOUR } from "../units/index.js";
import {
  airframeHeader,
  bandDocument,
  celsiusSeries,
  minutesDocument,
  seriesDocument,
  stampAt,
  timeBandDocument,
} from "./airframe-document.js";
import { rounded } from "./result-header.js";
import type { ReadThaw } from "./thaw-reading.js";
import type { RollOutDocument, ThawOutlookDocument } from "./thaw-result-schema.js";

/** A stay in the hangar as it is stored, exchanged and shown. */
export function thawDocument(
  result: ThawResult,
  trials: ThawTrials,
  leaving: LeavingReport | undefined,
  read: ReadThaw,
): ThawOutlookDocument {
  const { request } = read;
  const band = (times: ThawResult["skinClear"]) => timeBandDocument(read, times);
  const perHour = (rate: number) => rounded(rate * SECONDS_OF_HOUR, 3);
  return {
    ...airframeHeader(read, request.panel.name, [result, ...(leaving === undefined ? [] : [leaving.middle])]),
    kind: "thaw-outlook",
    horizon_h: rounded(request.duration / SECONDS_OF_HOUR, 4),
    snow_kg_per_m2: rounded(request.snow, 3),
    skin_clear: band(result.skinClear),
    skin_dry: band(result.skinDry),
    gaps_thawed: band(result.gapsThawed),
    gaps_dry: band(result.gapsDry),
    weakest: result.weakest,
    melt_kg_per_m2h: {
      air: perHour(result.melt.convection),
      radiation: perHour(result.melt.radiation),
      vapour: perHour(result.melt.vapour),
      total: perHour(result.melt.total),
    },
    heater_kwh: bandDocument(result.heaterEnergy, 1, JOULE_OF_KILOWATT_HOUR),
    highest_humidity_percent: bandDocument(result.mostHumid, 1, 0.01),
    floor_water_kg: bandDocument(result.ranOff, 1, 1 / request.area),
    condensed_kg: bandDocument(result.condensed, 1),
    brushable_kg_per_m2: rounded(request.brushable ?? 0, 3),
    trials: trialsDocument(trials, read),
    course: courseOf(result),
    roll_out: leaving === undefined ? null : rollOutDocument(leaving, result, read),
  };
}

function trialsDocument(trials: ThawTrials, read: ReadThaw): ThawOutlookDocument["trials"] {
  const { by, longest, members, asIs, changes, mild } = trials;
  return {
    by: stampAt(read, by),
    longest_h: rounded(longest / SECONDS_OF_HOUR, 4),
    members,
    as_is: trialDocument(asIs),
    changes: changes.map(({ id, text, setC, heaterKw, times }) => ({
      id,
      text,
      ...(setC === undefined ? {} : { set_c: rounded(setC, 1) }),
      ...(heaterKw === undefined ? {} : { heater_kw: heaterKw }),
      ...trialDocument(times),
    })),
    mild_window: mild === undefined ? null : mildDocument(mild, read),
  };
}

function trialDocument({ chance, skinDry, gapsDry, gapsDrySurely }: TrialTimes) {
  const hours = (time: number | undefined) =>
    time === undefined ? null : rounded(time / SECONDS_OF_HOUR, 2);
  return {
    chance,
    skin_dry_h: hours(skinDry),
    gaps_dry_h: hours(gapsDry),
    gaps_dry_surely_h: hours(gapsDrySurely),
  };
}

function mildDocument({ until, window }: MildWindow, read: ReadThaw) {
  return {
    looked_until: stampAt(read, until),
    window:
      window === undefined
        ? null
        : {
            leave: stampAt(read, window.at),
            mild_until: stampAt(read, window.to),
            air_c: rounded(celsiusFromKelvin(window.tempAir), 1),
            chance: window.chance,
          },
  };
}

function courseOf({ series }: ThawResult): ThawOutlookDocument["course"] {
  return {
    time_h: Array.from(series.time, (t) => rounded(t / SECONDS_OF_HOUR, 4)),
    hangar_c: celsiusSeries(series.tempHangar),
    humidity_percent: seriesDocument(series.relativeHumidity, 1, 0.01),
    skin_c: celsiusSeries(series.tempUpper),
    inside_c: celsiusSeries(series.tempInside),
    fittings_c: celsiusSeries(series.tempGap),
    snow_kg_per_m2: seriesDocument(series.ice, 4),
    upper_water_kg_per_m2: seriesDocument(series.waterUpper, 4),
    lower_water_kg_per_m2: seriesDocument(series.waterLower, 4),
    gap_ice_kg_per_m2: seriesDocument(series.gapIce, 3),
    gap_water_kg_per_m2: seriesDocument(series.gapWater, 3),
    puddle_kg: seriesDocument(series.puddle, 2),
  };
}

function rollOutDocument(
  { rollOut, state, middle, wettest }: LeavingReport,
  { cases }: ThawResult,
  read: ReadThaw,
): RollOutDocument {
  const celsius = (temp: number) => rounded(celsiusFromKelvin(temp), 1);
  const pair = (value: MiddleAndHigh) => ({ p50: rounded(value.middle, 3), p95: rounded(value.high, 3) });
  const { climb } = middle;
  const shareBy = (times: Float64Array) => times.filter((time) => time <= rollOut.at).length / times.length;
  return {
    members: middle.members,
    at: stampAt(read, rollOut.at),
    take_off: stampAt(read, rollOut.at + rollOut.timeOutside),
    clear_chance: shareBy(cases.gapsThawed),
    dry_chance: shareBy(cases.gapsDry),
    state: {
      skin_c: celsius(state.tempSkin),
      inside_c: celsius(state.tempInside),
      fittings_c: celsius(state.tempGap),
      snow_kg_per_m2: pair(state.snow),
      film_kg_per_m2: pair(state.film),
      gap_water_kg_per_m2: pair(state.gapWater),
    },
    skin_freezing_min: minutesDocument(middle.skinFreezing),
    fittings_freezing_min: minutesDocument(middle.gapFreezing),
    middle: { film: chanceDocument(middle.film), gaps: chanceDocument(middle.gaps) },
    wettest: { film: chanceDocument(wettest.film), gaps: chanceDocument(wettest.gaps) },
    melts_what_falls: middle.meltsSnow,
    cool_indoors_min: middle.coolIndoors === undefined ? null : minutesDocument(middle.coolIndoors),
    wet_bulb_c: celsius(middle.tempWetBulb),
    climb:
      climb === undefined || rollOut.climb === undefined
        ? null
        : {
            freezing_level_m: climb.freezingLevel === undefined ? null : rounded(climb.freezingLevel, 0),
            elevation_m: rounded(rollOut.climb.elevation, 0),
            cruise_m: rounded(rollOut.climb.cruiseAltitude, 0),
            cruise_c: celsius(climb.tempCruise),
            coldest_c: celsius(climb.tempColdest),
            fittings_freezing_min: minutesDocument(climb.gapFreezing),
          },
  };
}

function chanceDocument({ verdict, atTakeOff, inClimb }: RefreezeChance) {
  return { verdict, at_take_off: atTakeOff, in_climb: inClimb };
}
