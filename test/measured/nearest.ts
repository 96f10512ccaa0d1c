import { type Heater, heaterById, type Installation, installationById } from "../../src/aircraft/index.js";
import { CAR_ENGINE, coolantHeater } from "../validation/car-engine.js";

// What a measured run is played with: the catalogue, and the car engine that stands beside it for runs of cars.

const CAR_HEATER: Heater = { ...coolantHeater(375), id: "car-block-heater-375" };

export const nearestInstallation = (id: string): Installation =>
  id === CAR_ENGINE.id ? CAR_ENGINE : installationById(id);

export const nearestHeater = (id: string): Heater => (id === CAR_HEATER.id ? CAR_HEATER : heaterById(id));
