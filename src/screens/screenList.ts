/* Every screen of the app; no address is two screens'. */

export { deskScreen } from "./desk/deskScreen.ts";
export { replyScreen } from "./exchange/reply/replyScreen.ts";
export { shareScreen } from "./exchange/shareScreen.ts";
export { checksScreen } from "./home/checksScreen.tsx";
export { howComputedScreen } from "./howComputed/howComputedScreen.ts";
export { labelsScreen } from "./labels/labelsScreen.ts";
export { openCheckScreen } from "./openCheck/openCheckScreen.ts";
export { packScreen } from "./pack/packScreen.ts";
export { quickCheckScreen } from "./quickCheck/quickCheckScreen.tsx";
export { rankingScreen } from "./ranking/rankingScreen.ts";
export { savedScreen } from "./saved/savedScreen.ts";
export { settingsScreen } from "./settings/settingsScreen.ts";
