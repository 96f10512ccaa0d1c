/** Origin of the shortest time on where no maker gives one. */
export const SHORTEST_TOLD = "project judgement: less than half an hour is within the doubt of the model";
