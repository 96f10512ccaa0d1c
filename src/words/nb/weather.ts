import type { WeatherFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const weather: Phrases<WeatherFindings> = {};
