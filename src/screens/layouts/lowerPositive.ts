export const lowerPositive =
  "Lower at the wheel is positive. Higher at the wheel: type it with a minus, or tap + / −.";
