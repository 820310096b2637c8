import { texts } from "../words/compiled/texts/first.ts";
import { addTexts } from "./texts.ts";

/* What the first screen may say, without the texts of all others. */
addTexts(texts);
