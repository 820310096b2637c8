import * as messages from "../../words/compiled/screens/layouts.ts";
export const lowerPositive = messages.lowerAtWheelIs;
