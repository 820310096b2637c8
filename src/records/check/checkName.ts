import type { Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { language } from "../../words/language.ts";
import type { ListedCheck } from "./listedCheck.ts";

export function checkName(stored: ListedCheck): Words {
  return stored.name.trim() || stored.record.vehicle?.label?.trim() || messages.noNameYet;
}

export function dateText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return "";
  return date.toLocaleDateString(language, { day: "numeric", month: "short", year: "numeric" });
}
