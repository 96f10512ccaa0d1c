export * from "./series.js";
