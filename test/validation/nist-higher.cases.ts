import { nistValidation } from "./nist-cases.js";

export const NIST_HIGHER_VALIDATION = nistValidation("higher");
