import { equal, test } from "../../ui/testing.ts";
import { gaugeCheck } from "./gauge_check.ts";

test("two gauges: the difference is the error of one's own", () => {
  equal(gaugeCheck("2,10", "2.0", "bar"), { words: "Yours reads 0.10 bar too high.", text: "0.1" });
  equal(gaugeCheck("1.95", "2.0 bar", "bar"), { words: "Yours reads 0.05 bar too low.", text: "-0.05" });
  equal(gaugeCheck("30", "2.0 bar", "psi").text, "1");
});

test("two gauges: nothing is stored where they agree on nothing", () => {
  equal(gaugeCheck("2.0", "2.0", "bar"), { words: "They agree.", text: "0" });
  equal(gaugeCheck("", "2.0", "bar"), { words: "", text: "" });
  equal(gaugeCheck("abc", "2.0", "bar"), { words: "", text: "" });
  equal(gaugeCheck("4.5", "2.0", "bar").text, "");
});
