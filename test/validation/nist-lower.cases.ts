import { nistValidation } from "./nist-cases.js";

export const NIST_LOWER_VALIDATION = nistValidation("lower");
