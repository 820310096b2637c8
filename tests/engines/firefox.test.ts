import { everyScreenCases } from "./cases/everyScreen.ts";
import { leftPageCases } from "./cases/leftPage.ts";
import { readingOrderCases } from "./cases/readingOrder.ts";
import { wholeWayCases } from "./cases/wholeWay.ts";
import { firefoxEngine } from "./support/engines.ts";
import { onEngine } from "./support/onEngine.ts";

// The reading order first here and last in WebKit: what both are held against is then worked out once.
onEngine(firefoxEngine, readingOrderCases, everyScreenCases, leftPageCases, wholeWayCases);
